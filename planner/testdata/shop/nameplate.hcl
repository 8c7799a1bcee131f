part "name_plate" {
  material  = "brass"
  thickness = 1.6
  stock "sheet" {
    thickness = 1.6
  }
  outline "rectangle" {
    width         = 60
    height        = 25
    corner_radius = 3
  }
  holes "corners" {
    at        = [[5, 5], [55, 5], [55, 20], [5, 20]]
    clearance = "M2.5"
  }
}
