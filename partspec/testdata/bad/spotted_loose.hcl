# A fit so wide that the parts alone may shift by more than the screw has room.
part "flange" {
  material = "brass"
  length   = 16
  stock "bar" {
    diameter = 65
  }
  flange "rim" {
    diameter = 60
    length   = 12
  }
  spigot "register" {
    diameter = 24
    length   = 4
  }
  holes "ring" {
    circle    = 44
    count     = 4
    clearance = "M4"
  }
}

part "shaking" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "rectangle" {
    width  = 70
    height = 70
  }
  bore "way" {
    at       = [35, 35]
    diameter = 24
  }
  holes "ring" {
    circle = 44
    about  = [35, 35]
    count  = 4
    thread = "M4"
    match  = part.flange.holes.ring # ERROR "The screw of holes 'ring' finds no room in its match"
  }
}

fit "shaking_on_flange" {
  hole  = "shaking.way"
  shaft = "flange.register"
  class = "H11/c11"
}
