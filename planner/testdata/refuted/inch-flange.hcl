# Drawn in inches: its milled faces come out a graduation's rest off the drawn ones, and those are what a drill touches.
part "thing" {
  drawn_in  = "inch"
  material  = "gunmetal"
  thickness = 0.3125
  stock "plate" {
    thickness = 0.375
  }
  outline "disc" {
    diameter = 2.75
  }
  bore "way" {
    diameter = "1.000 H8"
  }
  holes "bolts" {
    circle    = 2
    count     = 6
    clearance = "1/4 BSF"
  }
}
