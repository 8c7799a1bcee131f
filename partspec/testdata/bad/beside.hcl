# Work beside and across the axis that cannot be, or hardly can.
part "rings" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 60
  }
  flange "rim" {
    diameter = 50
    length   = 10
  }
  spigot "hub" {
    diameter = 26
  }
  bore "way" {
    diameter = 12
  }
  holes "no_end" { # ERROR "does not say which end it is drilled from"
    circle   = 38
    count    = 4
    diameter = 3
    depth    = 4
  }
  holes "no_ring" {
    at        = [[19, 0], [0, 19], [-18, 0]]
    diameter  = 3
    locate_by = "dividing_head" # ERROR "is no ring about the axis: its holes lie 18 mm to 19 mm from it"
  }
  holes "about" {
    circle   = 38
    count    = 4
    diameter = 3
    about    = [1, 2] # ERROR "the circle lies about the axis"
  }
  holes "off" { # ERROR "lies beside the part"
    circle   = 60
    count    = 4
    diameter = 4
  }
  holes "hollow" { # ERROR "lies in the hollow"
    circle   = 8
    count    = 4
    diameter = 2
  }
  holes "rim_broken" { # ERROR "breaks through the rim"
    circle   = 48
    count    = 4
    diameter = 4
    from     = "left"
  }
  holes "hub_cut" { # ERROR "cuts into what stands beside its face"
    circle   = 27
    count    = 4
    diameter = 4
    from     = "right"
  }
  holes "bore_broken" { # ERROR "breaks into the bore"
    circle   = 15
    count    = 4
    diameter = 4
    from     = "left"
  }
  holes "side" { # ERROR "runs out of the metal at its side"
    circle   = 27
    count    = 4
    diameter = 4
    from     = "left"
  }
  holes "axis" { # ERROR "A hole on the axis is a bore"
    at       = [[1, 0]]
    diameter = 4
  }
  holes "deep" {
    circle   = 38
    count    = 4
    diameter = 4
    depth    = 12 # ERROR "deeper than the metal"
    from     = "right"
  }
  holes "mouth" { # ERROR "The widened mouth of holes 'mouth' breaks through the rim"
    circle   = 42
    count    = 4
    diameter = 4
    from     = "left"
    countersink {
      diameter = 10
    }
  }
  holes "near" { # WARNING "really so near to the rim"
    circle   = 44
    count    = 4
    start    = 45
    diameter = 4
  }
}

part "seats" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 60
  }
  flange "rim" {
    diameter = 50
    length   = 10
  }
  spigot "hub" {
    diameter = 26
  }
  holes "fixing" {
    circle      = 38
    count       = 4
    thread      = "M4"
    full_thread = 7 # ERROR "has no metal for its thread over"
    through     = true
  }
  holes "blind" { # ERROR "breaks out in seat 'good'"
    circle   = 38
    count    = 1
    start    = 45
    diameter = 3
    depth    = 6
    from     = "right"
  }
  holes "from_seat" { # ERROR "begins in seat 'good'"
    circle   = 38
    count    = 1
    start    = 225
    diameter = 3
    depth    = 6
    from     = "left"
  }
  holes "thin" { # WARNING "Does the thread of hole 1"
    circle = 38
    count  = 1
    start  = 302
    thread = "M6"
  }
  seat "good" {
    on     = "left"
    radius = 60
    angle  = 90
  }
  seat "again" {
    on     = "left" # ERROR "are on one end"
    radius = 60
  }
  seat "nowhere" {
    on     = "middle" # ERROR "A seat cannot be on 'middle'"
    radius = 60
  }
  seat "nothing" { # ERROR "does not say its radius once"
    on = "right"
  }
  seat "twice" { # ERROR "does not say its radius once"
    on     = "right"
    radius = 40
    chord  = 30
    rise   = 4
  }
  seat "half" { # ERROR "lacks chord or rise"
    on    = "right"
    chord = 30
  }
  seat "swapped" {
    on    = "right"
    chord = 4
    rise  = 30 # ERROR "The rise is more than half of the chord"
  }
  seat "narrow" { # ERROR "is narrower than the part"
    on     = "right"
    radius = 12
  }
  seat "wide" {
    on     = "right"
    radius = 20
    across = 27 # ERROR "is wider than its end"
  }
  seat "left" {
    on       = "right"
    radius   = 20
    leftover = 0.05 # ERROR "leftover is what the steps leave"
  }
}

part "deep_seat" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 60
  }
  flange "rim" {
    diameter = 50
    length   = 8
  }
  spigot "hub" {
    diameter = 26
  }
  seat "deep" { # ERROR "is deeper than its flange"
    on     = "left"
    radius = 30
  }
}

part "across" {
  material = "brass"
  length   = 60
  stock "bar" {
    diameter = 30
  }
  spigot "stem" {
    diameter = 12
    length   = 30
  }
  spigot "head" {
    diameter = 24
  }
  bore "way" {
    diameter = 6
    depth    = 20
  }
  cross_hole "off" {
    on       = "stem"
    at       = 29 # ERROR "does not lie on spigot 'stem'"
    diameter = 3
  }
  cross_hole "wide" { # ERROR "is as wide as spigot 'stem'"
    on       = "stem"
    at       = 15
    diameter = 12
  }
  cross_hole "ends" { # ERROR "does not say once where it ends"
    on       = "stem"
    at       = 10
    diameter = 3
    through  = true
    into     = "way"
  }
  cross_hole "no_bore" {
    on       = "stem"
    at       = 10
    diameter = 3
    into     = "wey" # ERROR "Did you mean 'way'?"
  }
  cross_hole "beside" {
    on       = "stem"
    at       = 25
    diameter = 3
    into     = "way" # ERROR "does not lie under"
  }
  cross_hole "reaches" { # ERROR "reaches the bore"
    on       = "stem"
    at       = 10
    diameter = 3
    depth    = 2.5
  }
  cross_hole "too_deep" { # ERROR "goes right through"
    on       = "stem"
    at       = 26
    diameter = 2
    depth    = 13
  }
  cross_hole "no_thread_depth" { # ERROR "how deep its thread is full"
    on     = "head"
    at     = 10
    thread = "M4"
    depth  = 8
  }
  cross_hole "long_thread" {
    on          = "stem"
    at          = 15
    thread      = "M3"
    into        = "way"
    full_thread = 5 # ERROR "deeper than the metal"
  }
  cross_hole "near" {
    on       = "head"
    at       = 2.5 # WARNING "really so near to the end"
    from     = "right"
    diameter = 4
  }
  flat "once" { # ERROR "does not say once how deep it is"
    on = "head"
  }
  flat "odd" {
    on           = "head"
    across_flats = 20 # ERROR "An odd count has no opposite flats"
    count        = 3
  }
  flat "air" { # ERROR "cuts nothing"
    on       = "head"
    distance = 12
  }
  flat "bore" { # ERROR "breaks into the bore"
    on       = "stem"
    distance = 2
  }
  flat "no_length" { # ERROR "lacks length"
    on    = "stem"
    depth = 1
    at    = 5
  }
  flat "flat_off" { # ERROR "is not on spigot 'stem'"
    on     = "stem"
    depth  = 1
    at     = 25
    length = 10
  }
  slot "flat_words" {
    on     = "stem"
    width  = 3
    length = 10
    depth  = 1
    ends   = [[1, 2], [3, 4]] # ERROR "ends belongs to a slot of a flat part"
  }
  slot "short" {
    on     = "stem"
    width  = 4
    length = 3 # ERROR "is shorter than it is wide"
    depth  = 1
  }
  slot "slot_wide" {
    on     = "stem"
    width  = 12 # ERROR "is wider than the part"
    length = 20
    depth  = 1
  }
  slot "wall" {
    on     = "stem"
    width  = 3
    length = 10
    depth  = 3 # ERROR "breaks through the wall"
  }
  slot "half_told" { # ERROR "lacks depth"
    on     = "stem"
    width  = 3
    length = 10
  }
}

part "slots" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "rectangle" {
    width  = 60
    height = 30
  }
  holes "h" {
    at       = [[10, 10]]
    diameter = 4
  }
  slot "no_ends" { # ERROR "lacks its two ends"
    width = 4
    depth = 1
  }
  slot "point" {
    width   = 4
    ends    = [[30, 15], [30, 15]] # ERROR "both ends in one place"
    through = true
  }
  slot "no_depth" { # ERROR "does not say once how deep it is"
    width = 4
    ends  = [[30, 15], [40, 15]]
  }
  slot "deep" {
    width = 4
    ends  = [[30, 15], [40, 15]]
    depth = 4 # ERROR "is deeper than the part"
  }
  slot "out" { # ERROR "runs out of the outline"
    width   = 4
    ends    = [[50, 15], [59, 15]]
    through = true
  }
  slot "meets_hole" { # ERROR "Hole 1 of holes 'h' and slot 'meets_hole' meet"
    width   = 4
    ends    = [[13, 10], [20, 10]]
    through = true
  }
  slot "good" {
    width   = 4
    ends    = [[30, 10], [40, 10]]
    through = true
  }
  slot "meets_slot" { # ERROR "Slot 'good' and slot 'meets_slot' meet"
    width   = 4
    ends    = [[35, 5], [35, 20]]
    through = true
  }
  slot "turned_words" {
    width   = 4
    ends    = [[30, 20], [40, 20]]
    through = true
    angle   = 30 # ERROR "angle belongs to a slot of a turned part"
  }
  seat "s" {
    on     = "left" # ERROR "A seat cannot be on 'left'. Write on = 'back' or on = 'front'"
    radius = 20
  }
}

part "crossed" {
  material = "brass"
  length   = 60
  stock "bar" {
    diameter = 30
  }
  spigot "stem" {
    diameter = 20
    length   = 40
  }
  taper "cone" {
    large    = 20
    small    = 12
    large_at = "left"
  }
  cross_hole "one" {
    on       = "stem"
    at       = 15
    diameter = 4
    angle    = -90
  }
  cross_hole "two" { # ERROR "Cross_hole 'one' and cross_hole 'two' meet"
    on       = "stem"
    at       = 18
    diameter = 4
    angle    = 90
    depth    = 5
  }
  cross_hole "square" {
    on       = "stem"
    at       = 15
    diameter = 4
  }
  seat "nose" {
    on     = "right" # ERROR "The right end is no cylinder"
    radius = 30
  }
}

part "leaning" {
  material = "brass"
  length   = 30
  stock "bar" {
    diameter = 60
  }
  flange "rim" {
    diameter = 50
    length   = 14
  }
  spigot "hub" {
    diameter = 20
  }
  holes "sunk" { # ERROR "is square to a seat and has a widened mouth"
    circle    = 34
    count     = 1
    diameter  = 3
    from      = "left"
    direction = "normal"
    countersink {
      diameter = 6
    }
  }
  holes "blind" {
    circle    = 34
    count     = 1
    diameter  = 3
    depth     = 3 # ERROR "is square to a seat and blind"
    from      = "left"
    direction = "normal"
  }
  holes "dowels" {
    circle    = 34
    count     = 1
    dowel     = "4 H7" # ERROR "is square to a seat and reamed for dowels"
    direction = "normal"
  }
  holes "marked" {
    circle    = 34
    count     = 1
    diameter  = 3
    locate_by = "punch_mark" # ERROR "is square to a seat and not found by dials"
    direction = "normal"
  }
  holes "divided" {
    circle    = 34
    count     = 1
    diameter  = 3
    locate_by = "dividing_head" # ERROR "is square to a seat and not found by dials"
    direction = "normal"
  }
  holes "wrong_end" {
    circle    = 34
    count     = 1
    diameter  = 3
    from      = "right"
    direction = "normal" # ERROR "has no seat to be square to on its right"
  }
  holes "out" { # ERROR "Hole 1 of holes 'out' runs out through the rim"
    at        = [[0, 22]]
    diameter  = 3
    direction = "normal"
  }
  seat "pipe" {
    on     = "left"
    radius = 40
  }
}

part "steep" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 60
  }
  flange "rim" {
    diameter = 50
    length   = 40
  }
  holes "which" {
    at        = [[0, 0]]
    diameter  = 3
    direction = "normal" # ERROR "does not say which seat it is square to"
  }
  holes "far" { # WARNING "really so near to the rim"
    at        = [[0, 23]]
    diameter  = 3
    from      = "left"
    direction = "normal" # ERROR "Hole 1 of holes 'far' leans too far"
  }
  seat "pipe" {
    on     = "left"
    radius = 26
  }
  seat "other" {
    on     = "right"
    radius = 60
  }
}
