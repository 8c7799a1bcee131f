# A small aluminium pulley, without the cross hole through its hub, and with the vee of its rim drawn as two steps.
part "pulley" {
  material = "aluminium-6082"
  length   = 24

  stock "bar" {
    diameter = 85
    length   = 26 # a sawn disc
  }

  spigot "hub" {
    diameter = 24
    length   = 10
  }
  flange "rim" {
    diameter = 80
    length   = 14
  }
  groove "cord" {
    on    = "rim"
    at    = 4
    width = 6
    depth = 4
  }
  groove "lock" {
    on    = "rim"
    at    = 5.5
    width = 3
    depth = 8
  }
  bore "main" {
    diameter = "8 H7"
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
