# A blank arbor with a Morse taper no. 2 shank without a tang, tapped for a
# draw-bar. The shank's dimensions are those of ISO 296 (self-holding tapers for
# tool shanks), from memory of the standard: taper 1:20.020, gauge diameter
# 17.780, the gauge line 5 from the large end, 64 from the gauge line to the small
# end, thread M10, 24 deep. The nose is left as supplied, to be turned in place in
# the spindle that it is made for.
part "morse_arbor" {
  material = "free-cutting steel"
  general  = "f"
  length   = 69 + 21

  stock "bar" {
    diameter = 20
    length   = 92 # sawn: too long to be worked out of the bar
  }

  taper "shank" {
    named     = "MT2"
    large     = 17.780 + 5 / 20.020 # the gauge line lies 5 inside the large end
    length    = 5 + 64
    large_at  = "right"
    roughness = 0.8
  }
  spigot "nose" {
    as_supplied = true
  }

  bore "draw_bar_hole" {
    from  = "left"
    depth = 30
  }
  thread "draw_bar" {
    on     = "draw_bar_hole"
    size   = "M10"
    length = 24
  }

  chamfer "entry" {
    edge = "draw_bar_hole.left"
    size = 1
  }
  chamfer "small_end" {
    edge = "shank.left"
    size = 1
  }
}
