# A pulley for the float's cord, held on its spindle by a grub screw that is tapped at the bench.
part "cord_pulley" {
  material = "aluminium"
  length   = 28
  stock "bar" { diameter = 75 }
  flange "rim" { 
    diameter = 70
    length = 14
  }
  spigot "hub" { 
    diameter = 30 
  }
  groove "vee" {
    on = "rim"
    at = 2
    width = 10
    angle = 38
    depth = 9
  }
  bore "eye" { diameter = "12 H7" }
  cross_hole "grub" {
    on = "hub"
    at = 7
    thread = "M5"
    into = "eye"
  }
  run_out {
    of = "rim"
    to = "eye"
    within = 0.05
  }
}
