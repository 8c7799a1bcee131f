# A spacer whose second face is cut true to the first by sitting on it (rule A-07).
part "spacer" {
  material = "aluminium"
  length   = "3 ±0.02"
  quantity = 4
  stock "bar" {
    diameter = 40
  }
  spigot "rim" {
    diameter = 38
  }
  bore "eye" {
    diameter = "30 H8"
  }
  parallel {
    of     = "face.left"
    to     = "face.right"
    within = 0.02
  }
}
