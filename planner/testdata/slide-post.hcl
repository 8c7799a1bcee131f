# A post with a seat across its end: swung by a boring head in the lathe's spindle while the post lies across the bed in the slide's vice.
part "post" {
  material = "brass"
  length   = 40

  stock "bar" {
    diameter = 24
  }
  spigot "shank" {
    diameter = "16 ±0.1"
    length   = 26
  }
  spigot "head" {
    diameter = 22
    length   = 14
  }
  seat "pipe" {
    on        = "right"
    radius    = 20
    finish_by = "file"
    leftover  = 0.05
  }
}
