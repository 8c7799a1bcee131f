# A screw threaded up to its head without a run-out: no tool can cut that, and the refusal says what would help.
part "screw" {
  material = "free-cutting steel"
  length   = 26

  stock "bar" {
    diameter = 20
  }

  spigot "head" {
    diameter = 18
    length   = 4
  }
  spigot "stem" {
    length = 22
  }
  thread "outer" {
    on   = "stem"
    size = "M10"
  }
}
