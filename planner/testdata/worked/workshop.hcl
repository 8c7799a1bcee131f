# The shop in which the worked plans are done: a bench lathe of 180 mm swing, three-jaw and four-jaw, soft jaws to bore, stub mandrels to turn
# in place, and the tools that the plans name. The plans tell the machine by its holdings only; the rest is an ordinary small shop.
workshop "practice_shop" {
  machine "lathe" {
    swing           = 180
    between_centres = 350
    spindle_bore    = 26
    power_kw        = 0.75
    speeds          = [60, 90, 130, 200, 300, 450, 680, 1000, 1500, 2200]
    leadscrew_pitch = 2
    change_wheels   = [20, 24, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 120, 127]

    dial "cross" {
      graduation = 0.02
      per_turn   = 2
      reads      = "diameter"
      backlash   = 0.1
      travel     = 110
    }
    dial "top" {
      graduation = 0.02
      per_turn   = 1
      reads      = "travel"
      backlash   = 0.1
      travel     = 80
    }
    dial "saddle" {
      graduation = 0.1
      per_turn   = 20
      reads      = "travel"
      backlash   = 0.3
      travel     = 320
    }
    dial "tailstock" {
      graduation = 0.1
      per_turn   = 2
      reads      = "travel"
      backlash   = 0.2
      travel     = 60
    }
  }
  machine "bench" {}

  machine "mill" {
    power_kw = 0.5
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
      graduation = 0.02
      per_turn   = 2
      travel     = 60
    }
  }

  holding "vice" {
    opening    = 90
    jaw_width  = 80
    jaw_height = 25
    grip_force = [500, 8000]
  }
  holding "angle_plate" {}
  holding "table_clamps" {
    clamps      = 4
    clamp_force = 5000
    toe_width   = 10
  }
  holding "three_jaw" {
    capacity   = [2, 100]
    inside     = [25, 90]
    jaws       = 3
    jaw_width  = 8
    jaw_length = 18
    run_out    = 0.08
    grip_force = [150, 4000]
    most_speed = 2500
  }
  holding "four_jaw" {
    capacity   = [3, 125]
    jaws       = 4
    jaw_width  = 12
    jaw_length = 22
    run_out    = 0.02
    grip_force = [150, 4500]
    most_speed = 250 # an old iron chuck
  }
  holding "collets" {
    sizes       = [6, 8, 10, 12, 14, 16, 18, 20, 22, 24]
    range       = 0.5
    run_out     = 0.02
    grip_length = 26
  }
  holding "soft_jaws" {
    capacity   = [10, 100]
    jaw_width  = 25
    jaw_length = 18
    run_out    = 0.02
    grip_force = [150, 4000]
  }
  holding "stub_mandrel" {
    capacity = [5, 80]
  }
  holding "plain_mandrel" {
    sizes = [8, 10, 12, 16]
  }
  holding "glued_arbor" {
    capacity = [10, 100]
  }
  holding "plug" {
    capacity = [5, 90]
  }
  holding "tailstock" {}

  tool "centre_drill" {
    sizes = [2.5]
  }
  tool "drills" {
    set  = "metric"
    from = 1
    to   = 13
    step = 0.1
  }
  tool "drills" {
    name  = "large drills"
    sizes = [14, 15, 15.5, 16, 18, 20]
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
    least_bore   = 15
    reach        = 50
    nose_radius  = 0.2
  }
  tool "recess" {
    name       = "internal recess tool"
    width      = 2
    depth      = 3
    least_bore = 12
    reach      = 30
  }
  tool "parting" {
    width = 2
    reach = 25
  }
  tool "grooving" {
    name  = "1 mm grooving tool"
    width = 1
    reach = 8
  }
  tool "grooving" {
    name  = "2 mm grooving tool"
    width = 2
    reach = 12
  }
  tool "chamfer" {
    angle = 45
  }
  tool "thread_internal" {
    pitches    = [0.75, 2.5]
    least_bore = 12
    reach      = 25
  }
  tool "thread_external" {
    pitches = [0.5, 3]
  }
  tool "taps" {
    threads = ["M4", "M6", "M8"]
  }
  tool "dies" {
    threads = ["M6", "M10"]
  }
  tool "knurl" {
    pitches = [0.8, 1]
  }
  tool "round_nose" {
    radius = 2
    reach  = 12
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}

  tool "ball_nose" {
    sizes = [6, 10]
  }
  tool "end_mill" {
    sizes = [3, 6, 10]
  }
  tool "countersink" {
    sizes = [12]
    angle = 90
  }
  tool "boring_head" {
    swing = [10, 40]
    reach = 40
  }
  tool "edge_finder" {
    accuracy = 0.01
  }
  tool "scriber" {
    accuracy = 0.15
  }

  measuring "caliper" {
    range      = [0, 150]
    resolution = 0.02
  }
  measuring "micrometer" {
    range      = [0, 100]
    resolution = 0.005
  }
  measuring "plug_gauge" {
    range      = [6, 30]
    resolution = 0.002
  }
  measuring "bore_gauge" {
    range      = [6, 75]
    resolution = 0.002
  }
  measuring "depth_micrometer" {
    range      = [0, 75]
    resolution = 0.01
  }
  measuring "dial_indicator" {
    resolution = 0.01
  }
}
