# The cup that the float's rod hangs in: a flat floor, with no hole in it for a bar to start from.
part "float_cup" {
  material = "aluminium"
  length   = 30

  stock "bar" {
    diameter = 45
  }
  flange "skirt" {
    diameter = "40 h7"
  }
  bore "inside" {
    diameter = 36
    depth    = 26
    flat     = true
    from     = "right"
  }
}
