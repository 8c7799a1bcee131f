# For the rules of what crosses the axis: a hole too wide for the round, one into the bore, a flat and a keyway.
part "crossed" {
  material = "mild steel"
  length   = 40

  stock "bar" {
    diameter = 30
  }
  spigot "body" {
    diameter = 24
    length   = 40
  }
  bore "way" {
    diameter = "10 H8"
  }
  cross_hole "oil" {
    on       = "body"
    at       = 5
    from     = "right"
    diameter = 3
    into     = "way"
  }
  cross_hole "pin" {
    on       = "body"
    at       = 12
    from     = "right"
    diameter = 8
  }
  flat "key_flat" {
    on       = "body"
    distance = "10 ±0.1"
    angle    = 180
    length   = 10
    from     = "right"
  }
}
