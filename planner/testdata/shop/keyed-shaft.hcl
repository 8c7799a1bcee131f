# A keyed shaft between two journals: held by its middle, for facing as for milling its key, or it would stand out too far.
part "drive_shaft" {
  material = "silver steel"
  length   = 120
  stock "bar" {
    diameter = 16
  }
  spigot "left_journal" {
    diameter = "12 h7"
    length   = 25
  }
  spigot "middle" {
    diameter = 15
    length   = 60
  }
  spigot "right_journal" {
    diameter = "12 h7"
    length   = 25
  }
  spigot "tail" {
    diameter = "10 g6"
  }
  groove "clip" {
    on = "left_journal"
    at = 3
    width = 1.1
    diameter = 11.5
  }
  slot "key" {
    on = "tail"
    at = 1
    length = 8
    width = "3 ±0.05"
    depth = 1.8
  }
  chamfer "a" {
    edge = "left_journal.left"
    size = 1
  }
  chamfer "b" {
    edge = "tail.right"
    size = 1
  }
  concentric {
    of     = "right_journal"
    to     = "left_journal"
    within = 0.03
  }
}
