part "stop_collar" {
  material = "mild steel"
  length   = 12
  stock "bar" {
    diameter = 25
  }
  flange "body" {
    diameter = 24
  }
  bore "shaft" {
    diameter = "10 H8"
  }
  cross_hole "grub" {
    on     = "body"
    at     = 6
    thread = "M4"
    into   = "shaft"
  }
  chamfer "a" {
    edge = "body.left"
    size = 0.5
  }
  chamfer "b" {
    edge = "body.right"
    size = 0.5
  }
}
