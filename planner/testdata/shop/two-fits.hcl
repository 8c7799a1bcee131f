# Two fits of one size side by side: the outer one is finished first, or the tool would begin in what roughing left on it.
part "eq" {
  material = "mild steel"
  length   = 40
  stock "bar" {
    diameter = 32
  }
  spigot "c" {
    diameter = 30
    length = 20
  }
  spigot "b" {
    diameter = "20 h7"
    length = 10
  }
  spigot "a" {
    diameter = "20 h11"
  }
}
