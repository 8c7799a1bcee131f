part "seats" {
  material  = "bronze"
  thickness = 20
  stock "plate" {
    thickness = 22
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  seat "askew" {
    on     = "back"
    radius = 45
    angle  = 30 # ERROR "The pipe of seat 'askew' lies askew"
  }
  seat "beside" {
    on     = "back"
    radius = 45
    at     = 41 # ERROR "The pipe of seat 'beside' lies beside the part"
  }
  seat "wide" {
    on     = "back"
    radius = 45
    across = 41 # ERROR "is wider than its end"
  }
  seat "narrow" { # ERROR "narrower than the part"
    on     = "back"
    radius = 19
  }
}

part "through" {
  material  = "bronze"
  thickness = 6
  stock "plate" {
    thickness         = 6
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  seat "deep" { # ERROR "goes right through"
    on     = "back"
    radius = 22
    angle  = 90
    across = 40
  }
}

part "sunk" {
  material  = "bronze"
  thickness = 20
  stock "plate" {
    thickness = 22
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  seat "pipe" {
    on     = "back"
    radius = 45
  }
  bore "well" { # ERROR "bore 'well' breaks out in seat 'pipe'"
    at       = [20, 20]
    diameter = 12
    depth    = 16
  }
  slot "groove" { # ERROR "slot 'groove' begins in seat 'pipe'"
    width = 5
    ends  = [[40, 15], [40, 25]]
    depth = 6
    from  = "back"
  }
  holes "leaning" {
    at        = [[50, 10], [50, 20]]
    diameter  = 4
    direction = "normal" # ERROR "would lean, and flat work is not held tilted. Square to seat 'pipe' they lean from the axis by, hole 1 onward, 12.84°, 0°"
  }
  holes "sideways" {
    at        = [[8, 10]]
    diameter  = 4
    direction = "sideways" # ERROR "cannot run 'sideways'"
  }
}

part "seatless" {
  material  = "bronze"
  thickness = 20
  stock "plate" {
    thickness = 22
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  holes "square" {
    at        = [[8, 10]]
    diameter  = 4
    direction = "normal" # ERROR "has no seat to be square to"
  }
}
