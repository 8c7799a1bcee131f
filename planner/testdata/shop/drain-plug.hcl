# Drawn in inches, from hexagon: a head too short to be held by, its corners turned off steeply, and a thread that holds it while they are.
part "drain_plug" {
  material = "brass"
  drawn_in = "inch"
  length   = 0.875
  stock "hexagon" {
    across_flats = "3/4 in"
  }
  spigot "head" {
    as_supplied = true
    length = 0.3
  }
  spigot "seat" {
    diameter = 0.6
    length   = "1/16 in"
  }
  spigot "shank" {}
  thread "run" {
    on   = "shank"
    size = "UNF 3/8-24"
    length = 0.4
  }
  chamfer "lead" {
    edge = "shank.right"
    size = 0.04
  }
  chamfer "crown" {
    edge  = "head.left"
    size  = 0.04
    angle = 60
  }
  bore "tommy" {
    from = "left"
    diameter = 0.125
    depth = 0.4
  }
}
