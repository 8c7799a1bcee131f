package steps

import "math/big"

// mirrored turns a table of the fewest cuts into one of as many cuts that is the same on both sides of the middle, where the
// curve is and the dial's zero allows it. With n cuts in the table, the first n/2 from the left reach at least as far as those of
// any table, their mirror images as far from the right, and if n is odd one cut closes the middle.
func (j *job) mirrored(c coverage, picked []int) ([]int, bool) {
	middle, ok := j.mirrorReading()
	if !ok {
		return nil, false
	}
	half := picked[:len(picked)/2]
	twin := append([]int(nil), half...)
	front := c.lo
	for _, i := range half {
		front = c.partOver(i, front)
	}
	if len(picked)%2 == 1 {
		closing := c.closing(front, c.lo+c.hi-front)
		if closing < 0 {
			return nil, false
		}
		twin = append(twin, closing)
	}
	for n := len(half) - 1; n >= 0; n-- {
		i, ok := j.placeAt(middle - j.places[half[n]].across)
		if !ok || j.places[i].depth != j.places[half[n]].depth || i <= twin[len(twin)-1] {
			return nil, false
		}
		twin = append(twin, i)
	}
	return twin, c.covered(twin)
}

// closing is the place nearest the middle that covers all from a to b, or -1.
func (c coverage) closing(a, b float64) int {
	best, off := -1, 0.0
	from, to := c.near((a + b) / 2)
	for i := from; i < to; i++ {
		for _, s := range c.parts[i] {
			d := c.places[i].x - (a+b)/2
			if s.a <= a+tieMM && s.b >= b-tieMM && (best < 0 || d*d < off*off) {
				best, off = i, d
			}
		}
	}
	return best
}

// mirrorReading returns the sum of two mirrored readings; ok is false where the curve or the dial's zero is not symmetrical.
func (j *job) mirrorReading() (sum int64, ok bool) {
	c := j.request.Curve
	if c.Left != c.Right {
		return 0, false
	}
	s := j.feeler.surface
	twice := add(decimal(s.lo), decimal(s.hi))
	mirror := func(x float64) *big.Rat { return sub(twice, decimal(x)) }
	same := func(a, b float64) bool { return mirror(a).Cmp(decimal(b)) == 0 }
	own := s.own()
	for n, g := range own {
		h := own[len(own)-1-n]
		if g.kind != h.kind || !same(g.lo, h.hi) || g.radius != h.radius {
			return 0, false
		}
		if g.kind == straight && (g.y != h.endY || g.endY != h.y) || g.kind != straight && (g.y != h.y || !same(g.x, h.x)) {
			return 0, false
		}
	}
	origin := j.feeler.across.origin
	reading := quo(sub(sub(twice, origin), origin), j.feeler.across.travel)
	return reading.Num().Int64(), reading.IsInt()
}

// placeAt finds the place at a reading across.
func (j *job) placeAt(across int64) (int, bool) {
	if len(j.places) == 0 {
		return 0, false
	}
	i := int(across - j.places[0].across)
	if i < 0 || i >= len(j.places) || j.places[i].across != across {
		return 0, false
	}
	return i, true
}
