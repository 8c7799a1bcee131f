# Drawn in inches: its shoulder stands up to a mark short of its place, and the second face leaves room for that. Its cone is cut from the bored hole, with no drill between.
part "thing" {
  drawn_in = "inch"
  material = "gunmetal"
  length   = 0.875
  stock "bar" {
    diameter = 2
  }
  flange "plate" {
    diameter = 1.875
    length   = 0.1875
  }
  spigot "boss" {
    diameter = 0.9375
  }
  bore "way" {
    diameter = "0.5 +0.002 -0"
  }
  holes "bolts" {
    circle    = 1.4375
    count     = 6
    clearance = "4 BA"
  }
  taper "mouth" {
    inside   = true
    from     = "right"
    large    = 0.625
    angle    = 60
    length   = 0.0625
    large_at = "right"
  }
}
