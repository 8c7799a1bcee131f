# A bore with general limits ends well beside its middle: the mandrel is turned to what is measured.
part "thing" {
  material = "mild steel"
  thickness = 2.5

  stock "plate" {
    thickness = 2.5
    faces_as_supplied = true
  }
  outline "disc" {
    diameter = 113
  }
  bore "main" {
    at = [0, 0]
    diameter = 49
  }
  holes "ring" {
    circle = 62
    count = 6
    start = 60
    about = [0, 0]
    clearance = "M3"
  }
}
