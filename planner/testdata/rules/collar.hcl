# An old collar, too short to lie in a vice with a vee while it gets a hole for a grub screw: refused.
part "collar" {
  material = "mild steel"
  length   = 11
  general  = "c"

  stock "existing" {
    length = 11
    spigot "rim" {
      diameter = 40
      length   = 11
    }
    bore "hole" {
      diameter = 16
    }
  }
  spigot "body" {
    diameter    = 40
    length      = 11
    as_supplied = true
  }
  bore "way" {
    diameter    = 16
    as_supplied = true
  }
  cross_hole "grub" {
    on     = "body"
    at     = 5.5
    thread = "M4"
    into   = "way"
  }
}
