# A crank shaft of the tide gauge in a shop with no mill: its flat, its keyway and its cross hole are cut on a vertical slide.
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

part "crank_shaft" {
  material = "mild steel"
  length   = 50

  stock "bar" {
    diameter = 20
  }
  spigot "head" {
    diameter = 18
    length   = 20
  }
  spigot "shank" {
    diameter = "12 ±0.1"
    length   = 30
  }
  flat "key" {
    on       = "shank"
    distance = "5 ±0.1"
    length   = 12
    from     = "right"
  }
  cross_hole "pin" {
    on       = "shank"
    at       = 8
    from     = "right"
    diameter = 3
  }
}
