# Eccentrics: all about the main axis first (A-06e), the throw by the swing of a clock (E-08e).
part "lift" {
  material = "mild steel"
  length   = 26

  stock "bar" {
    diameter = 40
  }
  axis "spindle" {
    offset = "3 ±0.05"
  }
  flange "sheave" {
    diameter = 36
  }
  spigot "boss" {
    axis     = "spindle"
    diameter = 20
    length   = 8
    from     = "right"
  }
  bore "hole" {
    axis     = "spindle"
    diameter = "10 H7"
  }
}
