part "bracket" {
  material  = "gunmetal"
  thickness = 8

  stock "casting" {
    metal = 2
  }
  outline "chain" {
    datum = ["side", "bottom"]

    start {
      at = [0, 0]
    }
    line "bottom" {
      to = [60, 0]
    }
    line "side" {
      to = ["60 ±0.05", 20]
    }
    arc "shoulder" {
      to      = [50, 30]
      tangent = true
    }
    line "shelf" {
      to = [30, 30]
    }
    arc "root" {
      radius = 5
    }
    line "post" {
      to = [30, 50]
    }
    arc "crown" {
      to      = [10, 50]
      through = [20, 60]
    }
    arc "hollow" {
      to     = [0, 40]
      centre = [0, 50]
      bulge  = "in"
    }
    line "back" {}
  }
}
