# The run-out groove stands half a millimetre off the full thread: it is cut before the thread all the same.
part "gland" {
  material = "brass"
  length   = 22
  stock "hexagon" { across_flats = 27 }
  flange "head" {
    as_supplied = true
    length = 8
  }
  spigot "screw" {}
  thread "outer" {
    on = "screw"
    size = "M20x1.5"
    length = 11
  }
  groove "runout" {
    on = "screw"
    at = 0
    width = 2.5
    diameter = 17.8
  }
  bore "rod" { diameter = "8 +0.1 -0" }
  chamfer "lead" {
    edge = "screw.right"
    size = 1.2
  }
  chamfer "top" {
    edge = "head.left"
    size = 1.5
    angle = 60
  }
}
