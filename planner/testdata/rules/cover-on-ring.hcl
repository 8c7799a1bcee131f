# A cover's clearance holes are drilled by their places; the ring of the housing is spotted through from them and tapped.
part "gauge_cover" {
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
    clearance = "M4"
  }
}
part "housing_ring" {
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
    circle = part.gauge_cover.holes.screws.circle
    count  = 6
    thread = "M4"
    match  = part.gauge_cover.holes.screws
  }
}

fit "register" {
  hole  = "gauge_cover.way"
  shaft = "housing_ring.lip"
  class = "H8/f7"
}
