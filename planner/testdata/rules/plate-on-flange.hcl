# A plate is spotted through from a flange that sits in its bore, and tapped.
part "flange_ring" {
  material = "brass"
  length   = 16
  stock "bar" {
    diameter = 85
  }
  flange "rim" {
    diameter = 80
    length   = 12
  }
  spigot "lip" {
    diameter = 24
    length   = 4
  }
  bore "main" {
    diameter = 12
  }
  holes "screws" {
    circle    = 60
    count     = 6
    clearance = "M4"
  }
}
part "cover" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness         = 6
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 90
    height = 90
  }
  bore "way" {
    at       = [45, 45]
    diameter = 24
  }
  holes "screws" {
    circle    = 60
    about     = [45, 45]
    count     = 6
    thread    = "M4"
    match     = part.flange_ring.holes.screws
  }
}
fit "register" {
  hole  = "cover.way"
  shaft = "flange_ring.lip"
  class = "H8/f7"
}
