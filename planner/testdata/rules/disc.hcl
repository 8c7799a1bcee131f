# A disc larger than the chuck, on a bar that is small enough to be held only by luck.
part "disc" {
  material = "aluminium-6082"
  length   = 12

  stock "bar" {
    diameter = 110
  }

  spigot "rim" {
    diameter = 104
  }
}
