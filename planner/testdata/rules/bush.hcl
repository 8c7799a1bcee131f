# A plain bush whose outside and second face must be true to its reamed bore.
part "bush" {
  material = "bronze"
  length   = 22

  stock "bar" {
    diameter = 26
    length   = 24
  }

  spigot "body" {
    diameter = "24 h8"
  }
  bore "main" {
    diameter = "12 H7"
  }
  run_out {
    of     = "body"
    to     = "main"
    within = 0.04
  }
  square {
    of     = "face.left"
    to     = "main"
    within = 0.03
  }
}
