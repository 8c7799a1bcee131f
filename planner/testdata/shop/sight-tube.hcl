# A sight tube: too wide for the spindle, its bore left as the tube has it.
part "sight_tube" {
  material = "brass"
  length   = 90
  stock "tube" {
    outside = 32
    inside = 26
  }
  spigot "eye" {
    diameter = 30
    length = 80
  }
  spigot "screw" {}
  thread "t" {
    on = "screw"
    size = "M28x1"
    length = 7
  }
  bore "way" {
    as_supplied = true
  }
  bore "cell" {
    from = "left"
    diameter = "27 H8"
    depth = 6
  }
}
