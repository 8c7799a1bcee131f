# Its bore lies on both middle lines of its blank, as far from two sides: the section that the jaws press is the one that counts.
part "thing" {
  material = "mild steel"
  thickness = 12

  stock "sheet" {
    thickness = 12
  }
  outline "disc" {
    diameter = 60
  }
  bore "main" {
    at = [0, 0]
    diameter = "23 mm H8"
  }
  holes "ring" {
    circle = 48
    count = 8
    start = 15
    about = [0, 0]
    diameter = 3
    depth = 3
  }
}
