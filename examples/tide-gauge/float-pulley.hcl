# The float in the stilling pipe hangs on a cord that runs in the stepped groove of this pulley.
part "float_pulley" {
  material = "aluminium-6082"
  length   = 24

  stock "bar" {
    diameter = 65
  }

  spigot "hub" {
    diameter = 24
    length   = 10
  }
  flange "rim" {
    diameter = 60
    length   = 14
  }
  groove "cord" {
    on    = "rim"
    at    = 3 # from the rim's left face
    width = 8
    depth = 3
  }
  groove "lock" {
    on    = "rim"
    at    = 5
    width = 4
    depth = 6
  }
  bore "main" {
    diameter = "8 H7"
  }

  chamfer "hub_edge" {
    edge = "hub.left"
    size = 0.5
  }
  chamfer "bore_mouth" {
    edge = "main.left"
    size = 0.3
  }

  run_out {
    of     = "rim"
    to     = "main"
    within = 0.05
  }
}
