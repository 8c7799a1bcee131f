# An inch caliper is a little coarser than the range that a length is measured to before the last cut: the range is wider for it.
part "stud" {
  drawn_in = "inch"
  material = "mild steel"
  length   = 2 + 1/4
  stock "bar" { diameter = 3/8 }
  spigot "left" { length = 3/4 }
  spigot "middle" {
    diameter = "5/16 in"
    length = 1
  }
  spigot "right" {}
  thread "a" {
    on = "left"
    size = "BSF 1/4"
    length = 0.6
    from = "left"
  }
  thread "b" {
    on = "right"
    size = "BSW 1/4"
    length = 0.4
  }
}

workshop "inch_shed" {
  drawn_in = "inch"
  machine "lathe" {
    swing           = 7
    between_centres = 18
    spindle_bore    = "5/8 in"
    power_kw        = 0.37
    speeds          = [50, 95, 160, 270, 430, 720, 1200]
    leadscrew_pitch = "1/8 in"
    change_wheels   = [20, 20, 25, 30, 35, 38, 40, 45, 50, 55, 60, 65, 70, 75]
    dial "cross" {
      graduation = 1 * thou
      per_turn   = 100 * thou
      reads      = "radius"
      backlash   = 5 * thou
      travel     = 4
    }
    dial "top" {
      graduation = 1 * thou
      per_turn   = 100 * thou
      backlash   = 5 * thou
      travel     = 2.5
    }
    dial "saddle" {
      graduation = 5 * thou
      per_turn   = 750 * thou
      travel     = 16
    }
    dial "tailstock" {
      graduation = "1/32 in"
      reads = "indicator"
    }
  }
  machine "drill" { speeds = [500, 900, 1500, 2500] }
  machine "bench" {}
  holding "three_jaw" {
    capacity   = [0.1, 3.5]
    inside     = [1, 3]
    jaws       = 3
    jaw_width  = 0.3
    jaw_length = 0.75
    run_out    = 0.004
    grip_force = [150, 3500]
  }
  holding "between_centres" {}
  holding "tailstock" {}
  tool "centre_drill" { sizes = [0.1] }
  tool "drills" {
    set = "fractional"
    from = "1/16 in"
    to = "1/2 in"
    step = "1/64 in"
  }
  tool "turning" {
    hand = "right"
    nose_radius = 8 * thou
  }
  tool "turning" {
    name = "left-hand knife"
    hand = "left"
    nose_radius = 8 * thou
  }
  tool "boring" {
    bar_diameter = "5/16 in"
    least_bore = "3/8 in"
    reach = 1.5
  }
  tool "parting" {
    width = 80 * thou
    reach = 0.75
  }
  tool "chamfer" { angle = 45 }
  tool "thread_external" {
    pitches = ["1/40 in", "1/8 in"]
  }
  tool "round_nose" {
    radius = "1/16 in"
    reach = "1/2 in"
  }
  tool "taps" { threads = ["BA 2", "BA 4", "BSF 1/4", "ME 1/4x40"] }
  tool "dies" { threads = ["BA 2", "BA 4", "BSF 1/4"] }
  tool "saw" { kerf = 50 * thou }
  tool "files" {}
  tool "scriber" { accuracy = 0.15 * mm }
  measuring "micrometer" {
    range = [0, 2]
    resolution = 0.5 * thou
  }
  measuring "caliper" {
    range = [0, 6]
    resolution = 1 * thou
  }
}
