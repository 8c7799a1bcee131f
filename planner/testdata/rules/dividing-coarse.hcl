# A key of the tide gauge with seven flats, in a shop whose dividing head has only a plate of 24: its nearest notches are over a degree off, so that the flats are set round one by one.
workshop "with_one_plate" {
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

  machine "mill" {
    power_kw = 0.6
    speeds   = [100, 160, 250, 400, 630, 1000, 1600, 2500]

    dial "x" {
      graduation = 0.02
      per_turn   = 2
      travel     = 220
    }
    dial "y" {
      graduation = 0.02
      per_turn   = 2
      travel     = 110
    }
    dial "quill" {
      graduation = 0.02
      per_turn   = 1
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
  holding "vice" {
    opening    = 60
    jaw_width  = 80
    jaw_height = 25
    grip_force = [300, 8000]
    squareness = 0.03
  }
  holding "dividing_head" {
    height     = 65
    direct     = [24]
    capacity   = [2, 80]
    jaws       = 3
    jaw_width  = 8
    jaw_length = 30
    grip_force = [200, 6000]
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

part "locking_key" {
  material = "brass"
  length   = 54

  stock "bar" {
    diameter = 25
  }
  spigot "shank" {
    diameter = "16 ±0.1"
    length   = 34
  }
  spigot "collar" {
    diameter = 24
    length   = 8
  }
  spigot "end" {
    diameter = 18
  }
  flat "heptagon" {
    on       = "end"
    distance = "8.3 ±0.1"
    count    = 7
  }
}
