# A hexagon gland nut with a fine thread and a bore in its end wall.
part "gland_nut" {
  material = "brass-free-cutting"
  length   = 14

  stock "hexagon" {
    across_flats = 24
  }

  spigot "body" {
    as_supplied = true
  }
  bore "end_wall" {
    diameter = 8.2
  }
  counterbore "socket" {
    from  = "right"
    depth = 10.5
  }
  thread "gland" {
    on     = "socket"
    size   = "M20x1.5"
    length = 8
  }
  recess "undercut" {
    on       = "socket"
    diameter = 20.4
    width    = 2.5
    at       = 8 # from the mouth
  }
  chamfer "lead" {
    edge = "socket.right"
    size = 1
  }
  chamfer "corners_right" {
    edge  = "body.right"
    size  = 1
    angle = 30
  }
  chamfer "corners_left" {
    edge  = "body.left"
    size  = 1
    angle = 30
  }

  square {
    of     = "face.right"
    to     = "gland"
    within = 0.03
  }
}
