part "rocker" {
  material  = "mild steel"
  thickness = 6

  stock "plate" {
    thickness = 8
  }
  outline "chain" {
    arc "boss" {
      centre = [0, 0]
      radius = 12
    }
    line "lower" {}
    arc "eye" {
      centre = [50, 10]
      radius = 6
    }
    line "upper" {
      finish_by = "file"
    }
  }
  bore "pivot" {
    at       = "boss.centre"
    diameter = "10 H7"
  }
  bore "pin" {
    at       = "eye.centre"
    diameter = 5
  }
  position {
    of     = "pin"
    to     = "pivot"
    within = 0.4
  }
}

