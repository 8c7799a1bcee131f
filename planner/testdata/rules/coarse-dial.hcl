# A pin turned on an old lathe whose cross slide is marked in tenths: no two graduations fit into the limits.
part "coarse_pin" {
  material = "brass-free-cutting"
  length   = 20

  stock "bar" {
    diameter = 20
  }

  spigot "body" {
    diameter = "18 ±0.06"
  }
}

workshop "old_shed" {
  machine "lathe" {
    swing           = 180
    between_centres = 300
    spindle_bore    = 20
    power_kw        = 0.37
    speeds          = [80, 160, 320, 640]

    dial "cross" {
      graduation = 0.1
      per_turn   = 2
      reads      = "diameter"
      backlash   = 0.3
    }
    dial "top" {
      graduation = 0.05
      per_turn   = 2
    }
    dial "saddle" {
      graduation = 0.2
      per_turn   = 20
    }
    dial "tailstock" {
      graduation = 0.1
      per_turn   = 2
    }
  }
  machine "bench" {}
  holding "three_jaw" {
    capacity   = [2, 80]
    jaw_length = 18
    grip_force = [150, 4000]
  }
  tool "turning" {
    hand        = "right"
    nose_radius = 0.2
  }
  tool "parting" {
    width = 2
    reach = 15
  }
  measuring "caliper" {
    range      = [0, 150]
    resolution = 0.02
  }
  measuring "micrometer" {
    range      = [0, 25]
    resolution = 0.01
  }
}
