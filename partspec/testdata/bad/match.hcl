# Patterns drilled through from others that do not agree, positions that bind nothing, and castings and heads.
part "flange" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "disc" {
    diameter = 80
  }
  bore "way" {
    diameter = 20
  }
  holes "ring" {
    circle    = 50
    count     = 6
    clearance = "M4"
  }
}

part "cover" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "disc" {
    diameter = 80
  }
  bore "way" {
    diameter = 20
  }
  holes "own" {
    circle   = 30
    count    = 4
    diameter = 1.5
    match    = part.cover.holes.own # ERROR "is drilled through from its own part"
  }
  holes "no_part" {
    circle   = 36
    count    = 4
    diameter = 1.5
    match    = part.flnge.holes.ring # ERROR "There is no part 'flnge'. Did you mean 'flange'?"
  }
  holes "no_holes" {
    circle   = 42
    count    = 4
    diameter = 1.5
    match    = part.flange.holes.rng # ERROR "has no holes 'rng'"
  }
  holes "count" {
    circle   = 50
    count    = 4
    diameter = 1.5
    match    = part.flange.holes.ring # ERROR "different counts"
  }
  holes "apart" {
    circle   = 56
    count    = 6
    start    = 30
    diameter = 1.5
    match    = part.flange.holes.ring # ERROR "do not agree"
  }
  position { # ERROR "A position is about an axis"
    of     = "count"
    to     = "face.front"
    within = 0.1
  }
  position {
    of     = "face.back" # ERROR "Only holes have a position"
    to     = "way"
    within = 0.1
  }
  position {
    of     = "way"
    to     = "count" # ERROR "has no one axis"
    within = 0.1
  }
  square {
    of     = "face.left" # ERROR "names no surface. Write a bore or holes"
    to     = "way"
    within = 0.1
  }
  run_out { # ERROR "A flat part has no run-out"
    of     = "way"
    to     = "way"
    within = 0.1
  }
  parallel { # ERROR "Only faces are parallel. Name two faces, like of = 'face.back'"
    of     = "face.back"
    to     = "way"
    within = 0.1
  }
  concentric {
    of     = "count" # ERROR "has no one axis"
    to     = "way"
    within = 0.1
  }
}

part "screws" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "disc" {
    diameter = 80
  }
  holes "large" {
    circle = 50
    count  = 6
    thread = "M5"
    match  = part.flange.holes.ring # ERROR "The screw of holes 'large' does not pass its match"
  }
}

part "drills" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "disc" {
    diameter = 80
  }
  holes "large" {
    circle   = 50
    count    = 6
    diameter = 6
    match    = part.flange.holes.ring # ERROR "The drill of holes 'large' does not pass its match"
  }
}

part "one" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "disc" {
    diameter = 80
  }
  holes "ring" {
    circle   = 50
    count    = 6
    diameter = 3
    match    = part.other.holes.ring # ERROR "are drilled through from each other"
  }
}

part "other" {
  material  = "brass"
  thickness = 6
  stock "sheet" {
    thickness = 6
  }
  outline "disc" {
    diameter = 80
  }
  holes "ring" {
    circle   = 50
    count    = 6
    diameter = 3
    match    = part.one.holes.ring # ERROR "are drilled through from each other"
  }
}

part "turned" {
  material = "gunmetal"
  length   = 30
  stock "casting" {} # ERROR "lacks metal"
  flange "rim" {
    diameter = 60
    length   = 10
  }
  spigot "hub" {
    diameter = 30
  }
  bore "way" {
    diameter = 10
  }
  position {
    of     = "way" # ERROR "lies on the axis"
    to     = "rim"
    within = 0.1
  }
}


part "thin" {
  material  = "brass"
  thickness = 0.25 # WARNING "Is part 'thin' really 0.25 mm thick?"
  stock "plate" {
    thickness = 7
  }
  outline "disc" {
    diameter = 80
  }
}

part "heads" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 65
  }
  spigot "left_hub" {
    diameter = 38
    length   = 10
  }
  flange "rim" {
    diameter = 60
    length   = 10
  }
  spigot "right_hub" {
    diameter = 36
  }
  fillet "root" {
    edge   = "right_hub.left"
    radius = 1
  }
  holes "ring" { # WARNING "Do the heads of the screws in holes 'ring' find room?"
    circle    = 46
    count     = 4
    clearance = "M5 close"
  }
}
