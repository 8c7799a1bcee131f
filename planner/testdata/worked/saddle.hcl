# A saddle flange in gunmetal, seated on a pipe of 114, with a ring of tapped holes.
part "saddle" {
  material = "gunmetal"
  length   = 14

  stock "bar" {
    diameter = 65
  }

  flange "rim" {
    diameter = 60
    length   = 12
  }
  spigot "register" {
    diameter = "34 h8"
    length   = 2
  }
  bore "way" {
    diameter = "24 H9"
  }
  holes "ring" {
    circle = 46
    count  = 6
    thread = "M4"
    from   = "right"
  }
  seat "pipe" {
    on        = "left"
    radius    = "57 ±0.3"
    angle     = 90
    finish_by = "file"
    leftover  = 0.1
  }

  concentric {
    of     = "register"
    to     = "way"
    within = 0.05
  }
}
