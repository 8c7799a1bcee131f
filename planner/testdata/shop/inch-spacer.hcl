part "spacer" {
  drawn_in = "inch"
  material = "aluminium"
  length   = 0.75
  stock "bar" {
    diameter = 1
  }
  spigot "body" {
    diameter = 0.875
  }
  bore "way" {
    diameter = "10 mm H7"
  }
}
