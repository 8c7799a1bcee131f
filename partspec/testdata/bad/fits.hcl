# Fits and relations that cannot be.
part "boss" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 32
  }
  spigot "outside" {
    diameter = 30
  }
  bore "seat" {
    diameter = "18 +0.1 -0"
  }
  concentric {
    of     = "outside"
    to     = "seta" # ERROR "Did you mean 'seat'?"
    within = 0.05
  }
  concentric { # ERROR "Only round surfaces are concentric"
    of     = "face.left"
    to     = "seat"
    within = 0.05
  }
  square { # ERROR "A face is square to an axis"
    of     = "outside"
    to     = "seat"
    within = 0.05
  }
  parallel { # ERROR "Only faces are parallel"
    of     = "face.left"
    to     = "seat"
    within = 0.05
  }
  run_out {
    of     = "outside"
    to     = "outside" # ERROR "is bound to itself"
    within = 0.05
  }
  run_out {
    of     = "outside"
    to     = "face.left" # ERROR "Run-out is about an axis"
    within = 0.05
  }
  square { # ERROR "square lacks within"
    of = "face.left"
    to = "seat"
  }
  square "named" { # ERROR "square takes no name"
    of     = "face.left"
    to     = "seat"
    within = 0.01
  }
  square {
    of     = "face.up" # ERROR "names no surface"
    to     = "seat"
    within = 0.01
  }
}

part "tube" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 32
  }
  spigot "outside" {
    diameter = 18
    measured = 17.5
    length   = 10
  }
  spigot "shoulder" {
    diameter = 18
  }
  square {
    of     = "outside.right" # ERROR "has no shoulder there"
    to     = "shoulder"
    within = 0.01
  }
}

part "ring" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 32
  }
  spigot "outside" {
    diameter = 30
  }
  bore "hole" {
    diameter = 18
    measured = 18.01
  }
}

fit "limits_twice" { # ERROR "boss.seat has limits already"
  hole  = "boss.seat"
  shaft = "tube.outside"
  class = "H7/g6"
}
fit "sizes" { # ERROR "Hole and shaft have different sizes"
  hole  = "ring.hole"
  shaft = "ring.outside"
  class = "H7/g6"
}
fit "made" { # ERROR "The measured sizes do not make the fit"
  hole  = "ring.hole"
  shaft = "tube.outside"
  class = "H7/g6"
}
fit "kinds" {
  hole  = "tube.outside" # ERROR "tube.outside is no hole"
  shaft = "ring.hole"    # ERROR "ring.hole is no shaft"
  class = "H7/g6"
}
fit "names" {
  hole  = "ring.hoel" # ERROR "has no feature 'hoel'. Did you mean 'hole'?"
  shaft = "tub.outside" # ERROR "There is no part 'tub'"
  class = "g6/H7"       # ERROR "There is no such fit"
}
fit "which" { # ERROR "does not say which fit"
  hole  = "ring.hole"
  shaft = "tube.outside"
}
fit "which" { # ERROR "A second fit"
  hole    = "ring.hole"
  shaft   = "tube" # no message: a fit of the same name is not looked at
  purpose = "glue"
}
fit "purpose" {
  hole    = "ring.hole"
  shaft   = "tube" # ERROR "names no feature of a part"
  purpose = "glue" # ERROR "There is no such fit"
}

part "screw" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 18
  }
  spigot "blank" {
    diameter = 10
    length   = 10
  }
  spigot "bright" {
    as_supplied = true
  }
  thread "m10" {
    on   = "blank"
    size = "M10"
  }
}

part "holes" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 30
  }
  spigot "outside" {
    diameter = 28
  }
  bore "ten" {
    diameter = 10
  }
  counterbore "eighteen" {
    diameter = 18
    depth    = 5
    measured = 180 # WARNING "measured 180 mm where 18 mm is drawn"
  }
}

fit "on_a_thread" { # ERROR "screw.blank has limits already"
  hole  = "holes.ten"
  shaft = "screw.blank"
  class = "H7/g6"
}

fit "on_bought_metal" { # ERROR "screw.bright has limits already"
  hole  = "holes.eighteen"
  shaft = "screw.bright"
  class = "H7/g6"
}
