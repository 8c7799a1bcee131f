# A clip between two stays that cross: one lies near its cap, the other on the far side, where the cutter comes over the end.
part "stay_clip" {
  material = "mild steel"
  length   = 60
  stock "bar" {
    diameter = 30
  }
  flange "cap" {
    diameter = 28
    length   = 6
  }
  spigot "stem" {
    diameter = 18
  }
  bore "way" {
    diameter = 6
    depth    = 15
    from     = "right"
  }
  seat "stay" {
    on        = "stem"
    at        = 14
    radius    = "9 ±0.2"
    depth     = "4 ±0.1"
    finish_by = "file"
  }
  seat "lashing" {
    on        = "stem"
    at        = 9
    from      = "right"
    radius    = 10
    depth     = 2.5
    angle     = 180
    finish_by = "file"
  }
}
