# An oil cup: a thin wall over which a knurl is pressed.
part "oil_cup" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 26
  }
  spigot "stem" {
    length = 9
  }
  spigot "body" {
    diameter = 24
  }
  thread "pipe" {
    on   = "stem"
    size = "BSW 1/4"
    length = 6
  }
  bore "oil" {
    diameter = 3
  }
  bore "well" {
    from = "right"
    depth = 17
    flat = true
  }
  thread "lid" {
    on = "well"
    size = "M20x1"
    length = 6
  }
  knurl "k" {
    on = "body"
    pitch = 0.8
  }
}
