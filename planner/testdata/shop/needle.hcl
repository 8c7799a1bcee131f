# A long needle: its point is turned while the stem behind it is still thick; no centre goes into so small an end.
part "needle" {
  material = "stainless steel"
  length   = 60
  stock "bar" {
    diameter = 12
  }
  spigot "head" {
    diameter = 10
    length = 23
  }
  spigot "stem" {
    diameter = 5
    length = 25
  }
  taper "point" {
    large = 5
    small = 1
    large_at = "left"
  }
}
