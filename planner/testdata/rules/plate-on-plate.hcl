# The base of the tide gauge's float arm is spotted through from its cover, the datum edges of the two laid flush, and tapped.
part "arm_cover" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness         = 4
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 80
    height = 56
  }
  holes "screws" {
    at        = [[8, 8], [72, 8], [72, 48], [8, 48]]
    clearance = "M4"
  }
}
part "arm_base" {
  material  = "brass"
  thickness = 8
  stock "plate" {
    thickness         = 8
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 90
    height = 70
  }
  holes "screws" {
    at       = [[8, 8], [72, 8], [72, 48], [8, 48]]
    thread   = "M4"
    match    = part.arm_cover.holes.screws
    register = "edges"
  }
}
