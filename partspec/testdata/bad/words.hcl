# Words that the language does not know, and things in wrong places.
flavour = "plain" # ERROR "flavour stands outside every block"

parts "x" {} # ERROR "There is no block parts. Did you mean 'part'?"

joint "braze" {} # ERROR "joint is not known to this version"

part "a" {
  material = "brass"
  length   = 20
  colour   = "red" # ERROR "part 'a' has no colour"
  lenght   = 20    # ERROR "Did you mean 'length'?"
  stock    = 25    # ERROR "It is a block: write stock { ... } without"

  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
    diamter  = 20 # ERROR:5 "Did you mean 'diameter'?"
    surface { # ERROR "spigot 'body' takes no block surface"
    }
  }
  keyway "k" { # ERROR "keyway is not known to this version"
  }
  axis "crank" { # ERROR "lacks offset"
  }
  hole "h" { # ERROR "Did you mean 'holes'?"
  }
  boss "b" { # ERROR "Here it is called spigot"
  }
  holes "ring" {
    pcd      = 20 # ERROR "Here it is called circle"
    dia      = 2  # ERROR "Here it is called diameter"
    through  = true
    csk {} # ERROR "Here it is called countersink"
  }
}

part { # ERROR "part lacks a name"
  material = "brass"
  length   = 5
  stock "bar" {
    diameter = 10
  }
  spigot "body" {
    diameter = 8
  }
}

part "two" "names" { # ERROR "part takes one name"
  material = "brass"
  length   = 5
  stock "bar" {
    diameter = 10
  }
  spigot "body" {
    diameter = 8
  }
}

part "9lives" { # ERROR "is not a name"
  material = "brass"
  length   = 5
  stock "bar" {
    diameter = 10
  }
  spigot "body" {
    diameter = 8
  }
}
