# A stud with a thin head: its thread is the longest thing to hold it by.
part "stud" {
  material = "brass-free-cutting"
  length   = 30

  stock "bar" {
    diameter = 26
  }

  spigot "head" {
    diameter = 24
    length   = 4
  }
  spigot "stem" {
    length = 26
  }
  thread "outer" {
    on     = "stem"
    size   = "M16x1.5"
    length = 20
  }
}
