# A bore as deep as the longest bar reaches: over four times the bar's thickness.
part "deep_bore" {
  material = "free-cutting steel"
  length   = 48

  stock "bar" {
    diameter = 40
  }

  spigot "outside" {
    diameter = 38
  }
  bore "way" {
    diameter = "24 H8"
  }
}
