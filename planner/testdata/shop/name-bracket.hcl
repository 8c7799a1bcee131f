# A strip of sheet with round corners, longer than the vice opens: what cannot be milled is filed.
part "name_bracket" {
  material  = "mild steel"
  thickness = 3
  stock "sheet" {
    thickness = 3
  }
  outline "rectangle" {
    width = 100
    height = 30
    corner_radius = 3
  }
  holes "ends" {
    at = [[8, 15], [92, 15]]
    diameter = 5.5
  }
  slot "adjust" {
    width = 6
    ends = [[35, 15], [65, 15]]
    through = true
  }
}
