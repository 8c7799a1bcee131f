# Drawn in inches: its round comes out a graduation's rest off the drawn one, and that is what a cutter across it touches.
part "thing" {
  drawn_in = "inch"
  material = "mild steel"
  length   = "2 1/2 in"
  stock "bar" {
    diameter = "3/4 in"
  }
  spigot "foot" {
    diameter = "1/2 in"
    length   = "3/8 in"
  }
  flange "body" {
    diameter = 0.7
    length   = 1.625
  }
  spigot "top" {
    diameter = "3/8 in"
  }
  thread "stud" {
    on   = "top"
    size = "BSF 3/8"
    length = 0.4
  }
  cross_hole "pin" {
    on       = "body"
    at       = 0.8
    diameter = "1/4 in"
  }
  flat "key" {
    on       = "body"
    at       = 1.2
    length   = 0.4
    depth    = 0.06
    count    = 2
  }
}
