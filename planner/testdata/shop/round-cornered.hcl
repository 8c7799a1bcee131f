# A small plate with corners too large to be filed without a saw.
part "label" {
  material = "aluminium"
  thickness = 2

  stock "plate" {
    thickness = 2
    faces_as_supplied = true
  }
  outline "rectangle" {
    width = 30
    height = 42
    corner_radius = 6
  }
  bore "main" {
    at = [15, 21]
    diameter = "7 mm H8"
  }
}
