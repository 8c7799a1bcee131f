# A name looked up where nothing of its kind is written.
part "bare" { # ERROR "part 'bare' has no outside"
  material = "brass"
  length   = 10
  stock "bar" {
    diameter = 20
  }
}

part "nut" {
  material = "brass"
  length   = part.bare.spigot.outside.diameter # ERROR "part 'bare' has no spigot 'outside'"
  stock "bar" {
    diameter = 20
  }
  spigot "body" {
    diameter = 18
  }
}
