package solid

import "math"

// Loss is what a body has lost to a cut.
type Loss struct {
	Z0, Z1  float64 // the stretch over which it changed; both 0 when it did not
	Outside float64 // most that came off the outer radius where metal is left
	Inside  float64 // most that came off the inner radius where metal is left
	Whole   float64 // thickest wall that went altogether
}

// Lost compares a body with what is left of it. Changes up to tolMM in radius do not count.
func Lost(before, after Body, tolMM float64) Loss {
	var l Loss
	eachStretch(stops(before.Outer, before.Inner, after.Outer, after.Inner), func(z0, z1 float64) {
		mid := (z0 + z1) / 2
		out, metal := before.Outer.pieceOver(mid)
		if !metal {
			return
		}
		in, _ := before.Inner.pieceOver(mid)
		left, still := after.Outer.pieceOver(mid)
		if !still {
			_, wall := greatestGap(out, in, z0, z1)
			l.Whole = math.Max(l.Whole, wall)
			l.over(z0, z1)
			return
		}
		bore, _ := after.Inner.pieceOver(mid)
		_, off := greatestGap(out, left, z0, z1)
		_, bored := greatestGap(bore, in, z0, z1)
		if off > tolMM || bored > tolMM {
			l.Outside, l.Inside = math.Max(l.Outside, off), math.Max(l.Inside, bored)
			l.over(z0, z1)
		}
	})
	return l
}

// Any reports whether anything was lost.
func (l Loss) Any() bool { return l.Z1 > l.Z0 }

// over widens the stretch.
func (l *Loss) over(z0, z1 float64) {
	if !l.Any() {
		l.Z0, l.Z1 = z0, z1
		return
	}
	l.Z0, l.Z1 = math.Min(l.Z0, z0), math.Max(l.Z1, z1)
}
