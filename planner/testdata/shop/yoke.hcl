part "yoke_block" {
  material  = "aluminium"
  thickness = 20
  stock "plate" {
    thickness = 22
    width = 40
    length = 52
  }
  outline "rectangle" {
    width  = 36
    height = 48
  }
  bore "main" {
    at       = [18, 30]
    diameter = "16 H7"
  }
  slot "groove" {
    width = 6
    ends  = [[18, 4], [18, 12]]
    depth = 5
  }
  holes "tapped" {
    at     = [[6, 6], [30, 6]]
    thread = "M5"
    full_thread = 10
  }
}
