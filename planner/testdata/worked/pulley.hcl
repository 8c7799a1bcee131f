# A small aluminium pulley: a vee in its rim, and a grub screw through its hub, which is long enough to lie in a vice.
part "pulley" {
  material = "aluminium-6082"
  length   = 30

  stock "bar" {
    diameter = 85
    length   = 32 # a sawn disc
  }

  spigot "hub" {
    diameter = 24
    length   = 16
  }
  flange "rim" {
    diameter = 80
    length   = 14
  }
  groove "vee" {
    on    = "rim"
    at    = 3
    width = 8
    angle = 38
    depth = 8
  }
  bore "main" {
    diameter = "8 H7"
  }
  cross_hole "grub" {
    on     = "hub"
    at     = 8
    thread = "M4"
    into   = "main"
  }
  chamfer "hub_edge" {
    edge = "hub.left"
    size = 0.5
  }

  run_out {
    of     = "rim"
    to     = "main"
    within = 0.05
  }
}
