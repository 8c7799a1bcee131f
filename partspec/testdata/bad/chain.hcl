# The outside must be told from end to end.
part "gap" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
    length   = 10
  }
  spigot "two" { # ERROR "There is a gap of 2 mm"
    diameter = 15
    from     = "one.right"
    at       = 2
    length   = 18
  }
}

part "overlap" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
    length   = 10
  }
  spigot "two" { # ERROR "overlap by 5 mm"
    diameter = 15
    from     = "right"
    length   = 25
  }
}

part "short" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "one" { # ERROR "The outside ends 10 mm before the right end"
    diameter = 20
    length   = 20
  }
}

part "long" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
    length   = 20
  }
  spigot "two" { # ERROR "reaches beyond the part"
    diameter = 10
    length   = 11
  }
}

part "inches" {
  material = "brass"
  length   = 35.4
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
    length   = 10
  }
  spigot "two" { # ERROR "The length of two is 25.4 times too short"
    diameter = 15
    length   = 1
  }
}

part "missing" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "one" { # ERROR "lacks length"
    diameter = 20
  }
  spigot "two" {
    diameter = 10
    length   = 10
  }
}

part "nothing_left" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
    length   = 30
  }
  spigot "two" { # ERROR "Nothing is left for spigot"
    diameter = 10
  }
}

part "no_outside" { # ERROR "has no outside"
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  bore "b" {
    diameter = 10
  }
}

part "where" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
    at       = 2 # ERROR "at has nothing to count from"
    length   = 10
  }
  spigot "two" {
    diameter = 10
    from     = "middle" # ERROR "names no face"
    length   = 10
  }
  spigot "three" {
    diameter = 10
    from     = "four.left" # ERROR "cannot be counted from here"
    length   = 10
  }
}

part "no_length" { # ERROR "lacks length"
  material = "brass"
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
  }
}

part "no_diameter" {
  material = "brass"
  length   = 5
  stock "bar" {
    diameter = 25
  }
  spigot "one" { # ERROR "lacks diameter"
  }
}

part "names" {
  material = "brass"
  length   = 10
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
    length   = 5
  }
  flange "one" { # ERROR "A second feature 'one'"
    diameter = 22
    length   = 5
  }
  spigot "face" { # ERROR "No feature can be called face"
    diameter = 10
  }
}

part "names" { # ERROR "A second part"
  material = "brass"
  length   = 10
  stock "bar" {
    diameter = 25
  }
  spigot "one" {
    diameter = 20
  }
}
