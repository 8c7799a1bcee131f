# A cover plate with a round top, and a base plate: flat parts.
part "cover" {
  material  = "mild steel"
  thickness = 4
  stock "plate" {
    thickness = 6
    width     = 70
    length    = 110
  }
  outline "round_topped" {
    width  = 60
    height = 70
    radius = 30
  }
  bore "main" {
    at       = "top.centre"
    diameter = "40 H8"
  }
  holes "fixing" {
    at        = [[8, 8], [60 - 8, 8]]
    clearance = "M4"
  }
}
