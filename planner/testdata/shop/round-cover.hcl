# A round cover: its bore and its ring of holes lie about the middle, which nobody has to write.
part "round_cover" {
  material  = "brass"
  thickness = 6

  stock "sheet" {
    thickness         = 6
    faces_as_supplied = true
  }
  outline "disc" {
    diameter = 80
  }
  bore "way" {
    diameter = "24 H7"
  }
  holes "screws" {
    circle    = 60
    count     = 6
    clearance = "M4"
  }
}
