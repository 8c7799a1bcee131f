# Patterns that flush edges do not hold true to their mates.
part "plate" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "rectangle" {
    width  = 80
    height = 56
  }
  holes "screws" {
    at        = [[8, 8], [72, 8]]
    clearance = "M4"
  }
  holes "sunk" {
    at        = [[20, 40], [50, 40]]
    clearance = "M4"
    countersink {
      diameter = 8
    }
  }
}

part "disc" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "disc" {
    diameter = 90
  }
  holes "screws" {
    at       = [[-32, 0], [32, 0]]
    thread   = "M4"
    match    = part.plate.holes.screws
    register = "edges" # ERROR "Flush edges do not hold holes 'screws' true to plate.screws"
  }
}

part "base" {
  material  = "brass"
  thickness = 8
  stock "sheet" {
    thickness = 8
  }
  outline "rectangle" {
    width  = 90
    height = 70
  }
  holes "beside" {
    at       = [[8, 12], [72, 12]]
    thread   = "M4"
    match    = part.plate.holes.screws
    register = "edges" # ERROR "the two patterns do not lie alike about the datum edges"
  }
  holes "into_the_joint" {
    at       = [[20, 40], [50, 40]]
    thread   = "M4"
    from     = "back"
    match    = part.plate.holes.sunk
    register = "edges" # ERROR "on faces that come together"
  }
  holes "dowelled" {
    at       = [[8, 20], [72, 20]]
    thread   = "M4"
    match    = part.plate.holes.screws
    register = "dowels" # ERROR "dowels, bolts and what is found by eye are not planned"
  }
  holes "alone" {
    at       = [[8, 60], [72, 60]]
    thread   = "M4"
    register = "edges" # ERROR "has a register and no match"
  }
}

part "rough" {
  material  = "brass"
  thickness = 8
  stock "sheet" {
    thickness = 8
  }
  outline "rectangle" {
    width  = 90
    height = 70

    edge "left" {
      as_supplied = true
    }
  }
  holes "screws" {
    at       = [[8, 8], [72, 8]]
    thread   = "M4"
    match    = part.plate.holes.screws
    register = "edges" # ERROR "the left edge of rough stays as supplied"
  }
}
