# A throw over half the width of the jaws: no four-jaw holds it (B-04e).
part "far_throw" {
  material = "brass"
  length   = 30

  stock "bar" {
    diameter = 40
  }
  axis "off" {
    offset = "7 ±0.1"
  }
  spigot "outside" {
    diameter = 36
  }
  bore "hole" {
    axis     = "off"
    diameter = "12 H8"
  }
}
