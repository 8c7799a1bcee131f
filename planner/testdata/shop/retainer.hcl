# A retainer: its screws lie outside the face that it stands on.
part "retainer" {
  material = "aluminium"
  length   = 8
  stock "bar" {
    diameter = 60
  }
  flange "rim" {
    diameter = 58
    length   = 4
  }
  spigot "nose" {
    diameter = "42 h7"
  }
  bore "eye" {
    diameter = "34 H8"
  }
  holes "screws" {
    circle = 50
    count  = 4
    start  = 45
    clearance = "M3"
    from = "left"
    counterbore {
      diameter = 6
      depth = 2
    }
  }
  concentric {
    of = "nose"
    to = "eye"
    within = 0.02
  }
}
