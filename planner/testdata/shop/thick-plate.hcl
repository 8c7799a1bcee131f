# A thick plate with a small mouth to its bore: the cone of the countersink stands far down the hole that it only just touches.
part "thick_plate" {
  material  = "brass"
  thickness = 20
  stock "plate" {
    thickness         = 20
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 50
    height = 40
  }
  bore "pin" {
    at       = [12, 12]
    diameter = 10
  }
  chamfer "mouth" {
    edge = "pin.front"
    size = 0.5
  }
}
