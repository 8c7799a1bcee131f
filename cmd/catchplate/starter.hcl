# A flanged bush to start from. Change it into your part, and then
#
#   catchplate check starter.hcl              says what was understood, and all that is wrong
#   catchplate plan starter.hcl               shows the order of the work at a glance
#   catchplate sheet starter.hcl -o sheets    writes the operation sheets
#
# Bare numbers are millimetres and degrees. Write sizes as the drawing has them: 7/8 * inch, "7/8 in", "16 swg", "20 +0.02 -0",
# "20 H7". A size without limits gets those of ISO 2768-m.

part "starter" {
  material = "brass"
  length   = 22 # between the finished end faces

  stock "bar" {
    diameter = 30
  }

  # The outside, from the left end to the right end.
  flange "head" {
    diameter = 28
    length   = 4
  }
  spigot "body" {
    diameter = "18 h8"
    length   = 18
  }

  # The inside; a bore without a depth goes through.
  bore "main" {
    diameter = "10 H7"
  }

  chamfer "lead" {
    edge = "body.right"
    size = 0.5
  }

  # What must be true to what.
  concentric {
    of     = "body"
    to     = "main"
    within = 0.03
  }
}

# No workshop is given here: the built-in one serves, a small lathe with ordinary kit. Give your own in a workshop block, in this file or
# in another one that you name beside it.
