# What the guard in front of the parser refuses.
part "a" {
  material = "brass"
  length   = [for x in [1, 2] : x]   # ERROR "Loops are not part of the language"
  quantity = 1234567890123456789012345 # ERROR "The number is too long"
  note     = [1, 2][*]               # ERROR "Names with a star"
  general  = max([1, 2]...)          # ERROR "is not part of the language"
  drawn_in = "${inch}"               # ERROR "Expressions inside quotes"
}
