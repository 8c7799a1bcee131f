# Stock that the part cannot be cut from.
part "none" { # ERROR "has no stock"
  material = "brass"
  length   = 10
  spigot "body" {
    diameter = 8
  }
}

part "large" {
  material = "brass"
  length   = 10
  stock "bar" { # ERROR "The stock is shorter than"
    diameter = 10
    length   = 9
  }
  spigot "body" { # ERROR "is larger than its stock"
    diameter = 12
    length   = 5
  }
  spigot "same" { # ERROR "Nothing is left to turn"
    diameter = 10
  }
}

part "sheet_part" {
  material = "brass"
  length   = 10
  stock "plate" { # ERROR "A turned part is not cut from stock 'plate'"
    thickness = 3
  }
  spigot "body" {
    diameter = 12
  }
}

part "odd" {
  material = "brass"
  length   = 10
  stock "bra" { # ERROR "Did you mean 'bar'?"
    diameter = 20
  }
  spigot "body" {
    diameter = 12
  }
}

part "two" {
  material = "brass"
  length   = 10
  stock "bar" {
    diameter = 20
  }
  stock "bar" { # ERROR "has a second stock"
    diameter = 20
  }
  spigot "body" {
    diameter = 12
  }
}

part "pipe" {
  material = "brass"
  length   = 10
  stock "tube" {
    outside = 20
    inside  = 15 # ERROR "The stock has no metal there"
  }
  spigot "body" {
    diameter = 18
  }
  bore "way" {
    diameter = 14
  }
}

part "thin_pipe" {
  material = "brass"
  length   = 10
  stock "tube" {
    outside = 20
    inside  = 20 # ERROR "The tube has no wall"
  }
  spigot "body" {
    diameter = 18
  }
  bore "way" {
    diameter = 16
  }
}

part "hex" {
  material = "brass"
  length   = 10
  stock "hexagon" {
    across_flats = 20
  }
  spigot "body" { # ERROR "is larger than its stock"
    diameter = 21
  }
}

part "hex_thread" {
  material = "brass"
  length   = 10
  stock "hexagon" {
    across_flats = 20
  }
  spigot "body" {
    as_supplied = true
    diameter    = 20 # ERROR "has two diameters"
  }
}

part "existing_gap" {
  material = "brass"
  length   = 10
  stock "existing" {
    length = 12
    spigot "old" { # ERROR "The outside ends 2 mm before the right end"
      diameter = 22
      length   = 10
    }
  }
  spigot "body" {
    diameter = 20
  }
}

part "inch_read_as_mm" {
  material = "brass"
  length   = 10
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 0.75 # WARNING "If the drawing has inches"
  }
}

part "rework" {
  material = "brass"
  length   = 10
  stock "existing" { # ERROR "The stock has no metal there"
    length = 12
    at     = 1
    spigot "old" {
      diameter = 22
    }
    bore "old_bore" {
      diameter = 8
    }
  }
  spigot "body" { # ERROR "The existing piece does not allow spigot 'body'"
    diameter    = 20
    as_supplied = true
    length      = 5
  }
  spigot "big" { # ERROR "The existing piece does not allow spigot 'big'"
    diameter = 23
  }
  bore "way" {
    diameter = 6
  }
}
