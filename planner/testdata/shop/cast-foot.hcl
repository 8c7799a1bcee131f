part "foot" {
  material  = "cast iron"
  thickness = 12
  stock "casting" {
    metal = 2
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  bore "post" {
    at       = [22, 20]
    diameter = "20 H8"
  }
  holes "bolts" {
    at        = [[50, 10], [50, 30]]
    clearance = "M6"
  }
}
