# The panel of the tide gauge's two dials, in a shop with a drilling machine and a bench: its windows are sawn to size round punched and drilled holes.
workshop "drill_and_bench" {
  machine "bench" {}
  machine "drill" {
    speeds = [120, 250, 500, 1000, 2000]
  }
  holding "vice" {
    opening    = 110
    jaw_width  = 100
    jaw_height = 30
    grip_force = [500, 8000]
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
    to   = 10
    step = 0.5
  }
  tool "hole_saw" {
    sizes = [25, 32, 40]
  }
  tool "scriber" {
    accuracy = 0.2
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}
  measuring "caliper" {
    range      = [0, 150]
    resolution = 0.02
  }
}
part "panel" {
  material  = "aluminium"
  thickness = 2
  stock "sheet" {
    thickness         = 2
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 180
    height = 100
  }
  holes "dials" {
    at       = [["45 ±0.6", "50 ±0.6"], ["130 ±0.6", "50 ±0.6"]]
    diameter = "40 +2 -0"
  }
  holes "fixing" {
    at = [["10 ±0.5","10 ±0.5"], ["170 ±0.5","10 ±0.5"]]
    clearance = "M4"
  }
}
