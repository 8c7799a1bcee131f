# A drill presses it down between its parallels, the more so at the least thickness that its faces may be milled to.
part "thing" {
  material = "brass"
  thickness = 4.5

  stock "plate" {
    thickness = 5.5
  }
  outline "round_topped" {
    width = 25.5
    height = 50
    radius = 13.75
  }
  bore "main" {
    at = "top.centre"
    diameter = 6
  }
  holes "ring" {
    circle = 15
    count = 2
    start = 15
    about = "top.centre"
    diameter = 2
  }
  holes "corners" {
    dowel = "3 mm H7"
    grid {
      at = [8, 42]
      columns = 2
      rows = 2
      pitch = [9, 15.5]
    }
  }
}
