package steps

// fewest picks the fewest places whose stretches cover the whole, and says whether that number is proved least.
// With picked nil, stuckAt is a point that no place covers.
func (c coverage) fewest() (picked []int, proven bool, stuckAt float64) {
	picked, stuckAt = c.greedy()
	if picked == nil {
		return nil, false, stuckAt
	}
	bound := len(c.witnesses([]stretch{{c.lo, c.hi}}))
	if bound == len(picked) {
		return picked, true, 0
	}
	picked, proven = c.search(bound, picked)
	return picked, proven, 0
}

// greedy goes from left to right, each time taking the place that covers on from the front farthest; of equals the first.
func (c coverage) greedy() (picked []int, stuckAt float64) {
	front := c.lo
	for {
		best, reach := -1, front
		from, to := c.near(front)
		for i := from; i < to; i++ {
			for _, s := range c.parts[i] {
				if s.a <= front+tieMM && s.b > reach+tieMM {
					best, reach = i, s.b
				}
			}
		}
		if best < 0 {
			return nil, front
		}
		picked, front = append(picked, best), reach
		if front >= c.hi-tieMM {
			return picked, 0
		}
	}
}

// witnesses returns points of rest, no two of which any one place covers, so that no table that covers rest is shorter than
// their number: each is just past everything that the places over the one before it cover.
func (c coverage) witnesses(rest []stretch) []float64 {
	var points []float64
	for _, s := range rest {
		x := s.a
		if len(points) > 0 {
			x = max(x, c.pastAll(points[len(points)-1]))
		}
		for ; x <= s.b-tieMM; x = c.pastAll(x) {
			points = append(points, x)
		}
	}
	return points
}

// pastAll is just past everything that the places over x cover.
func (c coverage) pastAll(x float64) float64 {
	past := x
	from, to := c.near(x)
	for i := from; i < to; i++ {
		if c.covers(i, x) {
			past = max(past, c.parts[i][len(c.parts[i])-1].b)
		}
	}
	return past + 2*tieMM
}

// covers reports whether place i covers x, a tie included.
func (c coverage) covers(i int, x float64) bool {
	for _, s := range c.parts[i] {
		if s.a-tieMM <= x && x <= s.b+tieMM {
			return true
		}
	}
	return false
}
