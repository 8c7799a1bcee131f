# Holes that punch marks do not place well enough: refused.
part "too_fine" {
  material = "mild steel"
  length   = 12

  stock "bar" {
    diameter = 65
  }
  flange "rim" {
    diameter = 60
    length   = 12
  }
  bore "main" {
    diameter = 20
  }
  holes "loose" {
    circle    = 42
    count     = 4
    diameter  = 5
    position  = 0.2
    locate_by = "punch_mark"
  }
}
