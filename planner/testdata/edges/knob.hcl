# A knob with a rounded edge on either side of its head.
part "knob" {
  material = "brass"
  length   = 30

  stock "bar" {
    diameter = 32
  }

  spigot "stem" {
    diameter = 12
    length   = 14
  }
  flange "head" {
    diameter = 28
    length   = 16
  }
  fillet "top" {
    edge   = "head.right"
    radius = 3
  }
  fillet "under" {
    edge   = "head.left"
    radius = 2
  }
}
