# The bar goes back through the spindle: only what stands before the jaws has to go between them and the tailstock.
part "shaft" {
  material = "silver steel"
  length   = 160
  stock "bar" {
 diameter = 20
 length = 600
 }
  spigot "left_journal" {
    diameter = "12 g8"
    length   = 25
  }
  spigot "gear_seat" {
    diameter = "16 h8"
    length   = 40
  }
  flange "collar" {
    diameter = 19
    length   = 5
  }
  spigot "long" {
    diameter = "15 ±0.05"
    length   = 60
  }
  spigot "right_journal" { diameter = "12 g8" }
  chamfer "a" {
    edge = "left_journal.left"
    size = 1
  }
  chamfer "b" {
    edge = "right_journal.right"
    size = 1
  }
}
