# Patterns that cannot be spotted through from others: what is drawn there, or what nothing holds true.
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
  holes "deep" {
    circle   = 44
    start    = 30
    count    = 4
    diameter = 3
    depth    = 6
    from     = "right"
  }
  holes "tapped" {
    circle = 44
    start  = 60
    count  = 4
    thread = "M3"
  }
}

part "cover" {
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
  holes "placed" {
    circle   = 44
    about    = [35, 35]
    count    = 4
    thread   = "M4"
    position = 0.2
    match    = part.flange.holes.ring # ERROR "has both a match and a position"
  }
  holes "found" {
    circle    = 44
    about     = [35, 35]
    start     = 22
    count     = 4
    thread    = "M4"
    locate_by = "dial"
    match     = part.flange.holes.ring # ERROR "has both a match and a locate_by"
  }
  holes "in_blind" {
    circle = 44
    about  = [35, 35]
    start  = 45
    count  = 4
    thread = "M2.5"
    match  = part.flange.holes.deep # ERROR "is spotted through blind holes"
  }
  holes "in_tapped" {
    circle = 44
    about  = [35, 35]
    start  = 67
    count  = 4
    thread = "M3"
    match  = part.flange.holes.tapped # ERROR "is spotted through tapped holes"
  }
}

part "related" {
  material = "brass"
  length   = 16
  stock "bar" {
    diameter = 65
  }
  flange "rim" {
    diameter = 60
    length   = 12
  }
  spigot "lip" {
    diameter = 24
    length   = 4
  }
  holes "ring" {
    circle = 44
    count  = 4
    thread = "M4"
    match  = part.flange.holes.ring # ERROR "has both a match and a relation"
  }
  position {
    of     = "ring"
    to     = "lip"
    within = 0.3
  }
}

part "plates" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "rectangle" {
    width  = 70
    height = 70
  }
  holes "no_screw" {
    circle   = 44
    about    = [35, 35]
    count    = 4
    diameter = 3
    match    = part.flange.holes.ring # ERROR "nothing says for which screw"
  }
  holes "loose" {
    circle = 44
    about  = [35, 35]
    start  = 45
    count  = 4
    thread = "M4"
    match  = part.flange.holes.ring # ERROR "Nothing holds holes 'loose' true to flange.ring"
  }
}

part "second" {
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
  holes "good" {
    circle = 44
    about  = [35, 35]
    count  = 4
    clearance = "M4"
    match  = part.flange.holes.ring
  }
}

part "third" {
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
  holes "chained" {
    circle = 44
    count  = 4
    thread = "M4"
    match  = part.second.holes.good # ERROR "is spotted through second.good, which is spotted through flange.ring itself"
  }
}

fit "second_on_flange" {
  hole  = "second.way"
  shaft = "flange.register"
  class = "H8/f7"
}
