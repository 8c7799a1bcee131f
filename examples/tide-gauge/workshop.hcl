# The shed on the quay: a small lathe and a small mill with metric dials, a drill and a bench.
workshop "quay_shed" {
  machine "lathe" {
    swing           = 180
    between_centres = 300
    spindle_bore    = 20
    power_kw        = 0.55
    speeds          = [60, 100, 160, 250, 400, 630, 1000, 1600, 2000]
    leadscrew_pitch = 2
    change_wheels   = [20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 80, 127]

    dial "cross" {
      graduation = 0.02
      per_turn   = 1
      reads      = "diameter"
      backlash   = 0.1
      travel     = 90
    }
    dial "top" {
      graduation = 0.02
      per_turn   = 1
      reads      = "travel"
      backlash   = 0.1
      travel     = 60
    }
    dial "saddle" {
      graduation = 0.1
      per_turn   = 20
      reads      = "travel"
      backlash   = 0.3
      travel     = 280
    }
    dial "tailstock" {
      graduation = 0.1
      per_turn   = 2
      reads      = "travel"
      backlash   = 0.2
      travel     = 65
    }
  }

  machine "drill" {
    speeds = [250, 500, 1000, 2000]
  }

  machine "mill" {
    power_kw = 0.35
    speeds   = [120, 200, 350, 600, 1000, 1600]

    dial "x" {
      graduation = 0.02
      per_turn   = 2
      backlash   = 0.15
      travel     = 220
    }
    dial "y" {
      graduation = 0.02
      per_turn   = 2
      backlash   = 0.15
      travel     = 130
    }
    dial "quill" {
      graduation = 0.05
      per_turn   = 2
      travel     = 50
    }
  }

  machine "bench" {}

  holding "three_jaw" {
    capacity   = [2, 80]
    inside     = [25, 70]
    jaws       = 3
    jaw_width  = 8
    jaw_length = 18
    run_out    = 0.08
    grip_force = [150, 4000] # newtons a jaw: a light nip, a hard pull on the key
    most_speed = 2500
  }
  holding "four_jaw" {
    capacity   = [5, 90]
    jaws       = 4
    jaw_width  = 10
    jaw_length = 20
    run_out    = 0.02
    grip_force = [150, 4500]
    most_speed = 2000
  }
  holding "collets" {
    sizes   = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]
    range   = 0.5
    run_out = 0.02
    grip_length = 26
  }
  holding "soft_jaws" {
    capacity   = [10, 80]
    jaw_width  = 25
    jaw_length = 20
    run_out    = 0.02
    grip_force = [150, 4000]
  }
  holding "stub_mandrel" {
    capacity = [5, 60]
  }
  holding "plain_mandrel" {
    sizes = [8, 10, 12]
  }
  holding "glued_arbor" {
    capacity = [10, 80]
  }
  holding "between_centres" {}
  holding "tailstock" {}

  holding "faceplate" {
    diameter    = 160
    clamps      = 4
    clamp_force = 3000
    toe_width   = 10
    run_out     = 0.02
    most_speed  = 800
  }
  holding "vice" {
    opening    = 80
    jaw_width  = 80
    jaw_height = 25
    grip_force = [500, 8000]
    squareness = 0.03
  }
  holding "table_clamps" {
    clamps      = 4
    clamp_force = 3000
    toe_width   = 10
  }

  tool "centre_drill" {
    sizes = [2.5]
  }
  tool "drills" {
    set  = "metric"
    from = 1
    to   = 13
    step = 0.5
  }
  tool "drills" {
    name  = "large drills"
    sizes = [3.3, 4.2, 6.8, 14, 15.5, 16, 18, 20]
  }
  tool "reamers" {
    sizes = [6, 8, 10, 12, 16]
  }
  tool "turning" {
    name        = "right-hand knife tool"
    hand        = "right"
    nose_radius = 0.2
  }
  tool "turning" {
    name        = "left-hand knife tool"
    hand        = "left"
    nose_radius = 0.2
  }
  tool "boring" {
    name         = "6 mm boring bar"
    bar_diameter = 6
    least_bore   = 7
    reach        = 24
    nose_radius  = 0.2
  }
  tool "boring" {
    name         = "8 mm boring bar"
    bar_diameter = 8
    least_bore   = 10
    reach        = 32
    nose_radius  = 0.2
  }
  tool "boring" {
    name         = "12 mm boring bar"
    bar_diameter = 12
    least_bore   = 16
    reach        = 50
    nose_radius  = 0.2
  }
  tool "recess" {
    name         = "internal recess tool"
    width        = 2
    depth        = 3
    least_bore   = 12
    reach        = 30
  }
  tool "parting" {
    width = 2
    reach = 20
  }
  tool "grooving" {
    name  = "2 mm grooving tool"
    width = 2
    reach = 10
  }
  tool "round_nose" {
    radius = 2
    reach  = 10
  }
  tool "chamfer" {
    angle = 45
  }
  tool "thread_external" {
    pitches = [0.5, 3]
  }
  tool "thread_internal" {
    pitches    = [0.75, 2.5]
    least_bore = 12
    reach      = 25
  }
  tool "taps" {
    threads = ["M3", "M4", "M5", "M6", "M8", "M10"]
  }
  tool "dies" {
    threads = ["M3", "M4", "M5", "M6", "M8", "M10"]
  }
  tool "knurl" {
    pitches = [0.8, 1]
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}
  tool "end_mill" {
    sizes = [4, 6, 8, 10, 16]
  }
  tool "ball_nose" {
    sizes = [6, 10]
  }
  tool "boring_head" {
    swing = [10, 35]
    reach = 40
  }
  tool "edge_finder" {
    accuracy = 0.02
  }
  tool "scriber" {
    accuracy = 0.15
  }

  measuring "caliper" {
    range      = [0, 150]
    resolution = 0.02
  }
  measuring "micrometer" {
    range      = [0, 75]
    resolution = 0.01
  }
  measuring "bore_gauge" {
    range      = [6, 75]
    resolution = 0.01
  }
  measuring "depth_micrometer" {
    range      = [0, 50]
    resolution = 0.01
  }
  measuring "dial_indicator" {
    resolution = 0.01
  }
}
