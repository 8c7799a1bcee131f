part "lever" {
  material  = "mild steel"
  thickness = 6
  stock "plate" {
    thickness         = 6
    faces_as_supplied = true
  }
  outline "chain" {
    arc "boss" {
      centre = [0, 0]
      radius = 12
    }
    line "lower" {}
    arc "eye" {
      centre = [50, 0]
      radius = 8
    }
    line "upper" {}
  }
  bore "pivot" {
    at       = "boss.centre"
    diameter = "10 H7"
  }
  bore "pin" {
    at       = "eye.centre"
    diameter = "6 H7"
  }
}
