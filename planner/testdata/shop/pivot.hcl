# A slot for a key that ends in metal both ways, and two flats that run out over the end of a part whose length is measured.
part "pivot" {
  material = "brass"
  length   = 50
  stock "bar" {
    diameter = 25
  }
  spigot "stem" {
    diameter = 16
    length   = 35
  }
  spigot "head" {
    diameter = 22
  }
  bore "oil_way" {
    diameter = 4
    depth    = 20
  }
  cross_hole "oil" {
    on       = "stem"
    at       = 12
    diameter = 2
    into     = "oil_way"
  }
  flat "spanner" {
    on           = "head"
    across_flats = "17 -0.1 -0.2"
    count        = 2
  }
  slot "key" {
    on     = "stem"
    width  = "5 P9"
    depth  = "3 +0.1 -0"
    length = 10
    at     = 3
    from   = "right"
    angle  = 90
  }
}
