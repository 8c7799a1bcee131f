# A spacer of stainless bar with two flats as long as the cutter is wide, and a reamed hole across, measured from the right.
part "spacer" {
  material = "stainless steel"
  length   = 30
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = "22 h8"
  }
  bore "bolt" {
    diameter = 8.5
  }
  flat "grip" {
    on = "body"
    at = 6
    length = 10
    across_flats = 19
    count = 2
  }
  cross_hole "pin" {
    on = "body"
    from = "right"
    at = 7
    diameter = "4 H7"
    angle = 90
  }
  chamfer "c1" {
    edge = "body.left"
    size = 0.5
  }
  chamfer "c2" {
    edge = "body.right"
    size = 0.5
  }
  parallel {
    of = "face.left"
    to = "face.right"
    within = 0.02
  }
}
