part "hex_plug" {
  material = "brass"
  length   = 28
  stock "bar" {
    diameter = 22
  }
  spigot "head" {
    diameter = 21
    length   = 8
  }
  spigot "stem" {
    length = 20
  }
  thread "t" {
    on   = "stem"
    size = "M10"
    length = 16
  }
  flat "hex" {
    on           = "head"
    across_flats = 18
    count        = 6
  }
}
