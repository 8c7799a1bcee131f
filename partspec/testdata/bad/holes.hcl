# Patterns of holes that cannot be, or hardly can.
part "told" {
  material  = "brass"
  thickness = 6
  stock "plate" {
    thickness = 7
  }
  outline "rectangle" {
    width  = 80
    height = 50
  }
  holes "nowhere" { # ERROR "does not say once where its holes are"
    diameter = 4
  }
  holes "twice" { # ERROR "does not say once where its holes are"
    at       = [[10, 10]]
    circle   = 20
    count    = 4
    about    = [40, 25]
    diameter = 4
  }
  holes "nothing" { # ERROR "does not say once what its holes are"
    at = [[10, 10]]
  }
  holes "both" { # ERROR "does not say once what its holes are"
    at        = [[10, 10]]
    diameter  = 4
    clearance = "M4"
  }
  holes "no_centre" {
    circle   = 20 # ERROR "has no centre"
    count    = 4
    diameter = 4
  }
  holes "no_count" {
    circle   = 20 # ERROR "lacks count"
    about    = [40, 25]
    diameter = 4
  }
  holes "stray" {
    at       = [[10, 10]]
    diameter = 4
    start    = 30   # ERROR "start belongs to a circle"
    class    = "6H" # ERROR "class belongs to a thread"
  }
  holes "unknown_place" {
    circle   = 20
    count    = 4
    about    = "hole" # ERROR "'hole' names no place"
    diameter = 4
  }
  holes "no_arc" {
    circle   = 20
    count    = 4
    about    = "top.centre" # ERROR "The outline has no arc 'top'"
    diameter = 4
  }
  holes "screw" {
    at        = [[10, 10]]
    clearance = "M4.2" # ERROR "No table has the screw"
  }
  holes "thread" {
    at     = [[10, 10]]
    thread = "M4x9" # ERROR "No table has the thread"
  }
  holes "dowel" {
    at    = [[10, 10]]
    dowel = 4 # ERROR "A dowel hole needs its class"
  }
  holes "shaft_class" {
    at    = [[10, 10]]
    dowel = "4 h7" # ERROR "h7 is the class of a shaft"
  }
  holes "words" {
    at        = [[10, 10]]
    diameter  = 4
    from      = "top"  # ERROR "cannot begin from 'top'"
    locate_by = "luck" # ERROR "cannot be located by 'luck'"
  }
  holes "turned" {
    at        = [[10, 10]]
    diameter  = 4
    locate_by = "dividing_head" # ERROR "A flat part is not turned on a dividing head"
  }
  holes "several" {
    at       = [[10, 10]]
    dowel    = "4 h7" # ERROR "h7 is the class of a shaft"
    from     = "top"  # ERROR "cannot begin from 'top'"
    position = 0      # ERROR "it is not above 0"
    count    = 2.5    # ERROR "it is not a count"
  }
  holes "match" {
    at       = [[10, 10]]
    diameter = 4
    match    = part.other.ring # ERROR "names no pattern of holes"
  }
  holes "one_coordinate" {
    at       = [[10]] # ERROR "a place has two coordinates"
    diameter = 4
  }
  holes "three_coordinates" {
    at       = [10, 10, 5] # ERROR "a place has two coordinates"
    diameter = 4
  }
  holes "sinks" {
    at       = [[10, 10]]
    diameter = 4
    counterbore {
      diameter = 8
      depth    = 2
    }
    countersink { # ERROR "is counterbored and countersunk"
      diameter = 8
    }
  }
  holes "narrow" {
    at       = [[10, 10]]
    diameter = 4
    counterbore {
      diameter = 4 # ERROR "is no wider than its hole"
      depth    = 2
    }
  }
  holes "flat_cone" {
    at       = [[10, 10]]
    diameter = 4
    countersink {
      diameter = 8
      angle    = 20 # ERROR "There is no such countersink"
    }
  }
}

part "deep" {
  material  = "brass"
  thickness = 6
  stock "plate" {
    thickness = 7
  }
  outline "rectangle" {
    width  = 80
    height = 50
  }
  holes "deep" {
    at       = [[10, 10]]
    diameter = 4
    depth    = 6 # ERROR "is deeper than the metal"
  }
  holes "point" {
    at       = [[20, 10]]
    diameter = 4
    depth    = 5 # ERROR "The drill's point breaks through"
  }
  holes "half_told" {
    at     = [[30, 10]]
    thread = "M3"
    depth  = 4 # ERROR "does not say how deep its thread is full"
  }
  holes "full" {
    at          = [[40, 10]]
    thread      = "M4"
    full_thread = 7 # ERROR "The thread of holes 'full' is deeper than the metal"
  }
  holes "bottomed" {
    at          = [[50, 10]]
    thread      = "M3"
    full_thread = 4 # ERROR "reaches the floor of its hole"
    depth       = 4.2
  }
  holes "both" {
    at       = [[60, 10]]
    diameter = 3
    depth    = 2 # ERROR "both through and blind"
    through  = true
  }
  holes "not_through" {
    at       = [[70, 10]]
    diameter = 3
    through  = false # ERROR "lacks depth"
  }
  holes "sunk_through" {
    at       = [[10, 40]]
    diameter = 3
    counterbore {
      diameter = 6 # ERROR "goes right through"
      depth    = 6
    }
  }
  holes "sunk_deep" {
    at       = [[20, 40]]
    diameter = 3
    depth    = 2
    counterbore {
      diameter = 6 # ERROR "is deeper than its holes"
      depth    = 2.5
    }
  }
}

part "edges" {
  material  = "brass"
  thickness = 6
  stock "plate" {
    thickness = 7
  }
  outline "rectangle" {
    width  = 80
    height = 50
  }
  holes "outside" { # ERROR "Hole 2 of holes 'outside' lies outside the outline"
    at       = [[10, 10], [-10, 10]]
    diameter = 4
  }
  holes "breaks" { # ERROR "breaks through the edge 'top'"
    at       = [[20, 49]]
    diameter = 4
  }
  holes "sink" { # ERROR "The widened mouth of hole 1 of holes 'sink' breaks through the edge 'top'"
    at       = [[30, 46]]
    diameter = 2
    counterbore {
      diameter = 9
      depth    = 2
    }
  }
  holes "near" { # WARNING "really so near to the edge 'top'"
    at       = [[40, 47]]
    diameter = 4
  }
  holes "tapped" { # WARNING "really so near to the edge 'top'"
    at     = [[50, 46]]
    thread = "M4"
  }
  bore "big" { # WARNING "Is bore 'big' really so near"
    at       = [65, 35]
    diameter = 28
  }
}

part "neighbours" {
  material  = "brass"
  thickness = 6
  stock "plate" {
    thickness = 7
  }
  outline "rectangle" {
    width  = 80
    height = 50
  }
  bore "main" {
    at       = [40, 25]
    diameter = 20
  }
  holes "ring" { # ERROR "Bore 'main' and hole 1 of holes 'ring' meet"
    circle   = 22
    count    = 4
    about    = "main"
    diameter = 3
  }
  holes "row" { # ERROR "Hole 1 of holes 'row' and hole 2 of holes 'row' meet"
    at       = [[10, 10], [12, 10]]
    diameter = 3
  }
  holes "close" { # WARNING "really so near to each other"
    at       = [[10, 40], [15, 40]]
    diameter = 3
  }
  holes "sinks" { # ERROR "The widened mouths of"
    at       = [[60, 10], [66, 10]]
    diameter = 3
    counterbore {
      diameter = 7
      depth    = 2
    }
  }
}
