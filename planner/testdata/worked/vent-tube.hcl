# A brass adapter with a spigot on each end, as it is without the tube that may be brazed into it.
part "adapter" {
  material = "brass-free-cutting"
  length   = 48

  stock "bar" {
    diameter = 28
  }

  spigot "lower" {
    diameter = "18 -0.02 -0.05"
    length   = 15
  }
  flange "collar" {
    diameter = 26
    length   = 6
  }
  spigot "upper" {
    diameter = "14 -0.02 -0.05"
    length   = 27
  }
  bore "way" {
    diameter = 10
  }
  counterbore "seat" {
    from     = "left"
    diameter = "12.1 +0.06 -0"
    depth    = 8
  }

  concentric {
    of     = "lower"
    to     = "upper"
    within = 0.03
  }
}
