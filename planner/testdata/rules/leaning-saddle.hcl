# A saddle flange of the tide gauge whose small screws run towards the axis of the stilling pipe, in a shop with a tilting plate.
workshop "with_tilting_plate" {
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
  holding "glued_arbor" {
    capacity = [8, 80]
  }
  holding "tilting_plate" {
    sine_length = 100
    tilts_to    = 45
    capacity    = [5, 100]
    jaws        = 3
    jaw_width   = 8
    jaw_length  = 20
    grip_force  = [150, 4000]
  }

  tool "centre_drill" {
    sizes = [1.6, 2.5, 3.15]
  }
  tool "drills" {
    set  = "metric"
    from = 1
    to   = 16
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
  tool "ball_nose" {
    sizes = [10]
  }
  tool "reamers" {
    sizes = [12, 16]
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

part "saddle" {
  material = "brass"
  length   = 24

  stock "bar" {
    diameter = 55
  }
  flange "rim" {
    diameter = 50
    length   = 12
  }
  spigot "neck" {
    diameter = 24
  }
  bore "way" {
    diameter = "16 H9"
  }
  holes "screws" {
    circle    = 35
    count     = 6
    start     = 30
    thread    = "M3"
    direction = "normal"
    position  = 0.5
  }
  seat "pipe" {
    on        = "left"
    radius    = "45 ±0.2"
    angle     = 90
    finish_by = "file"
    leftover  = 0.1
  }
}

part "cap" {
  material = "brass"
  length   = 24

  stock "bar" {
    diameter = 55
  }
  spigot "neck" {
    diameter = 24
    length   = 12
  }
  flange "rim" {
    diameter = 50
    length   = 12
  }
  bore "way" {
    diameter = "16 H9"
  }
  holes "screws" {
    at        = [[14, 11], [14, -11], [0, -17.5]]
    diameter  = 3
    direction = "normal"
    position  = 0.5
  }
  seat "pipe" {
    on        = "right"
    radius    = "45 ±0.2"
    angle     = 0
    finish_by = "file"
    leftover  = 0.1
  }
}
