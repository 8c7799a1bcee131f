part "web" {
  material  = "aluminium"
  thickness = 12
  stock "plate" {
    thickness = 12
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 60
    height = 46
  }
  bore "main" {
    at       = [30, 23]
    diameter = "34 ±0.06"
  }
}
workshop "millshop" {
  machine "mill" {
    speeds = [100, 200, 400, 800, 1600]
    power_kw = 0.6
    dial "x" {
      graduation = 0.02
      per_turn = 2
    }
    dial "y" {
      graduation = 0.02
      per_turn = 2
    }
    dial "quill" {
      graduation = 0.05
      per_turn = 2.5
    }
  }
  machine "bench" {}
  holding "vice" {
    opening = 80
    jaw_width = 80
    jaw_height = 30
    grip_force = [300, 4000]
  }
  holding "table_clamps" {
    clamps = 4
    clamp_force = 2500
    toe_width = 12
  }
  tool "drills" {
    set = "metric"
    from = 1
    to = 20
    step = 0.5
  }
  tool "centre_drill" {
    sizes = [1.6, 3.15]
  }
  tool "end_mill" {
    sizes = [6, 10, 12]
    reach = 30
  }
  tool "boring_head" {
    swing = [10, 60]
    reach = 50
    nose_radius = 0.2
  }
  tool "edge_finder" {
    accuracy = 0.01
  }
  tool "saw" {
    kerf = 1
  }
  tool "files" {}
  measuring "caliper" {
    range = [0, 150]
    resolution = 0.02
  }
  measuring "micrometer" {
    range = [0, 25]
    resolution = 0.01
  }
  measuring "bore_gauge" {
    range = [18, 50]
    resolution = 0.01
  }
}
