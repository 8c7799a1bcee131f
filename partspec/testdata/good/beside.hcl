# Turned parts with work beside and across the axis.
part "pipe" {
  material = "mild steel"
  length   = 200
  bought   = true
  spigot "outside" {
    diameter = 114
    measured = 114.2
  }
}

part "saddle" {
  material = "mild steel"
  length   = 18
  stock "bar" {
    diameter = 65
  }
  flange "base" {
    diameter = 60
    length   = 16
  }
  spigot "register" {
    diameter = 34
  }
  bore "way" {
    diameter = "24 H8"
  }
  holes "fixing" {
    circle    = 48
    count     = 6
    start     = 30
    thread    = "M4"
    from      = "right"
    locate_by = "dividing_head"
  }
  holes "square" {
    at        = [[23, 5]]
    diameter  = 2
    direction = "normal"
    from      = "left"
  }
  seat "pipe" {
    on     = "left"
    radius = part.pipe.spigot.outside.diameter / 2
    angle  = 0
  }
}

part "pivot" {
  material = "brass"
  length   = 50
  stock "bar" {
    diameter = 25
  }
  spigot "stem" {
    diameter = 16
    length   = 35
  }
  spigot "head" {
    diameter = 22
  }
  bore "oil_way" {
    diameter = 4
    depth    = 20
  }
  cross_hole "oil" {
    on       = "stem"
    at       = 12
    diameter = 2
    into     = "oil_way"
  }
  flat "spanner" {
    on           = "head"
    across_flats = "17 -0.1 -0.2"
    count        = 2
  }
  slot "key" {
    on     = "stem"
    width  = "5 P9"
    depth  = "3 +0.1 -0"
    length = 10
    at     = 3
    from   = "right"
    angle  = 90
  }
}
