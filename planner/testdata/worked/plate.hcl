# A steel cover with a big bore near an edge. The edge beside the bore is the left one, so that the datum edges are the bottom and the right one.
part "cover" {
  material  = "mild steel"
  thickness = 8
  stock "plate" {
    thickness = 10
    width     = 100
    length    = 80
  }
  outline "rectangle" {
    width  = 90
    height = 70
    datum  = ["right", "bottom"]
  }
  bore "main" {
    at       = [27, 35]
    diameter = "42 H8"
  }
  holes "fixing" {
    at       = [[7, 7], [45, 7], [83, 7], [83, 63], [45, 63], [7, 63]]
    diameter = 4.5
  }
}

workshop "milling" {
  machine "bench" {}
  machine "mill" {
    power_kw = 0.75
    speeds   = [100, 180, 300, 500, 850, 1400, 2200]
    dial "x" {
      graduation = 0.02
      per_turn   = 2
    }
    dial "y" {
      graduation = 0.02
      per_turn   = 2
    }
    dial "quill" {
      graduation = 0.02
      per_turn   = 2
    }
  }
  holding "vice" {
    opening    = 110
    jaw_width  = 100
    jaw_height = 30
    grip_force = [500, 12000]
  }
  holding "table_clamps" {
    clamps      = 4
    clamp_force = 5000
    toe_width   = 12
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}
  tool "scriber" {
    accuracy = 0.15
  }
  tool "edge_finder" {
    accuracy = 0.02
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
    sizes = [16, 20, 25]
  }
  tool "end_mill" {
    sizes = [6, 10, 16]
  }
  tool "boring_head" {
    swing = [10, 50]
    reach = 50
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
}
