# A screw with a thread over its whole stem: nothing but the thread and a thin head to hold it by.
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
