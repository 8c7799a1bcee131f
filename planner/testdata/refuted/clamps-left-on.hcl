# Its clamps stay on while the dials are set anew: what was milled off between moves the middle, not them. A drill then goes through under jaws that milling wants firm.
part "thing" {
  material = "brass"
  thickness = 2.5

  stock "sheet" {
    thickness = 2.5
  }
  outline "rectangle" {
    width = 25.5
    height = 48.5
    corner_radius = 2.5
  }
  bore "main" {
    at = [13, 24.5]
    diameter = "6 mm ±0.1 mm"
  }
  holes "ring" {
    circle = 15
    count = 3
    start = 45
    about = [13, 24.5]
    thread = "M3"
  }
}
