part "thin_strip" {
  material  = "mild steel"
  thickness = 2
  stock "sheet" {
    thickness = 2
  }
  outline "rectangle" {
    width  = 120
    height = 12
  }
  holes "fix" {
    at       = [[6, 6], [60, 6], [114, 6]]
    diameter = 3.2
  }
}
