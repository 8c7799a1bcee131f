# A flange whose holes lie round its axis: on a vertical slide nothing stands with an end towards the spindle.
part "flange" {
  material = "brass"
  length   = 20

  stock "bar" {
    diameter = 50
  }
  spigot "boss" {
    diameter = 20
    length   = 12
  }
  flange "rim" {
    diameter = 46
    length   = 8
  }
  holes "fix" {
    circle   = 34
    count    = 4
    diameter = 4.5
    from     = "right"
  }
}
