# Flat parts that cannot be, and words in wrong places.
part "no_outline" {
  material  = "brass"
  thickness = 4 # ERROR "has a thickness and no outline"
  stock "plate" {
    thickness = 5
  }
}

part "no_thickness" {
  material = "brass"
  stock "sheet" {
    thickness = 2
  }
  outline "disc" { # ERROR "has an outline and no thickness"
    diameter = 50
  }
}

part "no_length" { # ERROR "lacks length"
  material = "brass"
  stock "bar" {
    diameter = 20
  }
  spigot "body" {
    diameter = 18
  }
}

part "both" {
  material  = "brass"
  thickness = 4
  length    = 20 # ERROR "A flat part has no length"
  stock "plate" {
    thickness = 5
  }
  outline "disc" {
    diameter = 50
  }
}

part "turned_words" {
  material  = "brass"
  thickness = 4
  stock "bar" { # ERROR "A flat part is not cut from stock 'bar'"
    diameter = 60
  }
  outline "rectangle" {
    width  = 40
    height = 30
  }
  spigot "hub" { # ERROR "A flat part has no spigot"
    diameter = 20
  }
  bore "nowhere" { # ERROR "lacks at"
    diameter = 10
  }
  bore "left_word" {
    at       = [20, 15]
    diameter = 8
    from     = "left" # ERROR "cannot begin from 'left'"
  }
  bore "tube" {
    at          = [30, 15]
    as_supplied = true # ERROR "Plate has no bore"
  }
}

part "outlines" {
  material  = "brass"
  thickness = 4
  stock "plate" {
    thickness = 5
  }
  outline "square" { # ERROR "There is no outline 'square'"
    width = 40
  }
  outline "disc" { # ERROR "has a second outline"
    diameter = 50
  }
}

part "low_top" {
  material  = "brass"
  thickness = 4
  stock "plate" {
    thickness = 5
  }
  outline "round_topped" {
    width  = 60
    height = 40
    radius = 20 # ERROR "The round top does not reach the sides"
  }
}

part "corners" {
  material  = "brass"
  thickness = 4
  stock "plate" {
    thickness = 5
  }
  outline "rectangle" {
    width         = 60
    height        = 20
    corner_radius = 10 # ERROR "The corners leave no straight edge"
  }
}

part "edges" {
  material  = "brass"
  thickness = 4
  stock "plate" {
    thickness = 4.5
  }
  outline "round_topped" {
    width  = 60
    height = 40
    radius = 30
    datum  = ["left", "topp"] # ERROR "Did you mean 'top'?"
    edge "lft" { # ERROR "There is no edge 'lft'"
      as_supplied = true
    }
    edge "top" {
      as_supplied = true # ERROR "is an arc"
    }
    edge "left" {
      as_supplied = true
      finish_by   = "file" # ERROR "is left and filed"
    }
    edge "left" { # ERROR "A second edge 'left'"
      finish_by = "file"
    }
    edge "right" {
      finish_by = "saw" # ERROR "cannot be finished by 'saw'"
    }
  }
}

part "datums" {
  material  = "brass"
  thickness = 4
  stock "plate" {
    thickness = 4.5
  }
  outline "round_topped" {
    width  = 60
    height = 40
    radius = 30
    datum  = ["left", "top"] # ERROR "cannot be a datum"
  }
}

part "one_datum" {
  material  = "brass"
  thickness = 4
  stock "plate" {
    thickness = 4.5
  }
  outline "rectangle" {
    width  = 60
    height = 40
    datum  = ["left", "right"] # ERROR "not two edges at right angles"
  }
}

part "thin" {
  material  = "brass"
  thickness = 4
  stock "plate" { # ERROR "The stock is thinner"
    thickness = 3
  }
  outline "disc" {
    diameter = 50
  }
}

part "same" {
  material  = "brass"
  thickness = 4
  stock "plate" { # ERROR "Nothing is left to mill on the faces"
    thickness = 4
  }
  outline "disc" {
    diameter = 50
  }
}

part "left_faces" {
  material  = "brass"
  thickness = 4
  stock "sheet" { # ERROR "The stock's faces are left, and it is thicker"
    thickness = 5
  }
  outline "disc" {
    diameter = 50
  }
}

part "small_stock" {
  material  = "brass"
  thickness = 4
  stock "sheet" { # ERROR "The part is 50 mm wide, the stock 45 mm" ERROR "Nothing is left to cut on the edges"
    thickness = 4
    width     = 45
    length    = 50
  }
  outline "disc" {
    diameter = 50
  }
}

part "inner_edge" {
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
      to = [40, 0]
    }
    line "right" {
      to          = [40, 20]
      as_supplied = true
    }
    line "shelf" { # ERROR "Edge 'shelf' cannot be the stock's own"
      to          = [20, 20]
      as_supplied = true
    }
    line "post" {
      to = [20, 30]
    }
    line "top" {
      to = [0, 30]
    }
    line "left" {}
  }
}

part "kept" {
  material  = "brass"
  thickness = 4
  stock "sheet" { # ERROR "Two edges are left as supplied, and the stock is larger" ERROR "The stock lacks length"
    thickness = 4
    width     = 50
  }
  outline "rectangle" {
    width  = 40
    height = 30
    edge "left" {
      as_supplied = true
    }
    edge "right" {
      as_supplied = true
    }
    edge "bottom" {
      as_supplied = true
    }
    edge "top" {
      as_supplied = true
    }
  }
  holes "inches" {
    at       = [[10, 10]]
    diameter = 0.25 # WARNING "Is holes 'inches' really 0.25 mm across?"
  }
}

part "webs" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "rectangle" {
    width  = part.kept.outline.widht # ERROR "Did you mean 'width'?"
    height = part.kept.edge.left     # ERROR "has no block edge"
  }
}

part "web" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = part.kept.stock.thickness
  }
  outline "rectangle" {
    width  = part.kept.outline.width + 40
    height = 50
  }
  bore "a" { # WARNING "Is bore 'a' really so near to bore 'b'?"
    at       = [20, 25]
    diameter = 20
  }
  bore "b" {
    at       = [41, 25]
    diameter = 20
  }
  holes "h" { # WARNING "Is hole 1 of holes 'h' really so near to bore 'b'?"
    at       = [[54, 25]]
    diameter = 4
  }
}

part "too_many" { # ERROR "has too many holes"
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "disc" {
    diameter = 400
  }
  holes "a" {
    circle   = 100
    count    = 200
    diameter = 1
  }
  holes "b" {
    circle   = 110
    count    = 200
    diameter = 1
  }
  holes "c" {
    circle   = 120
    count    = 200
    diameter = 1
  }
  holes "d" {
    circle   = 130
    count    = 200
    diameter = 1
  }
  holes "e" {
    circle   = 140
    count    = 200
    diameter = 1
  }
  holes "f" {
    circle   = 150
    count    = 201 # ERROR "has too many holes"
    diameter = 1
  }
  holes "g" {
    circle   = 150
    count    = 1
    diameter = 1
  }
  holes "grid" {
    diameter = 1
    grid { # ERROR "The grid has too many holes"
      at      = [1, 2]
      columns = 15
      rows    = 15
      pitch   = 5
    }
  }
}

part "words_of_turning" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "disc" {
    diameter = 40
  }
  bore "main" {
    diameter = 20
  }
  fillet "f" { # ERROR "A flat part has no fillet"
    edge   = "main.left"
    radius = 1
  }
  groove "g" { # ERROR "A flat part has no groove"
    on    = "main"
    at    = 1
    width = 2
    depth = 1
  }
  knurl "k" { # ERROR "A flat part has no knurl"
    on    = "main"
    pitch = 1
  }
}

# Chamfers and threads are in bores, and there is room for them.
part "broken_mouths" {
  material  = "mild steel"
  thickness = 10
  stock "plate" {
    thickness = 12
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  bore "main" {
    at       = [22, 20]
    diameter = 30
    depth    = 6
    flat     = true
  }
  bore "way" {
    at = "main"
  }
  bore "near" {
    at = [49, 20]
  }
  holes "feet" {
    at       = [[5, 5]]
    diameter = 3
  }
  thread "fine" {
    on   = "way"
    size = "M12"
  }
  thread "left" {
    on   = "near"
    size = "M12"
    from = "left" # ERROR "the end face that it is open at"
  }
  thread "small" {
    on   = "feet" # ERROR "A thread cannot stand on a holes"
    size = "M4"
  }
  chamfer "wrong_end" {
    edge = "main.left" # ERROR "names no face. Write a bore and a face, like"
    size = 1
  }
  chamfer "floor" {
    edge = "main.back" # ERROR "does not come out at the back. On a flat part"
    size = 1
  }
  chamfer "wide" { # ERROR "does not fit its edge"
    edge = "near.front"
    size = 6
  }
  chamfer "inner" {
    edge = "way.front" # ERROR "does not come out at the front"
    size = 0.5
  }
  chamfer "outside" {
    edge = "left.front" # ERROR "of the outline gets no chamfer of its own. Its sharp edges are broken with a file"
    size = 1
  }
  chamfer "of_holes" {
    edge = "feet.front" # ERROR "has no edge of its own. Name the bore whose mouth is broken"
    size = 0.5
  }
}

part "meeting_mouths" {
  material  = "mild steel"
  thickness = 10
  stock "plate" {
    thickness = 12
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  bore "one" {
    at       = [20, 20]
    diameter = 16
  }
  bore "two" {
    at       = [40, 20]
    diameter = 20
  }
  chamfer "of_one" {
    edge = "one.front"
    size = 1
  }
  chamfer "of_two" { # ERROR "does not fit its edge. It takes 1.1 mm"
    edge = "two.front"
    size = 1.1
  }
}
