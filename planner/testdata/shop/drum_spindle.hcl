# The spindle that the paper drum turns on: two journals true to each other, one at either end.
part "drum_spindle" {
  material = "silver steel"
  drawn_in = "inch"
  length   = "4 1/2 in"

  stock "bar" {
    diameter = "5/8 in"
  }
  spigot "lower" {
    diameter = "3/8 in h7"
    length   = 1
  }
  flange "body" {
    diameter = 0.5
    length   = "2 5/8 in"
  }
  spigot "upper" {
    diameter = "3/8 in h7"
  }
  chamfer "lower_lead" {
    edge = "lower.left"
    size = 1 / 64
  }
  chamfer "upper_lead" {
    edge = "upper.right"
    size = 1 / 64
  }
  concentric {
    of     = "upper"
    to     = "lower"
    within = 0.001
  }
}
