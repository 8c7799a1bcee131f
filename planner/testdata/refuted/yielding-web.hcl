# Between its bore and its top the metal would yield under the jaws before the bore were out of round by too much.
part "thing" {
  material = "brass"
  thickness = 7.5

  stock "plate" {
    thickness = 9.5
  }
  outline "round_topped" {
    width = 54
    height = 47.5
    radius = 28
  }
  bore "main" {
    at = "top.centre"
    diameter = 26
  }
  holes "ring" {
    circle = 34
    count = 7
    start = 75
    about = "top.centre"
    diameter = 3
    depth = 3
  }
}
