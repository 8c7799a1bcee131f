# Bores that cannot be.
part "walls" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "big" {
    diameter = 20
    length   = 15
  }
  spigot "small" {
    diameter = 10
  }
  bore "way" { # ERROR "leaves no wall. Its diameter is 10 mm where spigot 'small' is 10 mm"
    diameter = 10
  }
}

part "deep" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "blind" {
    diameter = 5
    depth    = 30 # ERROR "is deeper than the part"
  }
  bore "pointed" {
    diameter = 10
    depth    = 27.5 # ERROR "The drill's point breaks through"
  }
  counterbore "open" { # ERROR "lacks depth"
    diameter = 8
  }
  bore "both" {
    diameter = 8
    depth    = 5 # ERROR "is both through and blind"
    through  = true
  }
  bore "side" {
    diameter = 5
    from     = "top" # ERROR "cannot begin from"
  }
  bore "bare" { # ERROR "lacks diameter"
  }
  bore "tube" {
    as_supplied = true # ERROR "The stock has no bore"
  }
}

part "meeting" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "left_one" {
    diameter = 5
    depth    = 16
    flat     = true
  }
  bore "right_one" { # ERROR "meet"
    diameter = 8
    depth    = 16
    from     = "right"
    flat     = true
  }
}

part "swallowed" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "through_one" {
    diameter = 10
  }
  counterbore "seat" { # ERROR "is swallowed by"
    diameter = 8
    depth    = 5
  }
}

part "twice" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "first" {
    diameter = 10
  }
  bore "second" { # ERROR "are both through"
    diameter = 12
  }
}

part "recesses" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "hole" {
    diameter = 10
    depth    = 20
    from     = "right"
  }
  recess "outside_bore" { # ERROR "is not in bore 'hole'"
    on       = "hole"
    diameter = 12
    width    = 3
    at       = 18
  }
  recess "small" {
    on       = "hole"
    diameter = 10 # ERROR "is not larger than its bore"
    width    = 3
    at       = 10
  }
  recess "wide" { # ERROR "leaves no wall"
    on       = "hole"
    diameter = 21
    width    = 2
    at       = 5
  }
  recess "lost" {
    on       = "hoel" # ERROR "Did you mean 'hole'?"
    diameter = 12
    width    = 3
    at       = 10
  }
  recess "misplaced" {
    on       = "body" # ERROR "A recess cannot be on spigot"
    diameter = 12
    width    = 3
    at       = 10
  }
}

part "floors" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "way" {
    diameter = 10
    flat     = true # ERROR "A through bore has no floor"
  }
}

part "points" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
  bore "left_one" {
    diameter = 10
    depth    = 12 # ERROR "The drill's point breaks through"
  }
  bore "right_one" {
    diameter = 10
    depth    = 12 # ERROR "The drill's point breaks through"
    from     = "right"
  }
}

part "swallowing" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 45
  }
  spigot "body" {
    diameter = 40
  }
  bore "cup" {
    diameter = 36
    depth    = 26 # ERROR "The drill's point breaks through"
    from     = "right"
  }
  bore "eye" {
    diameter = 6
  }
}

part "in_two" {
  material = "brass"
  length   = 25
  stock "bar" {
    diameter = 52.5
  }
  flange "rim" {
    diameter = 46
    length   = 5
  }
  spigot "tube" {
    diameter = 15.5
  }
  bore "way" {
    diameter = 11.5
  }
  counterbore "seat" { # ERROR "leaves no wall. Its diameter is 19 mm where spigot 'tube' is 15.5 mm, 5 mm from the left end"
    diameter = 19
    depth    = 5
    from     = "left"
  }
}

# The spigot and the bore wait for the diameters of threads that were put elsewhere: only the wrong names are told.
part "stray" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 20
  }
  spigot "tip" {}
  bore "way" {}
  thread "outer" {
    on   = "tipp" # ERROR "There is no feature 'tipp'"
    size = "M10"
  }
  thread "inner" {
    on   = "wey" # ERROR "There is no feature 'wey'"
    size = "M5"
  }
}
