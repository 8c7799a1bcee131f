# Thin brass bezel that holds the glass of the tide dial.
part "bezel" {
  material  = "brass-free-cutting"
  length    = 8
  roundness = 0.05

  stock "tube" {
    outside = 75
    inside  = 60
  }

  spigot "outside" {
    diameter = 72
    length   = 8
  }
  bore "sight" {
    diameter = "66 H9"
  }
  counterbore "rebate" {
    from     = "right"
    diameter = "68.5 H11"
    depth    = 2.5
  }
  chamfer "front_edge" {
    edge = "outside.right"
    size = 0.5
  }
}
