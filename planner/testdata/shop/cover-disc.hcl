part "cover_disc" {
  material  = "mild steel"
  thickness = 5
  stock "plate" {
    thickness         = 5
    width             = 70.5
    length            = 70.5
    faces_as_supplied = true
  }
  outline "disc" {
    diameter = "70 h8"
  }
  bore "centre" {
    at       = [0, 0]
    diameter = "12 H7"
  }
}
