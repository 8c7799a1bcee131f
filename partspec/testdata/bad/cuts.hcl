# Grooves, threads, knurls and edges that cannot be.
part "grooves" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "rim" {
    diameter = 20
    length   = 20
  }
  spigot "hub" {
    diameter = 12
  }
  bore "way" {
    diameter = 6
  }
  groove "off" { # ERROR "is not on spigot 'rim'"
    on    = "rim"
    at    = 18
    width = 3
    depth = 1
  }
  groove "first" {
    on    = "rim"
    at    = 2
    width = 4
    depth = 2
  }
  groove "across" { # ERROR "overlap"
    on    = "rim"
    at    = 4
    width = 4
    depth = 3
  }
  groove "twice" {
    on       = "rim"
    at       = 10
    width    = 2
    depth    = 2 # ERROR "tells its bottom twice"
    diameter = 15
  }
  groove "square" { # ERROR "lacks depth" ERROR "lacks width"
    on = "rim"
    at = 10
  }
  groove "shallow" { # ERROR "has no metal or no depth"
    on       = "rim"
    at       = 10
    width    = 2
    diameter = 21
  }
  groove "vee" { # ERROR "do not make a vee"
    on    = "rim"
    at    = 12
    width = 2
    depth = 4
    angle = 60
  }
  groove "floor" {
    on           = "rim"
    at           = 12
    width        = 2
    depth        = 1
    bottom_width = 1 # ERROR "belongs to a vee"
  }
  groove "in_bore" {
    on    = "way" # ERROR "A groove cannot be on bore"
    at    = 1
    width = 1
    depth = 1
  }
  groove "far" {
    on    = "rim"
    at    = 1
    from  = "hup.left" # ERROR "There is no feature 'hup'"
    width = 1
    depth = 1
  }
}

part "groove_wall" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "rim" {
    diameter = 20
  }
  bore "way" { # ERROR "leaves no wall. Its diameter is 12 mm where groove 'deep' is 11 mm"
    diameter = 12
  }
  groove "deep" {
    on       = "rim"
    at       = 2
    width    = 4
    diameter = 11
  }
}

part "threads" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 25
  }
  spigot "a" {
    diameter = 10
    length   = 10
  }
  spigot "b" {
    diameter = 9
    length   = 10
  }
  spigot "c" {
    diameter = 16
    length   = 10
  }
  spigot "d" {
    diameter = 10
  }
  thread "none" {
    on   = "a"
    size = "M99x77" # ERROR "No table has the thread"
  }
  thread "long" {
    on     = "d"
    size   = "M10"
    length = 11 # ERROR "is longer than"
  }
  thread "sixteen" {
    on     = "c"
    size   = "M16"
    length = 5
    from   = "left"
  }
  thread "again" { # ERROR "has two threads"
    on   = "c"
    size = "M16"
  }
  thread "nowhere" {
    on   = "e" # ERROR "There is no feature 'e'"
    size = "M10"
  }
}

part "blank" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 25
  }
  spigot "b" {
    diameter = 9 # ERROR "M10 is 10 mm over its crests"
  }
  thread "wrong" {
    on   = "b"
    size = "M10"
  }
}

part "inside_thread" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "core" {
    diameter = 6 # ERROR "The core of M6 is"
  }
  thread "tapped" {
    on   = "core"
    size = "M6"
  }
}

part "thread_ends" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  thread "either" { # ERROR "could begin at either end"
    on     = "body"
    size   = "M20x1.5"
    length = 10
    hand   = "wrong" # ERROR "A thread's hand cannot be"
  }
  knurl "fine" {
    on      = "body"
    pitch   = 5        # ERROR "too coarse"
    pattern = "zigzag" # ERROR "There is no knurl"
  }
}

part "edges" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
    length   = 10
  }
  spigot "stem" {
    diameter = 12
    length   = 28
  }
  spigot "tip" {
    diameter = 12
  }
  bore "way" {
    diameter = 10
  }
  chamfer "corner" {
    edge = "stem.left" # ERROR "is a corner, not an edge"
    size = 1
  }
  chamfer "none" {
    edge = "stem.right" # ERROR "has no edge there"
    size = 1
  }
  chamfer "large" { # ERROR "does not fit its edge"
    edge = "body.right"
    size = 4.5
  }
  chamfer "wrong" {
    edge = "body" # ERROR "names no face"
    size = 1
  }
  chamfer "lost" {
    edge = "boddy.left" # ERROR "Did you mean 'body'?"
    size = 1
  }
  chamfer "flat" {
    edge  = "body.left"
    size  = 1
    angle = 90 # ERROR "A chamfer has no such angle"
  }
  chamfer "on_thread" {
    edge = "corner.left"
    size = 1
  }
  fillet "big" { # ERROR "does not fit its edge"
    edge   = "stem.left"
    radius = 4.5
  }
  chamfer "one" {
    edge = "tip.right"
    size = 0.6
  }
  chamfer "again" {
    edge = "tip.right" # ERROR "take the same edge"
    size = 0.5
  }
  chamfer "inner" { # ERROR "leave no face between them"
    edge = "way.right"
    size = 0.6
  }
}

part "meeting_edges" {
  material = "brass"
  length   = 2
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  chamfer "left_one" {
    edge = "body.left"
    size = 1.5
  }
  chamfer "right_one" { # ERROR "meet on body"
    edge = "body.right"
    size = 1.5
  }
}

part "thread_walls" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 12
  }
  spigot "stem" {
    length = 8
  }
  spigot "collar" {
    diameter = 11
    length   = 6
  }
  spigot "own" {
    as_supplied = true
  }
  bore "way" { # ERROR "leaves no wall. Its diameter is 8.5 mm where thread 'outer' is 8.16 mm"
    diameter = 8.5
  }
  counterbore "socket" {
    from  = "right"
    depth = 5
  }
  thread "outer" {
    on   = "stem"
    size = "M10"
  }
  thread "inner" { # ERROR "leaves no wall. Its diameter is 12 mm where spigot 'own' is 12 mm"
    on   = "socket"
    size = "M12"
  }
  thread "bright" {
    on   = "own"
    size = "M14" # ERROR "does not suit the stock"
  }
  knurl "grip" {
    on    = "stem" # ERROR "has a thread"
    pitch = 1
  }
}
