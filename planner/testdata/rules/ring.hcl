# For the rules of what lies beside the axis: a close ring of blind tapped holes with countersunk mouths, about a bore.
part "ring" {
  material = "mild steel"
  length   = 20

  stock "bar" {
    diameter = 65
  }
  flange "rim" {
    diameter = 60
    length   = 20
  }
  bore "main" {
    diameter = "20 H9"
  }
  holes "cover" {
    circle      = 42
    count       = 4
    thread      = "M4"
    full_thread = 6
    depth       = 11
    from        = "right"
    position    = 0.2
    countersink {
      diameter = 5
      angle    = 90
    }
  }
}
