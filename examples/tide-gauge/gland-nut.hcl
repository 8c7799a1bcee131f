# Gland nut of the pen shaft: drawn in inches a century ago, made on metric dials.
part "gland_nut" {
  material = "brass-free-cutting"
  drawn_in = "inch"
  length   = "9/16 in"

  stock "hexagon" {
    across_flats = "15/16 in"
  }

  spigot "body" {
    as_supplied = true
  }
  bore "end_wall" {
    diameter = "21/64 in"
  }
  counterbore "socket" {
    from  = "right"
    depth = "13/32 in"
  }
  thread "gland" {
    on     = "socket"
    size   = "3/4x26 Brass"
    length = "5/16 in"
  }
  recess "runout" {
    on       = "socket"
    diameter = "25/32 in"
    width    = "3/32 in"
    at       = "5/16 in" # from the mouth of the socket
  }
  chamfer "lead" {
    edge = "socket.right"
    size = "1/16 in"
  }
  chamfer "corners_right" {
    edge  = "body.right"
    size  = "1/16 in"
    angle = 30
  }
  chamfer "corners_left" {
    edge  = "body.left"
    size  = "1/16 in"
    angle = 30
  }

  square {
    of     = "face.right"
    to     = "gland"
    within = 0.001
  }
}
