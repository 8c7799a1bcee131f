# A slender pin: six times as long as it is thick.
part "pin" {
  material = "free-cutting steel"
  length   = 60

  stock "bar" {
    diameter = 12
  }

  spigot "body" {
    diameter = "10 h9"
    length   = 54
  }
  spigot "head" {
    diameter = 11
  }
}
