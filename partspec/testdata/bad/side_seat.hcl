# Seats across the side of round work that cannot be, or hardly can.
part "post" {
  material = "brass"
  length   = 80
  stock "bar" {
    diameter = 40
  }
  spigot "stem" {
    diameter = 16
    length   = 50
  }
  flange "cap" {
    diameter = 36
    length   = 15
  }
  taper "nose" {
    large    = 20
    small    = 12
    large_at = "left"
  }
  bore "way" {
    diameter = 6
    depth    = 20
  }
  seat "no_depth" { # ERROR "lacks depth"
    on     = "stem"
    radius = 8
  }
  seat "wide" {
    on     = "stem"
    radius = 8
    depth  = 2
    across = 10 # ERROR "across belongs to a seat across an end"
  }
  seat "sunk" {
    on     = "stem"
    radius = 4
    depth  = 5 # ERROR "is sunk deeper than half of its pipe"
  }
  seat "off" { # ERROR "runs off spigot 'stem'"
    on     = "stem"
    at     = 3
    radius = 8
    depth  = 3
  }
  seat "into_bore" {
    on     = "stem"
    at     = 12
    radius = 8
    depth  = 6 # ERROR "breaks into the bore"
  }
  seat "two_pieces" { # ERROR "runs off spigot 'stem'"
    on     = "stem"
    at     = 35
    radius = 16
    depth  = 16
  }
  seat "cone" {
    on     = "nose" # ERROR "is no cylinder"
    radius = 8
    depth  = 2
  }
  seat "hole" {
    on     = "way" # ERROR "cannot be on bore"
    radius = 8
    depth  = 2
  }
  seat "near_cap" { # ERROR "runs into flange 'cap'"
    on     = "stem"
    at     = 8
    from   = "right"
    radius = 20
    depth  = 1
  }
  seat "end_deep" {
    on     = "left"
    radius = 40
    depth  = 2 # ERROR "depth belongs to a seat across the side"
  }
}

part "cut_through" {
  material = "brass"
  length   = 80
  stock "bar" {
    diameter = 20
  }
  spigot "stem" {
    diameter = 16
  }
  seat "apart" {
    on     = "stem"
    radius = 20
    depth  = 16 # ERROR "cuts the part in two"
  }
}

part "weak" {
  material = "brass"
  length   = 80
  stock "bar" {
    diameter = 20
  }
  spigot "stem" {
    diameter = 16
  }
  seat "thin" { # WARNING "Is enough left under seat 'thin'"
    on     = "stem"
    radius = 20
    depth  = 13
  }
}

part "crowded" {
  material = "brass"
  length   = 120
  stock "bar" {
    diameter = 24
  }
  spigot "stem" {
    diameter = 20
  }
  groove "ring" {
    on    = "stem"
    at    = 10
    width = 2
    depth = 1
  }
  thread "end" {
    on     = "stem"
    from   = "right"
    size   = "M20x1.5"
    length = 10
  }
  cross_hole "blind" {
    on       = "stem"
    at       = 50
    diameter = 3
    depth    = 8
  }
  flat "same" {
    on     = "stem"
    at     = 68
    length = 8
    depth  = 1
  }
  chamfer "lead" {
    edge = "stem.left"
    size = 1
  }
  seat "on_groove" { # ERROR "Groove 'ring' and seat 'on_groove' meet"
    on     = "stem"
    at     = 12
    radius = 8
    depth  = 2
  }
  seat "on_thread" { # ERROR "Thread 'end' and seat 'on_thread' meet"
    on     = "stem"
    at     = 12
    from   = "right"
    radius = 8
    depth  = 2
  }
  seat "on_hole" { # ERROR "Cross_hole 'blind' and seat 'on_hole' meet"
    on     = "stem"
    at     = 50
    radius = 8
    depth  = 2
  }
  seat "on_flat" { # ERROR "Flat 'same' and seat 'on_flat' meet"
    on     = "stem"
    at     = 70
    radius = 8
    depth  = 2
    angle  = 60
  }
  seat "on_lead" { # ERROR "Chamfer 'lead' and seat 'on_lead' meet"
    on     = "stem"
    at     = 3
    radius = 4
    depth  = 1
    angle  = 180
  }
  seat "first" {
    on     = "stem"
    at     = 85
    radius = 8
    depth  = 2
  }
  seat "second" { # ERROR "Seat 'first' and seat 'second' meet"
    on     = "stem"
    at     = 90
    radius = 8
    depth  = 2
    angle  = 30
  }
}
