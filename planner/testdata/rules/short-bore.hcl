# A ring whose bore is too short for a plain mandrel (rule B-12).
part "ring" {
  material = "mild steel"
  length   = 6

  stock "bar" {
    diameter = 32
  }
  spigot "outside" {
    diameter = 30
  }
  bore "eye" {
    diameter = "10 H7"
  }
  square {
    of     = "face.left"
    to     = "eye"
    within = 0.3
  }
  square {
    of     = "face.right"
    to     = "eye"
    within = 0.3
  }
}
