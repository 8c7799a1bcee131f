# A bronze bush whose body goes tight into a housing: p7, as no micrometer is certain within a quarter of p6.
part "flanged_bush" {
  material = "bronze"
  length   = 30

  stock "bar" {
    diameter = 38
  }

  spigot "body" {
    diameter = "24 p7"
    length   = 25
  }
  flange "rim" {
    diameter = 36
    length   = 5
  }
  bore "main" {
    diameter = "16 H7"
  }
  groove "undercut" {
    on    = "body"
    from  = "right"
    at    = 0
    width = 1
    depth = 0.3
  }
  chamfer "lead" {
    edge  = "body.left"
    size  = 0.5
    angle = 30
  }
  chamfer "mouth" {
    edge = "main.left"
    size = 0.3
  }

  concentric {
    of     = "body"
    to     = "main"
    within = 0.02
  }
  square {
    of     = "rim.left"
    to     = "main"
    within = 0.02
  }
}
