# A flanged gland out of a stick of cast iron: the first cut along it goes under the skin.
part "gland" {
  material = "cast iron"
  length   = 30
  stock "bar" {
    diameter = 56
    length   = 80
    rough    = true
  }
  spigot "neck" {
    diameter = "30 ±0.05"
    length   = 18
  }
  flange "head" {
    diameter = 50
  }
  bore "way" {
    diameter = "16 H7"
  }
}
