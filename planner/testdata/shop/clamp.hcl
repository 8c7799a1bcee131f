# A slot wider than any end mill that fits it exactly: a smaller one goes down the middle and along both sides.
part "strap_clamp" {
  material  = "mild steel"
  thickness = 10
  stock "plate" {
    thickness = 12
  }
  outline "rectangle" {
    width  = 80
    height = 25
  }
  slot "adjust" {
    width   = "8.5 ±0.2"
    ends    = [[25, 12.5], [50, 12.5]]
    through = true
  }
  holes "jack" {
    at     = [[70, 12.5]]
    thread = "M8"
  }
}
