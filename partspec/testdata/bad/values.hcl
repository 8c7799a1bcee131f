# Values that cannot be read.
part "a" {
  material = "brass"
  length   = "20 cm" # ERROR "length of part 'a': it cannot be read"
  quantity = 1.5     # ERROR "it is not a count"
  bought   = "no"    # ERROR "it is of the wrong kind. Write bought = true"
  note     = ""      # ERROR "the text is empty"
  general  = "x"     # ERROR "There is no general class"

  stock "bar" {
    diameter = -3 # ERROR "it is not above 0"
  }
}

part "b" {
  material = "unobtainium" # ERROR "No table has the material"
  length   = 20
  stock "bar" {
    diameter = 25
    length   = "200 +1 -0" # ERROR "This dimension takes no limits"
  }
  spigot "one" {
    diameter  = "20 -0.02 +0.05 x" # ERROR "it cannot be read"
    length    = 1 / 0              # ERROR "it has no end"
    roughness = -1                 # ERROR "it is negative"
  }
  spigot "two" {
    diameter = 2000000 # ERROR "it is too large"
    length   = [1, 2]  # ERROR "it is of the wrong kind"
  }
  spigot "three" {
    diameter = null # ERROR "it has no value"
    length   = 1e9  # ERROR "it is too large"
  }
  bore "class" {
    diameter = "8 h7" # ERROR "h7 is the class of a shaft"
  }
  spigot "class_s" {
    diameter = "8 H7" # ERROR "H7 is the class of a hole"
    length   = 5
  }
  bore "no_class" {
    diameter = "8 H99" # ERROR "no such class"
  }
  bore "limits" {
    diameter = "8.1..8.0" # ERROR "wrong way round"
  }
  bore "tiny" {
    diameter = 0.001 # ERROR "it is too small"
  }
}

part "c" {
  material = "brass"
  length   = 20
  drawn_in = "furlong" # ERROR "drawn_in names no unit"
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
}

part "unknown_metal" {
  material = "brss" # ERROR "Did you mean 'brass'?"
  length   = 20
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
}
