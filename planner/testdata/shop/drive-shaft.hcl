part "drive_shaft" {
  material = "mild steel"
  length   = 70
  stock "bar" {
    diameter = 16
  }
  spigot "drive" {
    diameter = "10 h7"
    length   = 25
  }
  spigot "shoulder" {
    diameter = 15
    length   = 20
  }
  spigot "tail" {
    diameter = "8 h8"
  }
  flat "grub_flat" {
    on     = "drive"
    depth  = 1
    length = 12
    at     = 2
  }
  cross_hole "pin" {
    on       = "tail"
    at       = 6
    from     = "right"
    diameter = 2.5
  }
}
