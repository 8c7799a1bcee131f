# A fork end: its thread is cut last, for no vice may close on it, and no die comes on over a centre.
part "fork_end" {
  material = "mild steel"
  length   = 50
  stock "bar" {
    diameter = 20
  }
  spigot "head" {
    diameter = 18
    length = 28
  }
  spigot "shank" {}
  thread "m" {
    on = "shank"
    size = "M8"
    length = 15
  }
  cross_hole "pin" {
    on = "head"
    at = 8
    diameter = "6 H8"
  }
  flat "cheek" {
    on = "head"
    at = 0
    length = 16
    across_flats = 14
    count = 2
    angle = 0
  }
}
