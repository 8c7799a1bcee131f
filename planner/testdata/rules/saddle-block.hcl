# A block that sits on the tide gauge's stilling pipe and carries the float's guide: its seat comes after all that a machine cuts (A-37f).
part "saddle_block" {
  material  = "bronze"
  thickness = 20

  stock "plate" {
    thickness = 22
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  holes "bolts" {
    at        = [[8, 8], [52, 8], [8, 32], [52, 32]]
    clearance = "M5"
    position  = 0.4
  }
  holes "guide" {
    at          = [[22, 20], [38, 20]]
    thread      = "M4"
    full_thread = 8
    depth       = 11
  }
  seat "pipe" {
    on        = "back"
    radius    = 45
    finish_by = "file"
    leftover  = 0.05
  }
}
