# A pawl: one straight edge along the datum, the rest of its outline arcs and a slope.
part "pawl" {
  material  = "tool steel"
  thickness = 5
  general   = "m"
  stock "plate" {
    thickness = 5
    faces_as_supplied = true
  }
  outline "chain" {
    arc "boss" {
      centre = [0, 0]
      radius = 9
    }
    line "belly" {}
    arc "tip" {
      centre = [34, -6]
      radius = 3
    }
    line "back" {}
  }
  bore "pivot" {
    at = "boss.centre"
    diameter = "6 H7"
  }
  holes "spring" {
    at = [[14, 0]]
    thread = "M2"
  }
}
