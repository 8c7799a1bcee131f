# A stop with a flat on its short head: the quickest cutters run into the grip, smaller ones do not.
part "stop_collar" {
  material = "mild steel"
  length   = 18
  stock "bar" {
    diameter = 25
  }
  flange "head" {
    diameter = 22
    length   = 10
  }
  spigot "nose" {
    diameter = "12 h9"
  }
  bore "socket" {
    diameter = 10
    depth    = 14
    from     = "left"
  }
  flat "key" {
    on = "head"
    distance = 9.5
  }
}
