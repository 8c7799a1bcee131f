# Its round top, sawn, meets its sides within rounding only, level with the middle of its bore.
part "thing" {
  material = "aluminium"
  thickness = 4.5

  stock "plate" {
    thickness = 4.5
    faces_as_supplied = true
  }
  outline "round_topped" {
    width = 59.5
    height = 54.5
    radius = 29.75
  }
  bore "main" {
    at = "top.centre"
    diameter = "27 mm H8"
  }
  holes "ring" {
    circle = 35
    count = 4
    start = 105
    about = "top.centre"
    thread = "M3"
  }
}
