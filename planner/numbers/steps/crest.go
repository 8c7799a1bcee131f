package steps

import "math"

// edgeAt is the height of the cutter's lower edge at x when it stands at p; +Inf past its sides.
func (f *feeler) edgeAt(p place, x float64) float64 {
	d := math.Abs(x-p.x) - f.flat
	switch {
	case d <= 0:
		return p.y
	case d > f.nose+tieMM:
		return math.Inf(1)
	}
	return p.y + f.nose - math.Sqrt(max(0, (f.nose-d)*(f.nose+d)))
}

// meet is where the edge left by a gives way to the edge left by b, a being to the left of b. The edges are one convex
// line at two places, so edge(a) - edge(b) never falls as x grows, and bisection finds its change of sign.
func (f *feeler) meet(a, b place) float64 {
	reach := f.flat + f.nose
	lo, hi := b.x-reach, a.x+reach
	if a.depth == b.depth || lo >= hi {
		return (a.x + b.x) / 2
	}
	for range 64 {
		mid := (lo + hi) / 2
		if f.edgeAt(a, mid) < f.edgeAt(b, mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// crests returns the leftover at the start of the curve, after each cut (the last: at the end of the curve), and the worst
// anywhere. Cuts are in order of across; limit is a leftover they are known to keep.
func (f *feeler) crests(cuts []place, limit float64) (start float64, after []float64, worst float64) {
	s := f.surface
	left, right := s.endNormals()
	start = f.leftAlong(point{s.lo, s.first.at(s.lo)}, left, cuts, limit)
	worst = start
	for n := range cuts {
		var crest float64
		if n+1 < len(cuts) {
			crest = f.leftBetween(cuts[n], cuts[n+1])
		} else {
			crest = f.leftAlong(point{s.hi, s.last.at(s.hi)}, right, cuts, limit)
		}
		after = append(after, crest)
		worst = max(worst, crest)
	}
	return start, after, f.worstFrom(worst, cuts, limit)
}

// leftBetween is the leftover at the crest between two cuts: where both edges end, the higher one stands.
func (f *feeler) leftBetween(a, b place) float64 {
	x := min(max(f.meet(a, b), f.surface.lo), f.surface.hi)
	y := math.Inf(-1)
	for _, p := range []place{a, b} {
		if h := f.edgeAt(p, x); !math.IsInf(h, 1) {
			y = max(y, h)
		}
	}
	return f.surface.distance(point{x, y})
}

// leftAlong is the metal that the cuts leave over p, measured along n; no more than limit.
func (f *feeler) leftAlong(p, n point, cuts []place, limit float64) float64 {
	lo, hi := 0.0, limit
	for hi-lo > tieMM/16 {
		mid := (lo + hi) / 2
		q := point{min(max(p.x+mid*n.x, f.surface.lo), f.surface.hi), p.y + mid*n.y}
		cleared := false
		for _, c := range cuts {
			cleared = cleared || f.edgeAt(c, q.x) <= q.y
		}
		if cleared {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// worstFrom returns the worst leftover, given the worst at the crests: usually the same, but under a flat or over a kink the
// most metal may stand between crests. Then it is bisected on the question whether the cuts cover the curve.
func (f *feeler) worstFrom(crest float64, cuts []place, limit float64) float64 {
	if crest+tieMM >= limit || f.keeps(cuts, crest+tieMM) {
		return crest
	}
	lo, hi := crest, limit
	for hi-lo > tieMM {
		if mid := (lo + hi) / 2; f.keeps(cuts, mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// keeps reports whether the cuts leave no more than leftover anywhere.
func (f *feeler) keeps(cuts []place, leftover float64) bool {
	c := f.cover(cuts, leftover)
	front := c.lo
	for {
		far := front
		from, to := c.near(front)
		for i := from; i < to; i++ {
			for _, s := range c.parts[i] {
				if s.a <= front+tieMM {
					far = max(far, s.b)
				}
			}
		}
		if far >= c.hi-tieMM {
			return true
		}
		if far <= front+tieMM {
			return false
		}
		front = far
	}
}
