# A plain sheave for a vee cord: the vee's bottom takes a blade, so the flanks are cut by the top slide.
part "sheave" {
  material = "aluminium-6082"
  length   = 16

  stock "bar" {
    diameter = 65
  }

  flange "rim" {
    diameter = 60
  }
  groove "belt" {
    on           = "rim"
    at           = 4.5
    depth        = 7
    angle        = 38
    bottom_width = 2.2
  }
  bore "main" {
    diameter = "8 H7"
  }
}
