# The cover over the gauge's works: a plate with a round top. The big bore, through which the dial is read, comes within 5 mm of three edges; the hood is held by four
# screws, and a spindle runs through the small bore.
part "cover" {
  material  = "mild steel"
  thickness = 4

  stock "plate" {
    thickness         = 4
    width             = 64
    length            = 104
    faces_as_supplied = true # bright plate of the finished thickness
  }

  outline "round_topped" {
    width  = 60
    height = 70 # to the centre of the top
    radius = 30
  }

  bore "window" {
    at       = "top.centre"
    diameter = "50 H8"
  }
  bore "spindle" {
    at       = [30, 24]
    diameter = "8 H7"
  }
  holes "hood" {
    at     = [[8, 8], [52, 8], [52, 34], [8, 34]]
    thread = "M4"
  }
}
