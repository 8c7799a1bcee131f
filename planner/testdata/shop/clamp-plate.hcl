part "clamp_plate" {
  material  = "mild steel"
  thickness = 12
  stock "plate" {
    thickness         = 12
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 160
    height = 50
  }
  bore "screw" {
    at       = [130, 25]
    diameter = 9
  }
  counterbore "head" {
    at       = "screw"
    diameter = 15
    depth    = 8.6
  }
}
