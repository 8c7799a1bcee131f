# A spacer of brass sheet with a drilled hole.
part "spacer" {
  material  = "brass"
  thickness = 2
  stock "sheet" {
    thickness         = 2
    width             = 44
    length            = 34
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 40
    height = 30
    finish_by = "file"
  }
  holes "screw" {
    at       = [[12, 10]]
    diameter = 4.5
  }
}
