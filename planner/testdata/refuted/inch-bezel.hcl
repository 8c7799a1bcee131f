# Its rim, which the jaws meet with their face, is thinner than a facing tool keeps away from them; its skirt is turned under an eased grip, into the round that roughing has left.
part "thing" {
  drawn_in = "inch"
  material = "brass"
  length   = "5/16 in"

  stock "tube" {
    outside = "2 1/4 in"
    inside  = "1 7/8 in"
  }
  flange "rim" {
    diameter = "2 3/16 in"
    length   = "1/16 in"
  }
  spigot "skirt" {
    diameter = "2.062 +0 -0.002"
  }
  bore "glass" {
    diameter = "1.937 +0.002 -0"
  }
  counterbore "seat" {
    from     = "right"
    diameter = "2.000 +0.002 -0"
    depth    = 0.125
  }
}
