part "a" {
  length = {
    for k, v in { a = 1 } : k => v # ERROR "Loops are not part" ERROR "is not part of the language"
  }
  material = 1e999 # ERROR "The number is too long"
}
