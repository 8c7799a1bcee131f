# Two reamed bores closer to each other than drills land: both are bored true in one setting, and reamed.
part "crank_web" {
  material  = "mild steel"
  thickness = 8
  stock "plate" { thickness = 10 }
  outline "chain" {
    arc "main" { 
      centre = [0,0]
      radius = 13
    }
    line "a" {}
    arc "pin" { 
      centre = [28,0]
      radius = 11
    }
    line "b" {}
  }
  bore "shaft" {
    at = "main.centre"
    diameter = "14 H7"
  }
  bore "crankpin" {
    at = [28, 0]
    diameter = "12 H7"
  }
  position {
    of = "crankpin"
    to = "shaft"
    within = 0.04
  }
}
