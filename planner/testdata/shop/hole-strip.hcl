part "hole_strip" {
  drawn_in  = "inch"
  material  = "brass"
  thickness = 0.125
  stock "plate" {
    thickness         = 0.125
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 2
    height = 0.625
  }
  holes "fix" {
    at       = [[0.25, 0.3125], [1.75, 0.3125]]
    diameter = 0.128
  }
}
