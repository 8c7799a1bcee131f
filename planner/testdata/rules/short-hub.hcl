# A hub too short to lie in a vee beside its cross hole: refused.
part "short_hub" {
  material = "mild steel"
  length   = 24

  stock "bar" {
    diameter = 65
    length   = 26
  }
  flange "rim" {
    diameter = 60
    length   = 8
  }
  spigot "hub" {
    diameter = 24
    length   = 16
  }
  bore "way" {
    diameter = "10 H8"
  }
  cross_hole "grub" {
    on     = "hub"
    at     = 8
    thread = "M4"
    into   = "way"
  }
}
