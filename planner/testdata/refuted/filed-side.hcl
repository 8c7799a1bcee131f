# A file goes right along a side, over the corners of the blank that are still to come off: the vice's jaws then find it straight.
part "thing" {
  material = "aluminium"
  thickness = 5

  stock "plate" {
    thickness = 5
    faces_as_supplied = true
  }
  outline "rectangle" {
    width = 34.5
    height = 86.5
    corner_radius = 6
  }
  bore "main" {
    at = [17.5, 43.5]
    diameter = "12 mm ±0.1 mm"
  }
  holes "ring" {
    circle = 24
    count = 7
    start = 150
    about = [17.5, 43.5]
    clearance = "M3"
  }
}
