# Each value is judged by itself, whatever else is wrong with its block or its
# part, and nothing is told that only follows from it.
part "no_length" { # ERROR "lacks length"
  material = "brss" # ERROR "Did you mean 'brass'?"
  general  = "x"    # ERROR "There is no general class"

  stock "bar" {
    diameter = "25 H7" # ERROR "H7 is the class of a hole"
  }
  spigot "body" {
    diameter = "18 h77" # ERROR "no such class"
  }
  spigot "stem" {
    diameter = 10
    from     = "boddy.left" # ERROR "Did you mean 'body'?"
  }
  bore "hole" {
    diameter = "8 h7" # ERROR "h7 is the class of a shaft"
    from     = "top"  # ERROR "cannot begin from 'top'"
  }
  thread "outer" {
    on   = "bod"    # ERROR "Did you mean 'body'?"
    size = "M99x77" # ERROR "No table has the thread"
    hand = "wrong"  # ERROR "A thread's hand cannot be"
    from = "up"     # ERROR "cannot begin from 'up'"
  }
  groove "ring" {
    on    = "bod" # ERROR "Did you mean 'body'?"
    at    = 1
    width = "2 H99" # ERROR "no such class"
    depth = 1
    from  = "xx" # ERROR "names no face"
  }
  recess "room" {
    on       = "hole"
    at       = 1
    width    = 2
    diameter = "20 h7" # ERROR "h7 is the class of a shaft"
  }
  knurl "grip" {
    on      = "bod"    # ERROR "Did you mean 'body'?"
    pitch   = 5        # ERROR "too coarse"
    pattern = "zigzag" # ERROR "There is no knurl"
  }
  chamfer "lead" {
    edge  = "bod.left" # ERROR "Did you mean 'body'?"
    size  = "1 H99"    # ERROR "no such class"
    angle = 90         # ERROR "A chamfer has no such angle"
  }
  fillet "root" {
    edge   = "body"  # ERROR "names no face"
    radius = "1 H99" # ERROR "no such class"
  }
  taper "cone" {
    large    = "20 h77" # ERROR "no such class"
    large_at = "top"    # ERROR "cannot be large at"
    ratio    = "1to20"  # ERROR "is no ratio"
  }
  taper "open" {
    inside   = "yes" # ERROR "it is of the wrong kind"
    large    = "20 h7"
    large_at = null # ERROR "it has no value"
    named    = -1   # ERROR "it is of the wrong kind"
  }
  profile "knob" {
    finish_by = "axe"  # ERROR "cannot be finished by"
    zone      = [1, 2] # ERROR "zone is not a range"
    start {
      diameter = -3 # ERROR "it is not above 0"
    }
    arc {
      length   = 3
      diameter = 3
      radius   = 10
      bulge    = "up" # ERROR "does not say which way it bulges"
    }
  }
  concentric {
    of     = "bod" # ERROR "Did you mean 'body'?"
    to     = "hole"
    within = 0.03
  }
  square {
    of     = "face"    # ERROR "names no surface"
    to     = "body.up" # ERROR "names no surface"
    within = -0.02     # ERROR "it is not above 0"
  }
}

# The part is sound, one block is not.
part "one_block" {
  material = "brass"
  length   = 20

  stock "existing" { # ERROR "lacks length"
    spigot "outside" {
      diameter = "30 H7" # ERROR "H7 is the class of a hole"
    }
  }
  spigot "body" {
    diameter = 20
  }
  bore "hole" {
    diameter = 8
  }
  thread "misspelt" {
    on   = "bod"    # ERROR "Did you mean 'body'?"
    size = "M99x77" # ERROR "No table has the thread"
  }
  knurl "grip" {
    on      = "hole"   # ERROR "A knurl cannot be on bore 'hole'"
    pattern = "zigzag" # ERROR "There is no knurl"
    pitch   = 5        # ERROR "too coarse"
  }
  recess "nowhere" {
    on       = "holl" # ERROR "Did you mean 'hole'?"
    at       = 3
    width    = 1
    diameter = "10 h7" # ERROR "h7 is the class of a shaft"
  }
}

fit "half" { # ERROR "lacks shaft"
  hole  = "one_block.holl" # ERROR "Did you mean 'hole'?"
  class = "H7"             # ERROR "There is no such fit"
}

# What stands twice is not in the job, but its values are read.
part "twice" {
  material = "brass"
  length   = 20

  stock "bar" {
    diameter = 25
  }
  stock "tube" { # ERROR "has a second stock"
    outside = 25
    inside  = -3 # ERROR "it is not above 0"
  }
  spigot "body" {
    diameter = 20
  }
  spigot "body" { # ERROR "A second feature 'body'"
    diameter = -1 # ERROR "it is not above 0"
  }
  bore "face" {   # ERROR "No feature can be called face"
    diameter = -1 # ERROR "it is not above 0"
  }
}

part "twice" { # ERROR "A second part 'twice'"
  material = "brass"
  length   = "20 cm" # ERROR "it cannot be read"

  stock "bar" {
    diameter = -1 # ERROR "it is not above 0"
  }
}

fit "half" { # ERROR "A second fit 'half'"
  hole  = -1 # ERROR "it is of the wrong kind"
  shaft = "twice.body"
  class = "H7/g6"
}

workshop "values" {
  machine "lathe" {
    swing         = -1    # ERROR "it is not above 0"
    change_wheels = [1.5] # ERROR "a whole number of teeth"
    speeds        = [100]

    dial "saddle" {
      graduation = -1 # ERROR "it is not above 0"
    }
  }
  holding "three_jaw" {
    capacity   = [3]     # ERROR "capacity is not a range"
    jaws       = 2.5     # ERROR "it is not a count"
    grip_force = [10, 1] # ERROR "grip_force is not a range"
  }
  tool "turning" {
    hand        = "right"
    nose_radius = -1      # ERROR "it is not above 0"
    material    = "flint" # ERROR "A tool cannot be of 'flint'"
  }
  measuring "micrometer" {
    range      = [25, 0] # ERROR "range is not a range"
    resolution = -1      # ERROR "it is not above 0"
  }
}
