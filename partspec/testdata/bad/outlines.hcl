# Outlines of lines and arcs that do not close, cross themselves, or cannot be solved.

part "no_shape" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" { # ERROR "The outline has no shape"
    start {
      at = [0, 0]
    }
    line "bottom" {
      to = [20, 0]
    }
  }
}

part "no_start" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" { # ERROR "The outline has no start"
    line "bottom" {
      to = [20, 0]
    }
    line "right" {
      to = [20, 20]
    }
  }
}

part "two_starts" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "bottom" {
      to = [20, 0]
    }
    start { # ERROR "The outline starts once"
      at = [0, 0]
    }
    line "right" {
      to = [20, 20]
    }
  }
}

part "two_names" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "side" {
      to = [20, 0]
    }
    line "side" { # ERROR "A second edge 'side'"
      to = [20, 20]
    }
    line "back" {}
  }
}

part "open" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "bottom" {
      to = [20, 0]
    }
    line "right" {
      to = [20, 20]
    }
    line "back" { # ERROR "The outline does not close"
      to = [0, 1]
    }
  }
}

part "lacks_to" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "bottom" {} # ERROR "Line 'bottom' lacks to"
    line "right" {
      to = [20, 20]
    }
    line "back" {}
  }
}

part "crossing" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {
      to = [20, 0]
    }
    line "b" {
      to = [0, 20]
    }
    line "c" {
      to = [20, 20]
    }
    line "d" { # ERROR "The outline crosses itself"
      to = [0, 0]
    }
  }
}

part "clockwise" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" { # ERROR "The outline runs clockwise"
    start {
      at = [0, 0]
    }
    line "a" {
      to = [0, 20]
    }
    line "b" {
      to = [20, 20]
    }
    line "c" {}
  }
}

part "point" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {
      to = [20, 0]
    }
    line "b" { # ERROR "Edge 'b' has no length"
      to = [20, 0]
    }
    line "c" {
      to = [20, 20]
    }
    line "d" {}
  }
}

part "arcs" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    arc "twice" { # ERROR "Arc 'twice' is not told once"
      to     = [20, 0]
      radius = 20
      centre = [10, 10]
    }
    arc "bulge" {
      to     = [20, 20]
      radius = 20
      bulge  = "up" # ERROR "An arc cannot bulge 'up'"
    }
    arc "tangent" {
      to      = [0, 20]
      tangent = true
      bulge   = "in" # ERROR "has its bulge already"
    }
    line "d" {}
  }
}

part "small_radius" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    arc "a" {
      to     = [20, 0]
      radius = 9 # ERROR "The radius is too small"
    }
    line "b" {}
  }
}

part "uneven" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    arc "a" {
      to     = [20, 0]
      centre = [9, 5] # ERROR "not equally far from its centre"
    }
    line "b" {}
  }
}

part "in_line" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    arc "a" {
      to      = [20, 0]
      through = [10, 0] # ERROR "lie on one line"
    }
    line "b" {}
  }
}

part "no_tangent" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {
      to = [20, 0]
    }
    arc "b" { # ERROR "The tangent arc is a straight line"
      to      = [30, 0]
      tangent = true
    }
    line "c" {}
  }
}

part "first_tangent" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    arc "b" {
      to      = [30, 0]
      tangent = true # ERROR "nothing before it to be tangent to"
    }
    line "c" {}
  }
}

part "ball_alone" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {}
    arc "b" { # ERROR "does not stand between two lines"
      centre = [20, 10]
      radius = 5
    }
    arc "c" {
      to     = [0, 20]
      radius = 30
    }
    line "d" {}
  }
}

part "ball_and_to" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {
      to = [20, 0] # ERROR "both say where it ends"
    }
    arc "b" {
      centre = [20, 10]
      radius = 5
    }
    line "c" {}
  }
}

part "swallowed" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    arc "b" {
      centre = [0, 0]
      radius = 20
    }
    line "c" {} # ERROR "touches no arc"
    arc "d" {
      centre = [5, 0]
      radius = 5
    }
    line "e" {}
  }
}

part "corner" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {
      to = [20, 0]
    }
    arc "b" { # ERROR "does not fit its corner"
      radius = 25
    }
    line "c" {
      to = [20, 20]
    }
    line "d" {}
  }
}

part "no_corner" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {
      to = [20, 0]
    }
    arc "b" { # ERROR "There is no corner for arc 'b'"
      radius = 5
    }
    line "c" {
      to = [30, 0]
    }
    line "d" {
      to = [30, 30]
    }
    line "e" {}
  }
}

part "corner_of_arc" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    line "a" {
      to = [20, 0]
    }
    arc "b" { # ERROR "does not round the corner of two lines"
      radius = 5
    }
    arc "c" {
      to     = [20, 20]
      radius = 30
    }
    line "d" {}
  }
}

part "start_and_ball" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start {
      at = [0, 0]
    }
    arc "b" { # ERROR "cannot start on an arc whose ends are not known"
      centre = [0, 0]
      radius = 5
    }
    line "c" {
      to = [20, 0]
    }
    line "e" {}
  }
}

part "label" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "chain" {
    start "here" { # ERROR "start takes no name"
      at = [0, 0]
    }
    line { # ERROR "line lacks a name"
      to = [20, 0]
    }
    bend "c" { # ERROR "takes no block bend"
    }
    line "e" {
      too = [0, 5] # ERROR "Did you mean 'to'?"
    }
  }
}
