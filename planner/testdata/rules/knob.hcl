# A hand knob: a curve left to the file, a knurl, a tapped blind hole.
part "knob" {
  material = "brass-free-cutting"
  length   = 40

  stock "bar" {
    diameter = 32
  }

  profile "crown" {
    finish_by = "file"
    zone      = [-0.05, 0.1]
    start {
      diameter = 16
    }
    arc {
      length   = 10
      diameter = 28
      radius   = 30
      bulge    = "out"
    }
  }
  spigot "grip" {
    diameter = 28
    length   = 12
  }
  spigot "neck" {
    diameter = "18 h8"
  }
  knurl "hold" {
    on    = "grip"
    pitch = 1
  }
  bore "hole" {
    from  = "right"
    depth = 16
  }
  thread "inner" {
    on     = "hole"
    size   = "M8"
    length = 10
  }
}
