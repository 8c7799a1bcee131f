# A knurled screw: nothing is left to hold it by but its thread (rules A-14 and B-40).
part "thumb_screw" {
  material = "mild steel"
  length   = 24
  stock "bar" {
    diameter = 20
  }
  spigot "head" {
    diameter = 18
    length   = 7
  }
  spigot "shank" {}
  thread "m6" {
    on     = "shank"
    size   = "M6"
    length = 14
  }
  knurl "grip" {
    on    = "head"
    pitch = 0.8
  }
  chamfer "lead" {
    edge = "shank.right"
    size = 0.8
  }
  chamfer "back" {
    edge = "head.left"
    size = 0.5
  }
}
