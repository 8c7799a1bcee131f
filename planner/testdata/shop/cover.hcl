part "end_cover" {
  material  = "aluminium"
  thickness = 8
  stock "plate" {
    thickness = 10
  }
  outline "rectangle" {
    width  = 70
    height = 50
  }
  bore "bearing" {
    at       = [20, 25]
    diameter = "26 H7"
  }
  holes "fix" {
    at        = [[6, 6], [64, 6], [64, 44], [6, 44]]
    clearance = "M4"
  }
}
