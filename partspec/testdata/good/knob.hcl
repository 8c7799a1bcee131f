# A knob with a ball on a hollow neck and a tapped hole, drawn in inches: the
# corners of the language that the examples do not show.
part "knob" {
  material     = "brass"
  drawn_in     = "inch"
  general      = "c"
  length       = 1 + 5 / 8
  quantity     = 3
  roughness    = 1.6
  inner_corner = 10 * thou
  note         = "polish after turning"

  stock "bar" {
    diameter = 1
    rough    = true
  }

  profile "ball_on_neck" {
    finish_by = "file"
    zone      = [5 * thou]

    start {
      diameter = 1 / 2
    }
    arc {
      length   = 2 * sqrt((3 / 8) * (3 / 8) - (1 / 4) * (1 / 4))
      diameter = 1 / 2
      radius   = 3 / 8
      bulge    = "out"
    }
    line {
      length   = 1 / 16
      diameter = 1 / 2
    }
    arc {
      length   = 1 / 4
      diameter = 9 / 16
      tangent  = true
    }
  }
  flange "foot" {
    diameter = "7/8 in +0 -0.005"
  }

  bore "tapping" {
    from  = "right"
    depth = 0.7
  }
  thread "screw" {
    on     = "tapping"
    size   = "BSF 1/4"
    length = "1/2 in"
    hand   = "left"
  }
  chamfer "lead" {
    edge = "tapping.right"
    size = "1/32 in"
  }
  groove "vee" {
    on    = "foot"
    from  = "face.right"
    at    = 1 / 8
    width = 1 / 16
    angle = 90
  }
  fillet "rim" {
    edge   = "foot.right"
    radius = "1/32 in"
  }

  square {
    of     = "face.right"
    to     = "screw"
    within = 2 * thou
  }
}
