# A stop plate of the tide gauge in a shop with no mill: its edges, its slot and its holes are cut on a vertical slide.
workshop "lathe_with_slide" {
  machine "lathe" {
    swing           = 180
    between_centres = 350
    spindle_bore    = 26
    power_kw        = 0.55
    speeds          = [60, 90, 130, 200, 300, 450, 680, 1000, 1500, 2200]

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
    }
    dial "saddle" {
      graduation = 0.1
      per_turn   = 20
      travel     = 320
    }
    dial "tailstock" {
      graduation = 0.1
      per_turn   = 2
      travel     = 60
    }
  }

  machine "bench" {}

  holding "three_jaw" {
    capacity   = [2, 100]
    jaws       = 3
    jaw_width  = 8
    jaw_length = 20
    grip_force = [150, 3000]
  }
  holding "collets" {
    sizes       = [4, 5, 6, 8, 10, 12, 16]
    range       = 0.5
    grip_length = 28
  }
  holding "vertical_slide" {
    opening    = 50
    jaw_width  = 60
    jaw_height = 20
    grip_force = [300, 5000]
    squareness = 0.03
    graduation = 0.02
    per_turn   = 1
    backlash   = 0.1
    travel     = 90
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
  tool "parting" {
    width = 2
    reach = 25
  }
  tool "chamfer" {
    angle = 45
  }
  tool "taps" {
    threads = ["M3", "M4", "M5"]
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}
  tool "end_mill" {
    sizes = [4, 5, 6, 8, 10, 12, 16]
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
    range      = [0, 50]
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

part "stop_plate" {
  material  = "mild steel"
  thickness = 8

  stock "plate" {
    thickness         = 8
    width             = 44
    length            = 34
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 40
    height = 30
  }
  slot "guide" {
    width = "6 ±0.1"
    ends  = [[16, 8], [24, 8]]
    depth = 3
  }
  holes "screws" {
    at       = [["8 ±0.2", "22 ±0.2"], ["32 ±0.2", "22 ±0.2"]]
    diameter = 4.5
  }
}
