part "a" {
  length = 3 mm # ERROR:14 "Write 3 * mm"
}
