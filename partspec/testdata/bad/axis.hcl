# Eccentrics that cannot be.
part "far_out" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 8
  }
  flange "disc" {
    diameter = 28
  }
  spigot "pin" {
    axis     = "throw"
    diameter = 14 # ERROR "spigot.pin stands out of flange.disc"
    length   = 6
  }
}

part "thin" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 5
  }
  flange "disc" {
    diameter = 28
  }
  bore "hole" {
    axis     = "throw"
    diameter = 18 # ERROR "bore.hole breaks out of disc"
  }
}

part "outside" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 76.2 # ERROR "lies outside the part"
  }
  flange "disc" {
    diameter = 28
  }
  bore "hole" {
    axis     = "throw"
    diameter = 5
  }
}

part "unknown" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 3
  }
  axis "second" { # ERROR "A second offset axis"
    offset = 4
  }
  flange "disc" {
    diameter = 28
  }
  bore "hole" {
    axis     = "thrown" # ERROR "There is no axis"
    diameter = 5
  }
}

part "none" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  flange "disc" {
    diameter = 28
  }
  bore "hole" {
    axis     = "throw" # ERROR "There is no axis"
    diameter = 5
  }
}

part "idle" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" { # ERROR "Nothing lies about the axis"
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
}

part "nought" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 0 # ERROR "offset"
  }
  flange "disc" {
    diameter = 28
  }
  bore "hole" {
    axis     = "throw"
    diameter = 5
  }
}

part "both" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
  bore "middle" {
    diameter = 5
  }
  counterbore "mouth" { # ERROR "No counterbore lies about an offset axis"
    axis     = "throw"
    diameter = 9
  }
  bore "hole" {
    axis     = "throw"
    diameter = 5
    depth    = 8 # ERROR "about an offset axis has no depth"
  }
}

part "clash" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
  bore "middle" { # ERROR "and an offset axis in one part"
    diameter = 5
  }
  bore "hole" {
    axis     = "throw"
    diameter = 5
  }
}

part "edged" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
  spigot "pin" {
    axis     = "throw"
    diameter = 14
    length   = 6
  }
  chamfer "lost" { # ERROR "is taken away by spigot.pin"
    edge = "disc.right"
    size = 1
  }
}

part "edged_on" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
  spigot "pin" {
    axis     = "throw"
    diameter = 14
    length   = 6
  }
  chamfer "on_pin" {
    edge = "pin.right" # ERROR "lies about an offset axis"
    size = 1
  }
}

part "two_ends" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
  spigot "pin" {
    axis     = "throw"
    diameter = 14
    length   = 6
  }
  spigot "other" { # ERROR "spigot.other is a second spigot"
    axis     = "throw"
    diameter = 14
    length   = 6
    from     = "left"
  }
}

part "two_bores" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 30
  }
  axis "throw" {
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
  bore "hole" {
    axis     = "throw"
    diameter = 10
  }
  bore "again" { # ERROR "bore.again is a second bore"
    axis     = "throw"
    diameter = 8
  }
}

part "six_sided" {
  material = "brass"
  length   = 40
  stock "hexagon" {
    across_flats = 30
  }
  axis "throw" { # ERROR "Eccentrics are cut from round bar"
    offset = 3
  }
  flange "disc" {
    diameter = 28
  }
  spigot "pin" {
    axis     = "throw"
    diameter = 14
    length   = 6
  }
}
