# Countersunk and blind holes found by punch marks, in a drilling machine that has only its stop to tell depth.
part "marked_ring" {
  material = "brass"
  length   = 12

  stock "bar" {
    diameter = 85
  }
  flange "rim" {
    diameter = 80
    length   = 12
  }
  bore "main" {
    diameter = 12
  }
  holes "sunk" {
    circle    = 60
    count     = 3
    clearance = "M4"
    from      = "right"
    position  = 1
    locate_by = "punch_mark"

    countersink {
      diameter = 8
    }
  }
  holes "blind" {
    circle      = 60
    start       = 60
    count       = 3
    thread      = "M4"
    full_thread = 4
    from        = "right"
    position    = 1
    locate_by   = "punch_mark"
  }
}
