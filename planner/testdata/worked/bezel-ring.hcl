# A thin brass ring with a rebate for a glass.
part "bezel_ring" {
  material  = "brass-free-cutting"
  length    = 8
  roundness = 0.05

  stock "tube" {
    outside = 75
    inside  = 60
  }

  spigot "outside" {
    diameter = 72
  }
  bore "sight" {
    diameter = "66 H9"
  }
  counterbore "rebate" {
    from     = "right"
    diameter = 68.5
    depth    = 2.5
  }
}
