# Tapers and profiles that cannot be.
part "tapers" {
  material = "brass"
  length   = 100
  stock "bar" {
    diameter = 50
  }
  taper "twice" {
    large    = 20
    length   = 10
    ratio    = "1:20"
    angle    = 5 # ERROR "tells its slope twice"
    large_at = "left"
  }
  taper "too_much" { # ERROR "says one thing too much"
    large    = 20
    small    = 19
    length   = 10
    ratio    = "1:20"
    large_at = "left"
  }
  taper "too_little" { # ERROR "does not say enough"
    length   = 10
    ratio    = "1:20"
    large_at = "left"
  }
  taper "no_end" { # ERROR "lacks large_at"
    large  = 20
    small  = 19
    length = 10
  }
  taper "bad_ratio" {
    large    = 20
    length   = 10
    ratio    = "one in twenty" # ERROR "is no ratio"
    large_at = "left"
  }
  taper "bad_name" {
    named    = "MT22" # ERROR "No table has the taper"
    length   = 10
    large_at = "left"
  }
  taper "gone" { # ERROR "is not smaller, or nothing is left of it"
    large    = 5
    length   = 10
    angle    = 60
    large_at = "left"
  }
  taper "turned_round" { # ERROR "is not smaller, or nothing is left of it"
    large    = 5
    small    = 6
    length   = 10
    large_at = "left"
  }
  taper "upright" {
    large    = 5
    length   = 10
    per_side = 90 # ERROR "is no taper"
    large_at = "middle" # ERROR "cannot be large at"
  }
}

part "socket" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 50
  }
  spigot "body" {
    diameter = 40
  }
  taper "deep" { # ERROR "is deeper than the part"
    inside = true
    large  = 20
    ratio  = "1:20"
    length = 21
  }
}

part "profiles" {
  material = "brass"
  length   = 100
  stock "bar" {
    diameter = 50
  }
  profile "empty" { # ERROR "has no shape"
  }
  profile "small_arc" {
    start {
      diameter = 20
    }
    arc {
      length   = 20
      diameter = 20
      radius   = 5 # ERROR "The radius is too small for the arc"
      bulge    = "out"
    }
  }
  profile "no_bulge" {
    start {
      diameter = 20
    }
    arc { # ERROR "does not say which way it bulges"
      length   = 20
      diameter = 20
      radius   = 15
    }
  }
  profile "untold" {
    start {
      diameter = 20
    }
    arc { # ERROR "The arc is not told once"
      length   = 20
      diameter = 20
    }
  }
  profile "overhang" {
    start {
      diameter = 20
    }
    arc { # ERROR "The arc overhangs"
      length   = 10
      diameter = 40
      radius   = 7.5
      bulge    = "out"
    }
  }
  profile "axis" {
    start {
      diameter = 20
    }
    arc { # ERROR "The arc reaches the axis"
      length   = 40
      diameter = 20
      radius   = 21
      bulge    = "in"
    }
  }
  profile "tangent_first" {
    start {
      diameter = 20
    }
    arc {
      length   = 10
      diameter = 22
      tangent  = true # ERROR "has nothing before it to be tangent to"
    }
  }
  profile "straight" {
    start {
      diameter = 20
    }
    line {
      length   = 10
      diameter = 20
    }
    arc { # ERROR "The tangent arc is a straight line"
      length   = 10
      diameter = 20
      tangent  = true
    }
  }
  profile "through_line" {
    start {
      diameter = 20
    }
    arc {
      length   = 10
      diameter = 20
      through { # ERROR "lie on one line"
        at       = 5
        diameter = 20
      }
    }
  }
  profile "through_beyond" {
    finish_by = "wishing" # ERROR "cannot be finished by"
    zone      = [1, 2, 3] # ERROR "zone is not a range"
    start {
      diameter = 20
    }
    arc {
      length   = 10
      diameter = 20
      through {
        at       = 11 # ERROR "The point is not between the ends"
        diameter = 22
      }
    }
  }
  profile "zone" {
    zone = [0.1, 0.2] # ERROR "zone is not a range"
    start {
      diameter = 20
    }
    line {
      length   = 10
      diameter = 22
    }
  }
}

part "buried" {
  material = "brass"
  length   = 20
  stock "bar" {
    diameter = 50
  }
  spigot "body" {
    diameter = 40
  }
  bore "way" {
    diameter = 8
  }
  taper "socket" { # ERROR "No tool gets to taper 'socket'"
    inside = true
    large  = 20
    ratio  = "1:20"
    length = 5
    at     = 5
  }
}

part "grooved_cone" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 50
  }
  taper "cone" {
    large    = 40
    small    = 20
    large_at = "left"
  }
  groove "high" { # ERROR "has no depth at one of its sides"
    on       = "cone"
    at       = 30
    width    = 9
    diameter = 24
  }
  groove "by_depth" { # ERROR "lacks diameter"
    on    = "cone"
    at    = 10
    width = 3
    depth = 2
  }
}

# Chamfers at the ends of cones that rise nearly as steeply as they do.
part "steep" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 50
  }
  taper "nose" {
    large    = 34
    small    = 20
    length   = 10
    large_at = "right"
  }
  spigot "body" {
    diameter = 34
    length   = 20
  }
  taper "tail" {
    large    = 34
    small    = 25
    length   = 10
    large_at = "left"
  }
  taper "mouth" {
    from   = "left"
    inside = true
    large  = 16
    small  = 2
    length = 8
  }
  chamfer "sharp" {
    edge = "nose.left" # ERROR "Say angle = 55° or more"
    size = 0.5
  }
  chamfer "inner" {
    edge = "mouth.left" # ERROR "hardly stands out: the taper rises on from it by 41.19°"
    size = 0.5
  }
  chamfer "rim" {
    edge = "tail.right"
    size = 0.5
  }
}
