part "gusset" {
  material  = "mild steel"
  thickness = 25
  stock "plate" {
    thickness         = 25
    faces_as_supplied = true
  }
  outline "chain" {
    datum = ["left", "bottom"]
    start {
      at = [0, 0]
    }
    line "bottom" {
      to = [110, 0]
    }
    line "right" {
      to = [110, 30]
    }
    line "slope" {
      to = [75, 75]
    }
    line "top" {
      to = [0, 75]
    }
    line "left" {}
  }
  holes "feet" {
    at        = [[50, 35]]
    clearance = "M8"
  }
}
