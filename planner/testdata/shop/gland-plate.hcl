part "gland" {
  material  = "brass"
  thickness = 12
  stock "plate" {
    thickness         = 12
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 70
    height = 50
  }
  bore "main" {
    at       = [30, 25]
    diameter = "24 H8"
  }
  chamfer "lead" {
    edge = "main.front"
    size = 1
  }
  chamfer "back" {
    edge = "main.back"
    size = 0.5
  }
  bore "small" {
    at       = [58, 25]
    diameter = "8 H7"
  }
  chamfer "mouth" {
    edge = "small.front"
    size = 1
  }
}
