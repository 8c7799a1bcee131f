# The sides filed before its corners, what stands there is little enough to file away.
part "thing" {
  material = "aluminium"
  thickness = 10.5

  stock "sheet" {
    thickness = 10.5
  }
  outline "rectangle" {
    width = 33
    height = 93
    corner_radius = 5.5
  }
  holes "corners" {
    dowel = "3 mm H7"
    grid {
      at = [5, 42]
      columns = 2
      rows = 2
      pitch = [24, 9]
    }
  }
}
