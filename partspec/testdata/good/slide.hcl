# A shop with a lathe, its vertical slide and a bench, and a plate that is cut on them: figures of the slide in millimetres, of the lathe in inches.
workshop "boat_shed" {
  machine "lathe" {
    speeds = [70, 140, 280, 560, 1100]

    dial "cross" {
      graduation = 1 * thou
      per_turn   = 100 * thou
      reads      = "radius"
      travel     = 4 * inch
    }
    dial "saddle" {
      graduation = 5 * thou
      per_turn   = 500 * thou
    }
  }
  machine "bench" {}

  holding "collets" {
    sizes = [6, 10]
  }
  holding "vertical_slide" {
    opening    = 45
    jaw_width  = 50
    jaw_height = 18
    grip_force = [300, 4000]
    squareness = 0.04
    run_out    = 0.05
    graduation = 0.025
    per_turn   = 2
    backlash   = 0.15
    travel     = 80
  }
  tool "end_mill" {
    sizes = [6, 10]
  }
}

part "stop" {
  material  = "brass"
  thickness = 6

  stock "plate" {
    thickness         = 6
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 30
    height = 20
  }
}
