# A sleeve of tube that the drill opens by a hair: it pushes and twists as little, and an ordinary chuck holds it.
part "sleeve" {
  material = "mild steel"
  length   = 30
  stock "tube" {
    outside = 30
    inside  = 19
  }
  spigot "body" {
    from     = "left"
    diameter = 28
    length   = 30
  }
  bore "main" {
    from     = "left"
    diameter = "20 H7"
    through  = true
  }
}
