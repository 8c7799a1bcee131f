part "spacer_ring" {
  material = "aluminium"
  length   = 6
  stock "bar" {
    diameter = 50
  }
  flange "ring" {
    diameter = 48
    length = "6 ±0.05"
  }
  bore "hole" {
    diameter = 32
  }
  holes "fix" {
    circle    = 40
    count     = 4
    clearance = "M3"
  }
}
