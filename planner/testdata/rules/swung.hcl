# A seat that a boring head swings, the work against an angle plate.
part "swung" {
  material = "brass"
  length   = 20

  stock "bar" {
    diameter = 40
  }
  flange "rim" {
    diameter = 24
    length   = 20
  }
  bore "way" {
    diameter = "12 H9"
  }
  seat "pipe" {
    on     = "left"
    radius = "16 ±0.2"
    angle  = 90
  }
}
