# The finial of a gauge's hood: a cove over its base, a straight, a bead and a cone to its end, all in one chain.
part "finial" {
  material = "brass"
  length   = 26
  stock "bar" {
    diameter = 28
  }
  spigot "base" {
    diameter = 26
    length   = 10
  }
  profile "sweep" {
    finish_by = "file"
    zone      = [-0.05, 0.1]
    start {
      diameter = 24
    }
    arc {
      length   = 5
      diameter = 18
      radius   = 6
      bulge    = "in"
    }
    line {
      length   = 1
      diameter = 18
    }
    arc {
      length   = 5
      diameter = 18
      radius   = 6
      bulge    = "out"
    }
    line {
      length   = 5
      diameter = 14
    }
  }
}
