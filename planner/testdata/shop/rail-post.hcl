# A hand rail's post: the rail lies in a hollow across its side, and a screw through both holds it there.
part "rail_post" {
  material = "brass"
  length   = 70
  stock "bar" {
    diameter = 20
  }
  spigot "foot" {
    diameter = 10
    length   = 12
  }
  spigot "post" {
    diameter = 16
  }
  cross_hole "screw" {
    on       = "post"
    at       = 14
    from     = "right"
    diameter = 3.4
  }
  seat "rail" {
    on        = "post"
    at        = 14
    from      = "right"
    radius    = 8
    depth     = 5
    finish_by = "file"
  }
}
