# A worn pulley skimmed: it is held by its hub, which is smaller than the piece is at its largest and stays as it is.
part "worn_pulley" {
  material = "cast iron"
  length   = 36
  stock "existing" {
    length = 40
    at     = 2
    flange "old_rim" {
      diameter = 84
      length   = 16
    }
    spigot "old_hub" {
      diameter = 34
    }
  }
  flange "rim" {
    diameter = 80
    length   = 14
  }
  spigot "hub" {
    diameter    = 34
    as_supplied = true
  }
  bore "way" {
    diameter = "16 H7"
  }
}
