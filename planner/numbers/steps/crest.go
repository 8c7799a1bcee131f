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
	start = f.leftAtEnd(point{s.lo, s.first.at(s.lo)}, left, left.x > 0, cuts, limit)
	worst = start
	for n := range cuts {
		var crest float64
		if n+1 < len(cuts) {
			crest = f.leftBetween(cuts[n], cuts[n+1])
		} else {
			crest = f.leftAtEnd(point{s.hi, s.last.at(s.hi)}, right, right.x < 0, cuts, limit)
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

// leftAtEnd is the leftover at an end p of the curve: along the normal n where that leans over the curve, else that of the metal
// straight above p. It is no more than limit.
func (f *feeler) leftAtEnd(p, n point, leansIn bool, cuts []place, limit float64) float64 {
	if !leansIn {
		return f.surface.distance(point{p.x, max(p.y, f.left(p.x, cuts))})
	}
	lo, hi := 0.0, limit
	for hi-lo > tieMM/16 {
		if mid := (lo + hi) / 2; f.left(p.x+mid*n.x, cuts) <= p.y+mid*n.y {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// left is the height of the metal that the cuts leave at x.
func (f *feeler) left(x float64, cuts []place) float64 {
	y := math.Inf(1)
	for _, c := range cuts {
		y = min(y, f.edgeAt(c, x))
	}
	return y
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
