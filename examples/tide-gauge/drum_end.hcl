# An end of the paper drum: a disc of aluminium sheet. Its bore is made first, at the middle of a piece that is still easy to hold; then the rim is turned
# true to it, with the sheet backed on both sides on a mandrel in the bore.
part "drum_end" {
  material  = "aluminium-6082"
  thickness = 3
  stock "sheet" {
    thickness = 3
    width     = 80
    length    = 80
  }
  outline "disc" {
    diameter = "70 h8"
  }
  bore "spindle" {
    at       = ["0 ±0.2", "0 ±0.2"] # near the middle of the piece: the rim is turned about it
    diameter = "12 H7"
  }
  holes "tie_rods" {
    circle    = 48
    count     = 3
    about     = "spindle"
    clearance = "M4"
    position  = 0.5 # loose on M4 rods
  }
}
