part "keyed_hub" {
  material = "mild steel"
  length   = 40 # the key is cut with a cutter smaller than it
  stock "bar" {
    diameter = 40
  }
  flange "rim" {
    diameter = 38
    length   = 8
  }
  spigot "hub" {
    diameter = "20 h7"
  }
  slot "key" {
    on     = "hub"
    width  = "6 P9"
    depth  = 3
    length = 18
    at     = 4
    from   = "right"
  }
  holes "bolts" {
    circle    = 29
    count     = 3
    clearance = "M4"
    from = "left"
  }
}
