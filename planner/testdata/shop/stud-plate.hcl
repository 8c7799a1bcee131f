part "stud_plate" {
  material  = "mild steel"
  thickness = 16
  stock "plate" {
    thickness         = 16
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 70
    height = 50
  }
  bore "screw" {
    at = [20, 25]
  }
  thread "lock" {
    on   = "screw"
    size = "M8"
  }
  chamfer "lead" {
    edge = "screw.front"
    size = 0.8
  }
  bore "blind" {
    at = [50, 25]
    depth = 13
  }
  thread "stud" {
    on = "blind"
    size = "M6"
    length = 8
  }
}
