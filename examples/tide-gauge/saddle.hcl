# The saddle flange on the stilling pipe: a hollow seat stepped on the mill and filed, a ring of small tapped holes over it, and a neck that tapers to the
# float's guide. Seat and holes are cut while the blank still hangs on its bar; the neck is then turned on an arbor glued into the bore.
part "saddle" {
  material = "gunmetal"
  length   = 22
  note     = "sits on the stilling pipe, 114 outside, and carries the float's guide"

  stock "bar" {
    diameter = 65
  }

  flange "rim" {
    diameter = 60
    length   = 14
  }
  taper "neck" {
    large    = 38
    small    = 32
    length   = 8
    large_at = "left"
  }
  bore "way" {
    diameter = "16 H9"
  }
  holes "ring" {
    circle = 48
    count  = 6
    thread = "M4"
    from   = "right"
  }
  seat "pipe" {
    on        = "left"
    radius    = "57 ±0.3"
    angle     = 90
    finish_by = "file"
    leftover  = 0.1
  }
}
