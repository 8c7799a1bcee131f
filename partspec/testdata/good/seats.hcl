part "gauge_pipe" {
  material = "mild steel"
  length   = 120
  bought   = true

  stock "bar" {
    diameter = 95
  }
  spigot "outside" {
    diameter = 90
  }
}

part "saddle_block" {
  material  = "bronze"
  thickness = 20

  stock "plate" {
    thickness = 22
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  bore "well" {
    at       = [30, 20]
    diameter = 10
    depth    = 8
  }
  holes "fixing" {
    at        = [[8, 8], [52, 8], [8, 32], [52, 32]]
    thread    = "M4"
    direction = "axis"
  }
  seat "pipe" {
    on        = "back"
    radius    = part.gauge_pipe.spigot.outside.diameter / 2
    finish_by = "file"
    leftover  = 0.05
  }
}

part "cradle" {
  material  = "brass"
  thickness = 20

  stock "plate" {
    thickness         = 20
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  slot "beside" {
    width = 4
    ends  = [[8, 12], [8, 28]]
    depth = 3
  }
  seat "bar" {
    on     = "front"
    chord  = "16 ±0.05"
    rise   = "4 ±0.02"
    angle  = 270
    at     = 32.5
    across = 14
    note   = "the float's guide bar"
  }
}

part "rail_post" {
  material = "brass"
  length   = 70

  stock "bar" {
    diameter = 20
  }
  spigot "foot" {
    diameter = 10
    length   = 12
  }
  spigot "post" {
    diameter = 16
  }
  cross_hole "screw" {
    on       = "post"
    at       = 14
    from     = "right"
    diameter = 3.4
    angle    = 90
  }
  seat "rail" {
    on        = "post"
    at        = 14
    from      = "right"
    radius    = 8
    depth     = "5 ±0.1"
    angle     = 90
    finish_by = "file"
  }
  seat "chain" {
    on    = "post"
    chord = 10
    rise  = 2
    depth = 2
    angle = 270
    note  = "over the middle of the post, as no place is written"
  }
}
