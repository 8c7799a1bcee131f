# A sleeve with a seat in each end, both true to its outside: the second seat is bored in soft jaws, as there is no collet and no four-jaw.
part "sleeve" {
  material = "brass-free-cutting"
  length   = 40

  stock "bar" {
    diameter = 28
  }

  spigot "body" {
    diameter = "25 h9"
  }
  bore "left_seat" {
    from     = "left"
    diameter = "16 H9"
    depth    = 12
  }
  bore "right_seat" {
    from     = "right"
    diameter = "16 H9"
    depth    = 12
  }
  concentric {
    of     = "left_seat"
    to     = "body"
    within = 0.06
  }
  concentric {
    of     = "right_seat"
    to     = "body"
    within = 0.06
  }
}

workshop "jaw_shed" {
  machine "lathe" {
    swing           = 180
    between_centres = 300
    spindle_bore    = 20
    power_kw        = 0.37
    speeds          = [80, 160, 320, 640]

    dial "cross" {
      graduation = 0.02
      per_turn   = 2
      reads      = "diameter"
      backlash   = 0.1
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
  holding "soft_jaws" {
    capacity   = [10, 80]
    jaw_width  = 25
    jaw_length = 20
    run_out    = 0.02
    grip_force = [150, 4000]
  }
  tool "centre_drill" {
    sizes = [2.5]
  }
  tool "drills" {
    sizes = [4, 8, 11.5, 14]
  }
  tool "boring" {
    bar_diameter = 8
    least_bore   = 10
    reach        = 32
    nose_radius  = 0.2
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
  measuring "bore_gauge" {
    range      = [6, 50]
    resolution = 0.005
  }
  measuring "micrometer" {
    range      = [0, 25]
    resolution = 0.01
  }
}
