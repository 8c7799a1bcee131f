part "inch_plate" {
  drawn_in  = "inch"
  material  = "mild steel"
  thickness = "1/4 in"
  stock "plate" {
    thickness         = "1/4 in"
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = "2 1/2 in"
    height = "1 1/2 in"
  }
  bore "main" {
    at       = [0.875, 0.75]
    diameter = "5/8 in"
  }
  holes "screws" {
    at        = [[0.25, 0.25], [2.25, 0.25], [2.25, 1.25], [0.25, 1.25]]
    thread    = "BA 4"
  }
}
