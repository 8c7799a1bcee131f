part "screw_plate" {
  material  = "mild steel"
  thickness = 10
  stock "plate" {
    thickness         = 10
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 70
    height = 50
  }
  bore "screw" {
    at = [30, 25]
  }
  thread "fine" {
    on   = "screw"
    size = "M24x1.5"
  }
  chamfer "lead" {
    edge = "screw.front"
    size = 1.5
  }
}
