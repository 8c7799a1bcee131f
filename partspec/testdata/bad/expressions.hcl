# Expressions: names, circles, and what arithmetic may not do.
part "a" {
  material = "brass"
  length   = part.b.length + 1 # ERROR "These sizes need one another. part.a.length"
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = 20
  }
}

part "b" {
  material = "brass"
  length   = part.a.spigot.body.diameter * 0 + part.a.length
  stock "bar" {
    diameter = 25
  }
  spigot "body" {
    diameter = part.b.spigot.body.diameter # ERROR "needs itself"
  }
}

part "c" {
  material = "brass"
  length   = 40
  stock "bar" {
    diameter = 60
  }
  spigot "s1" {
    diameter = wall * 2 # ERROR "Unknown name wall"
    length   = 1
  }
  spigot "s2" {
    diameter = part.nobody.length # ERROR "There is no part 'nobody'"
    length   = 1
  }
  spigot "s3" {
    diameter = part.c.spigto.s3.diameter # ERROR "Did you mean 'spigot.s3'?"
    length   = 1
  }
  spigot "s4" {
    diameter = part.c.spigot.s5.depth # ERROR "does not say its depth"
    length   = 1
  }
  spigot "s5" {
    diameter = part["c"].length # ERROR "A name takes no index"
    length   = 1
  }
  spigot "s6" {
    diameter = "7" * 2 # ERROR "Text cannot be reckoned with"
    length   = 1
  }
  spigot "s7" {
    diameter = 20 % 3 # ERROR "The sign % is not part of the language"
    length   = 1
  }
  spigot "s8" {
    diameter = power(2, 3) # ERROR "There is no function power"
    length   = 1
  }
  spigot "s9" {
    diameter = sqrt(-1) # ERROR "Cannot work this out"
    length   = 1
  }
  spigot "s10" {
    diameter = { a = 1 } # ERROR "This is not part of the language"
    length   = 1
  }
  spigot "s11" {
    diameter = true ? 20 : 10 + inc # ERROR "Did you mean 'inch'?"
    length   = 1
  }
  spigot "s12" {
    diameter = 1 / 0 - 1 / 0 # ERROR "Cannot work this out"
    length   = 1
  }
  spigot "s13" {
    diameter = part.c.material # ERROR "is not a figure"
    length   = 1
  }
  spigot "s14" {
    diameter = max() # ERROR "Cannot work this out"
    length   = 1
  }
  spigot "rests_on_a_failed_one" {
    diameter = part.c.spigot.s1.diameter
    length   = 1
  }
}
