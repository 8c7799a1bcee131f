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
	start = f.leftAtEnd(-1, cuts, limit)
	worst = start
	for n := range cuts {
		var crest float64
		if n+1 < len(cuts) {
			crest = f.leftBetween(cuts[n], cuts[n+1])
		} else {
			crest = f.leftAtEnd(1, cuts, limit)
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

// leftAtEnd is the leftover at the left (side -1) or right (side 1) end of the curve, no more than limit: in the corner of a wall, up
// to the first cut; along the normal where that leans over the curve; else that of the metal straight above the end.
func (f *feeler) leftAtEnd(side int, cuts []place, limit float64) float64 {
	s := f.surface
	n, right := s.endNormals()
	p, beyond := point{s.lo, s.first.at(s.lo)}, s.left
	if side > 0 {
		n, p, beyond = right, point{s.hi, s.last.at(s.hi)}, s.right
	}
	switch {
	case beyond == Wall:
		return least(limit, func(h float64) bool {
			c := f.cover(cuts, h)
			if side < 0 {
				return c.gapless(c.lo, min(cuts[0].x, c.hi))
			}
			return c.gapless(max(cuts[len(cuts)-1].x, c.lo), c.hi)
		})
	case n.x*float64(side) < 0:
		return least(limit, func(h float64) bool { return f.left(p.x+h*n.x, cuts) <= p.y+h*n.y })
	}
	return s.distance(point{p.x, max(p.y, f.left(p.x, cuts))})
}

// least bisects for the least leftover up to limit that a test passes; the test must pass everything over one that it passes.
func least(limit float64, passes func(leftover float64) bool) float64 {
	lo, hi := 0.0, limit
	for hi-lo > tieMM/16 {
		if mid := (lo + hi) / 2; passes(mid) {
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
	return least(limit, func(h float64) bool { return h > crest && f.keeps(cuts, h) })
}

// keeps reports whether the cuts leave no more than leftover anywhere.
func (f *feeler) keeps(cuts []place, leftover float64) bool {
	c := f.cover(cuts, leftover)
	return c.gapless(c.lo, c.hi)
}

// gapless reports whether all the places together cover the curve from lo to hi.
func (c coverage) gapless(lo, hi float64) bool {
	for front := lo; front < hi-tieMM; {
		far := front
		from, to := c.near(front)
		for i := from; i < to; i++ {
			far = max(far, c.partOver(i, front))
		}
		if far <= front+tieMM {
			return false
		}
		front = far
	}
	return true
}
