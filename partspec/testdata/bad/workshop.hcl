# Workshops that cannot be.
workshop "shed" {
  machine "lathe" { # ERROR "has no speeds"
    swing = 100
    dial "cross" { # ERROR "dial lacks reads"
      graduation = 0.02
      per_turn   = 1
    }
    dial "top" {
      graduation = 0.03 # ERROR "A turn is not a whole number of graduations"
      per_turn   = 1
    }
    dial "sideways" { # ERROR "A lathe has no dial"
      graduation = 0.02
      per_turn   = 1
    }
    dial "saddle" { # ERROR "lacks per_turn"
      graduation = 0.02
    }
    dial "tailstock" {
      graduation = 0.02
      per_turn   = 1
      reads      = "sizes" # ERROR "A dial cannot read"
      backlash   = -1      # ERROR "backlash is negative"
    }
  }
  machine "lahte" { # ERROR "Did you mean 'lathe'?"
  }
  machine "mill" {
    speeds        = [100, 200] # ERROR "Speeds are told twice"
    slowest_speed = 50
  }
  machine "drill" { # ERROR "The range of speeds has no end"
    slowest_speed = 50
  }
  machine "bench" {
    swing = 100 # ERROR "machine 'bench' has no swing"
  }
  machine "lathe" { # ERROR "Two of machine 'lathe' cannot be told apart"
    speeds = [100]
  }

  holding "three_jaw" {
    capacity   = [80, 2] # ERROR "capacity is not a range"
    jaws       = 9       # ERROR "A chuck has 2 to 6 jaws"
    grip_force = [1]     # ERROR "grip_force is not a range"
  }
  holding "collets" { # ERROR "holding 'collets' lacks sizes"
  }
  holding "vertical_slide" { # ERROR "lacks graduation"
    opening  = 40
    per_turn = 1
  }
  holding "vertical_slide" {
    name       = "second slide"
    opening    = 40
    graduation = 0.03 # ERROR "A turn is not a whole number of graduations"
    per_turn   = 1
    backlash   = -1 # ERROR "backlash is negative"
  }
  holding "dividing_head" { # ERROR "A crank counts holes of a plate"
    height = 60
    ratio  = 40
  }
  holding "dividing_head" {
    name   = "odd"
    height = 60
    direct = [24, 2.5] # ERROR "A circle has a whole number of holes"
  }
  holding "dividing_head" { # ERROR "lacks height"
    name   = "flat"
    direct = [24]
  }
  holding "tilting_plate" { # ERROR "lacks tilts_to"
    sine_length = 100
  }
  holding "tilting_plate" {
    name        = "steep"
    sine_length = 100
    tilts_to    = 85 # ERROR "No packing sets a plate over so far"
  }
  holding "dividing_head" { # ERROR "nothing to count by"
    name   = "bare"
    height = 60
  }
  holding "dividing_head" {
    name    = "standing"
    height  = 60
    direct  = [24]
    upright = "on end" # ERROR "upright"
  }
  tool "hole_saw" {
    sizes = [8, 25] # ERROR "No disc is left inside a hole saw of 8"
    pilot = 6
    kerf  = 1
  }
  tool "hole_saw" {
    name  = "odd saws"
    sizes = [25]
    teeth = 30 # ERROR "teeth"
  }
  holding "magnet" { # ERROR "There is no holding 'magnet'"
  }
  holding { # ERROR "holding lacks a kind"
  }

  tool "drills" { # ERROR "The drills have no sizes"
  }
  tool "drills" {
    name = "stepped"
    set  = "metric" # the ends are missing
    step = 0.5      # ERROR "needs both ends"
  }
  tool "drills" {
    name = "endless"
    set  = "metric"
    from = 1
    to   = 100
    step = 0.001 # ERROR "The set of drills is too long"
  }
  tool "drills" {
    name = "odd"
    set  = "roman" # ERROR "There is no set of drills"
  }
  tool "turning" {
    hand     = "both"    # ERROR "A tool's hand cannot be"
    material = "diamond" # ERROR "A tool cannot be of"
  }
  tool "boring" {
    bar_diameter = 10
    least_bore   = 9 # ERROR "The boring bar is thicker"
    reach        = 30
  }
  tool "taps" {
    threads = ["M6", "M6.5x9x"] # ERROR "No table has the thread"
  }
  tool "saw" {
    kerf  = 1
    teeth = 20 # ERROR "tool 'saw' has no teeth"
  }
  measuring "caliper" { # ERROR "lacks resolution"
    range = [0, 150]
  }
  cupboard "x" { # ERROR "workshop 'shed' takes no block cupboard"
  }
  rack "bars" { # ERROR "rack is not known to this version"
  }
}

workshop "second" { # ERROR "A second workshop"
}
