package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
)

// mostPitchError is the most a thread's pitch may be off over its engaged length, mm. Common practice, no source: a quarter of the play of an
// ordinary medium fit.
const mostPitchError = 0.03

// gears finds change wheels: driver/driven, simple first, then compound, with the least error over the thread's length.
func (c *Context) gears(f *partspec.Thread) (string, bool) {
	want := float64(f.Thread.Pitch) / float64(c.Lathe.LeadscrewPitch)
	if len(c.Lathe.ChangeWheels) == 0 {
		return fmt.Sprintf("Set the gearbox to a pitch of %.4g mm.", float64(f.Thread.Pitch)), true
	}
	best, text := math.Inf(1), ""
	try := func(ratio float64, words string) {
		off := math.Abs(ratio/want-1) * float64(f.Length.Value)
		if off < best-gearNoise {
			best, text = off, words
		}
	}
	w := c.Lathe.ChangeWheels
	for i, a := range w {
		for j, b := range w {
			if i != j {
				try(float64(a)/float64(b), fmt.Sprintf("%d drives %d", a, b))
			}
		}
	}
	if best > gearNoise {
		compound(w, try)
	}
	if best > mostPitchError {
		return "", false
	}
	if best <= gearNoise {
		return "Change wheels: " + text + "; the pitch is exact.", true
	}
	return fmt.Sprintf("Change wheels: %s; the pitch is off by %.4f mm over the length of the thread.", text, best), true
}

// gearNoise is an error of pitch that counts as none: far under what a leadscrew is true to.
const gearNoise = 1e-9

func compound(w []int, try func(float64, string)) {
	for i, a := range w {
		for j, b := range w {
			for k, x := range w {
				for l, y := range w {
					if i == j || i == k || i == l || j == k || j == l || k == l || i > k || j > l {
						continue
					}
					try(float64(a*x)/float64(b*y), fmt.Sprintf("%d drives %d, with it %d drives %d", a, b, x, y))
				}
			}
		}
	}
}
