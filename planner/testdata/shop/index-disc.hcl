# A dividing disc: its rim is turned about the bore, so that the bore needs no limits from the middle.
part "index_disc" {
  material  = "mild steel"
  thickness = 5
  stock "plate" {
    thickness         = 5
    faces_as_supplied = true
  }
  outline "disc" {
    diameter = "70 h8"
  }
  bore "centre" {
    at       = [0, 0]
    diameter = "12 H7"
  }
  holes "outer" {
    circle   = 60
    count    = 12
    diameter = 3
  }
  holes "inner" {
    circle = 30
    count  = 3
    start  = 90
    thread = "M3"
  }
}
