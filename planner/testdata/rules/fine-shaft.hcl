# A shaft finer than any instrument of the shop can tell.
part "fine_shaft" {
  material = "free-cutting steel"
  length   = 40

  stock "bar" {
    diameter = 25
  }

  spigot "journal" {
    diameter = "20 h6"
    length   = 25
  }
  flange "head" {
    diameter = 24
  }
}
