package steps

import (
	"iter"
	"math"
)

// fewest picks the fewest places whose stretches cover the whole, and says whether that number is proved least.
// With picked nil, stuckAt is a point that no place covers.
func (c coverage) fewest() (picked []int, proven bool, stuckAt float64) {
	picked, stuckAt = c.greedy()
	if picked == nil {
		return nil, false, stuckAt
	}
	bound := 0
	for range c.witnesses([]stretch{{c.lo, c.hi}}) {
		bound++
	}
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

// witnesses yields points of rest, no two of which any one place covers, so that no table that covers rest is shorter than
// their number: each is just past everything that the places over the one before it cover.
func (c coverage) witnesses(rest []stretch) iter.Seq[float64] {
	return func(yield func(float64) bool) {
		next := math.Inf(-1)
		for _, s := range rest {
			for x := max(s.a, next); x <= s.b-tieMM; x = next {
				if !yield(x) {
					return
				}
				next = c.pastAll(x)
			}
		}
	}
}

// pastAll is just past everything that the places over x cover.
func (c coverage) pastAll(x float64) float64 {
	if past, ok := c.past[x]; ok {
		return past
	}
	past := x
	from, to := c.near(x)
	for i := from; i < to; i++ {
		if c.covers(i, x) {
			past = max(past, c.parts[i][len(c.parts[i])-1].b)
		}
	}
	past += 2 * tieMM
	c.past[x] = past
	return past
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
