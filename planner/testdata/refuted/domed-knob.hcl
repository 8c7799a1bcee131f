# Its stem was turned from the other end, so that the shoulder the dome runs out to lies off by what the length may be.
part "thing" {
  material = "brass"
  length   = 38

  stock "bar" {
    diameter = 28
    length   = 60
  }
  spigot "stem" {
    diameter = 10
    length   = 20
  }
  profile "dome" {
    start {
      diameter = 18
    }
    line {
      length   = 9
      diameter = 18
    }
    arc {
      length   = 9
      diameter = 0.1
      radius   = 9
      bulge    = "out"
    }
  }
  bore "tap" {
    from     = "left"
    diameter = 5
    depth    = 12
  }
}
