# Vent tube of the stilling pipe: a spigot on each end goes into bored bosses.
part "vent_tube" {
  material = "brass-free-cutting"
  length   = 48

  stock "bar" {
    diameter = 28
  }

  spigot "lower" {
    diameter = 18 # limits from the fit below
    length   = 15
  }
  flange "collar" {
    diameter = 26
    length   = 6
  }
  spigot "upper" {
    diameter = "14 -0.02 -0.05"
    length   = 27
  }
  bore "way" {
    diameter = 10
  }
  chamfer "lower_lead" {
    edge = "lower.left"
    size = 0.5
  }
  chamfer "upper_lead" {
    edge = "upper.right"
    size = 0.5
  }

  concentric {
    of     = "upper"
    to     = "lower"
    within = 0.03
  }
}

# The boss that takes the vent tube's lower spigot.
part "lower_boss" {
  material = "brass-free-cutting"
  length   = 20

  stock "bar" {
    diameter = 32
  }

  spigot "outside" {
    diameter = 30
    length   = 20
  }
  bore "seat" {
    diameter = part.vent_tube.spigot.lower.diameter
    depth    = 16 # a little deeper than the spigot is long: the collar seats
    from     = "left"
  }
  bore "way" {
    diameter = 10
    from     = "right"
  }
}

fit "tube_in_boss" {
  hole  = "lower_boss.seat"
  shaft = "vent_tube.lower"
  class = "H9/f8"
}
