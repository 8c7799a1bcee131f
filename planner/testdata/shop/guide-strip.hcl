part "guide_strip" {
  material  = "mild steel"
  thickness = 3
  stock "sheet" {
    thickness = 3
  }
  outline "rectangle" {
    width  = 100
    height = 20
  }
  holes "fix" {
    at        = [[10, 10], [50, 10], [90, 10]]
    clearance = "M4"
    countersink {
      diameter = 8.4
    }
  }
}
