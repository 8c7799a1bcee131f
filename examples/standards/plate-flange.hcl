# A plate flange for welding, EN 1092-1 type 01, DN 25, PN 16, flat faced (form A): outside 115, bolt circle 85, four holes of 14 for M12, 16 thick,
# bore 34.5 for pipe of 33.7. The sizes are those of EN 1092-1:2007+A1:2013, tables of type 01, from memory of the standard: check them against it before you
# make one. The limits are general ones. A flange in pressure service belongs to its code and its inspector, who want certified plate.
part "plate_flange" {
  material = "mild steel"
  general  = "c"
  length   = 16

  stock "bar" {
    diameter = 120
  }

  flange "plate" {
    diameter = 115
    length   = 16
  }
  bore "pipe" {
    diameter = 34.5
  }
  holes "bolts" {
    circle   = 85
    count    = 4
    start    = 45
    diameter = 14
  }
}
