# A bearing block that reaches past the faceplate, in a shop with no mill and no four-jaw chuck: it stands on an angle plate, by its base.
workshop "small_plate" {
  machine "lathe" {
    swing           = 250
    between_centres = 350
    spindle_bore    = 26
    power_kw        = 0.75
    speeds          = [60, 90, 130, 200, 300, 450, 680, 1000, 1500, 2200]
    leadscrew_pitch = 2
    change_wheels   = [20, 24, 25, 30, 35, 38, 40, 45, 46, 48, 50, 52, 55, 57, 60, 65, 66, 70, 75, 80, 120, 127]

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

  holding "faceplate" {
    diameter    = 110
    clamps      = 4
    clamp_force = 3000
    toe_width   = 12
  }
  holding "angle_plate" {
    width       = 130
    reach       = 50
    leg         = 40
    thickness   = 8
    squareness  = 0.02
    clamps      = 2
    clamp_force = 4000
    toe_width   = 10
  }
  tool "centre_drill" {
    sizes = [1.6, 2.5, 3.15]
  }
  tool "drills" {
    set  = "metric"
    from = 1
    to   = 13
    step = 0.1
  }
  tool "drills" {
    name  = "taper-shank drills"
    sizes = [13.5, 14, 14.5, 15, 15.5, 16, 17, 17.5, 18, 19, 19.5, 20, 21, 22, 23, 24, 25]
  }
  tool "reamers" {
    sizes = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 25]
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
  tool "turning" {
    name        = "carbide roughing tool"
    hand        = "right"
    nose_radius = 0.4
    material    = "carbide"
  }
  tool "boring" {
    name         = "5 mm boring bar"
    bar_diameter = 5
    least_bore   = 6.5
    reach        = 20
    nose_radius  = 0.1
  }
  tool "boring" {
    name         = "8 mm boring bar"
    bar_diameter = 8
    least_bore   = 10
    reach        = 35
    nose_radius  = 0.2
  }
  tool "boring" {
    name         = "12 mm boring bar"
    bar_diameter = 12
    least_bore   = 16
    reach        = 55
    nose_radius  = 0.2
  }
  tool "boring" {
    name         = "16 mm boring bar"
    bar_diameter = 16
    least_bore   = 22
    reach        = 80
    nose_radius  = 0.2
  }
  tool "recess" {
    name       = "small recess tool"
    width      = 1.5
    depth      = 1.5
    least_bore = 8
    reach      = 20
  }
  tool "recess" {
    name       = "internal recess tool"
    width      = 2
    depth      = 3
    least_bore = 12
    reach      = 35
  }
  tool "parting" {
    width = 2
    reach = 25
  }
  tool "grooving" {
    name  = "1 mm grooving tool"
    width = 1
    reach = 5
  }
  tool "grooving" {
    name  = "2 mm grooving tool"
    width = 2
    reach = 12
  }
  tool "round_nose" {
    name   = "2 mm radius tool"
    radius = 2
    reach  = 12
  }
  tool "round_nose" {
    name   = "1 mm radius tool"
    radius = 1
    reach  = 6
  }
  tool "chamfer" {
    angle = 45
  }
  tool "thread_external" {
    pitches = [0.4, 3.5]
  }
  tool "thread_internal" {
    pitches    = [0.75, 3]
    least_bore = 10
    reach      = 30
  }
  tool "taps" {
    threads = ["M2", "M2.5", "M3", "M4", "M5", "M6", "M8", "M10", "M12", "BA 2", "BA 4", "BA 6"]
  }
  tool "dies" {
    threads = ["M2", "M2.5", "M3", "M4", "M5", "M6", "M8", "M10", "M12", "BA 2", "BA 4", "BA 6"]
  }
  tool "knurl" {
    pitches = [0.6, 0.8, 1, 1.2]
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}
  tool "end_mill" {
    sizes = [3, 4, 5, 6, 8, 10, 12, 16]
  }
  tool "ball_nose" {
    sizes = [3, 4, 6, 8, 10]
  }
  tool "fly_cutter" {
    swing       = [30, 70]
    nose_radius = 0.8
  }
  tool "boring_head" {
    swing = [10, 60]
    reach = 50
  }
  tool "counterbores" {
    sizes = [6, 8, 10, 11, 15, 18]
  }
  tool "countersink" {
    sizes = [8.3, 12.4, 16.5, 20.5]
  }
  tool "edge_finder" {
    accuracy = 0.02
  }
  tool "scriber" {
    accuracy = 0.2
  }

  measuring "rule" {
    range      = [0, 300]
    resolution = 0.5
  }
  measuring "caliper" {
    range      = [0, 150]
    resolution = 0.02
  }
  measuring "micrometer" {
    range      = [0, 100]
    resolution = 0.001
  }
  measuring "bore_gauge" {
    range      = [6, 100]
    resolution = 0.01
  }
  measuring "depth_micrometer" {
    range      = [0, 75]
    resolution = 0.01
  }
  measuring "dial_indicator" {
    resolution = 0.01
  }
}

part "bearing" {
  material  = "mild steel"
  thickness = 30

  stock "plate" {
    thickness         = 30
    width             = 96
    length            = 44
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 96
    height = 44

    edge "left" {
      as_supplied = true
    }
    edge "right" {
      as_supplied = true
    }
    edge "bottom" {
      as_supplied = true
    }
    edge "top" {
      as_supplied = true
    }
  }
  bore "journal" {
    at       = ["44 ±0.2", "24 ±0.15"]
    diameter = "20 H8"
  }
}
