# Holes found by punch marks.
part "marked" {
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
    position  = 1
    locate_by = "punch_mark"
  }
}
