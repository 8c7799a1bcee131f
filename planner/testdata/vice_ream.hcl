part "link" {
  material  = "aluminium"
  thickness = 3
  stock "plate" {
    thickness         = 3
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  bore "pivot" {
    at       = [20, 20]
    diameter = "12 H7"
  }
}
