# The flange that carries the tide gauge's float pipe, in a shop with no lathe: its bore is opened by a hole saw, and the hole for the wire is sawn to size.
workshop "mill_with_hole_saws" {
  machine "bench" {}

  machine "drill" {
    speeds = [250, 500, 1000, 2000]
  }
  machine "mill" {
    power_kw = 0.5
    speeds   = [90, 120, 200, 350, 600, 1000, 1600]

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
      per_turn   = 2.5
      travel     = 60
    }
  }

  holding "vice" {
    opening    = 110
    jaw_width  = 100
    jaw_height = 30
    grip_force = [500, 8000]
  }
  holding "table_clamps" {
    clamps      = 4
    clamp_force = 5000
    toe_width   = 10
  }

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
    sizes = [14, 16, 18, 20]
  }
  tool "hole_saw" {
    sizes = [25, 32, 40, 54, 57]
    depth = 30
    pilot = 6.35
    lead  = 8
    kerf  = 2
  }
  tool "boring_head" {
    swing = [10, 80]
    reach = 40
  }
  tool "end_mill" {
    sizes = [6, 10, 16]
  }
  tool "edge_finder" {
    accuracy = 0.01
  }
  tool "scriber" {
    accuracy = 0.15
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}

  measuring "caliper" {
    range      = [0, 150]
    resolution = 0.02
  }
  measuring "micrometer" {
    range      = [0, 100]
    resolution = 0.005
  }
  measuring "bore_gauge" {
    range      = [6, 75]
    resolution = 0.002
  }
  measuring "dial_indicator" {
    resolution = 0.01
  }
}

part "pipe_flange" {
  material  = "mild steel"
  thickness = 8

  stock "plate" {
    thickness         = 8
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 140
    height = 90
  }
  bore "pipe" {
    at       = [46, 45]
    diameter = "60 H8"
  }
  holes "wire" {
    at       = [["108 ±0.5", "45 ±0.5"]]
    diameter = "32 +2 -0"
  }
  holes "fixing" {
    at        = [[9, 9], [131, 9], [131, 81], [9, 81]]
    clearance = "M5"
  }
}
