part "pipe_saddle_40" {
  material = "brass"
  length   = 16
  stock "bar" {
    diameter = 38
  }
  flange "base" {
    diameter = 36
    length   = 10
  }
  spigot "boss" {
    diameter = 22
  }
  bore "way" {
    diameter = 12
  }
  seat "pipe" {
    on        = "left"
    radius    = 40
    finish_by = "file"
    leftover  = 0.1
  }
  holes "screws" {
    circle    = 29
    count     = 2
    clearance = "M3"
    from      = "right"
  }
}
