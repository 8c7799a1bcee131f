# The knob that winds the paper drum: its crown is stepped on the two dials and filed; a tapped hole takes the drum's spindle.
part "winding_knob" {
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
      length   = 12
      diameter = 28
      radius   = 16
      bulge    = "out"
    }
  }
  spigot "grip" {
    diameter = 28
    length   = 10
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
    depth = 14
  }
  thread "spindle" {
    on     = "hole"
    size   = "M6"
    length = 9
  }
}
