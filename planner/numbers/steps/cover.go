package steps

import (
	"cmp"
	"slices"
	"sort"
)

// stretch is a closed part of the curve, from a to b across.
type stretch struct{ a, b float64 }

// place is one admissible cut: the deepest at its reading across.
type place struct {
	across, depth int64
	x, y          float64 // reference point: middle of the width, height of the lowest point
}

// coverage holds, for every place, the stretches where the place alone leaves no more than the leftover.
type coverage struct {
	leftover float64
	lo, hi   float64 // the part of the curve that must be covered
	places   []place
	parts    [][]stretch // by place; apart and in order
	reach    float64     // half the cutter's width: no place covers farther than this from its x

	past map[float64]float64 // what pastAll has answered: a search asks it of few points, again and again
}

// cutAt appends to edge the lower edge of the cutter at a place, as graphs: left corner, flat, right corner.
func (f *feeler) cutAt(edge []graph, x, y float64) []graph {
	left, right := x-f.flat, x+f.flat
	switch {
	case f.nose == 0:
		return append(edge, graph{lo: left, hi: right, kind: straight, x: x, y: y})
	case f.flat == 0:
		return append(edge, graph{lo: x - f.nose, hi: x + f.nose, kind: lower, x: x, y: y + f.nose, radius: f.nose})
	}
	return append(edge,
		graph{lo: left - f.nose, hi: left, kind: lower, x: left, y: y + f.nose, radius: f.nose},
		graph{lo: left, hi: right, kind: straight, x: x, y: y},
		graph{lo: right, hi: right + f.nose, kind: lower, x: right, y: y + f.nose, radius: f.nose})
}

// cover works out the coverage of all places for a leftover: where the cutter's edge lies under the surface grown by it.
func (f *feeler) cover(places []place, leftover float64) coverage {
	c := coverage{leftover: leftover, places: places, reach: f.flat + f.nose, past: map[float64]float64{}}
	c.lo, c.hi = f.surface.within(leftover)
	lo, hi := f.surface.between(leftover)
	limit := f.surface.lifted(leftover)
	c.parts = make([][]stretch, len(places))
	var edges []graph
	var found, store []stretch
	for n, p := range places {
		found, edges = found[:0], f.cutAt(edges[:0], p.x, p.y)
		for _, edge := range edges {
			for _, g := range limit {
				if g.lo > edge.hi {
					break // sorted by lo
				}
				found = under(found, edge, g, lo, hi)
			}
		}
		store = joined(store[len(store):], found)
		c.parts[n] = store[:len(store):len(store)]
	}
	return c
}

// toEnds is the coverage asked for up to the very ends of the curve.
func (c coverage) toEnds(s surface) coverage {
	c.lo, c.hi = s.between(c.leftover)
	return c
}

// under appends the stretches between lo and hi where edge is not above g. Between crossings one test in the middle decides.
func under(out []stretch, edge, g graph, lo, hi float64) []stretch {
	lo, hi = max(lo, max(edge.lo, g.lo)), min(hi, min(edge.hi, g.hi))
	if lo > hi {
		return out
	}
	cuts, n := crossings(edge, g)
	if n == 2 && cuts[0] > cuts[1] {
		cuts[0], cuts[1] = cuts[1], cuts[0]
	}
	from := lo
	for i := 0; i <= n; i++ {
		to := hi
		if i < n {
			to = min(max(cuts[i], from), hi)
		}
		if mid := (from + to) / 2; (to > from || lo == hi) && edge.at(mid) <= g.at(mid) {
			out = append(out, stretch{from, to})
		}
		from = to
	}
	return out
}

// joined appends to out the union of found as stretches in order, at least tieMM apart.
func joined(out, found []stretch) []stretch {
	slices.SortFunc(found, func(s, t stretch) int { return cmp.Compare(s.a, t.a) })
	first := len(out)
	for _, s := range found {
		if n := len(out); n > first && s.a <= out[n-1].b+tieMM {
			out[n-1].b = max(out[n-1].b, s.b)
		} else {
			out = append(out, s)
		}
	}
	return out
}

// near returns the range of places that can cover x.
func (c coverage) near(x float64) (from, to int) {
	from = sort.Search(len(c.places), func(i int) bool { return c.places[i].x >= x-c.reach-tieMM })
	to = sort.Search(len(c.places), func(i int) bool { return c.places[i].x > x+c.reach+tieMM })
	return from, to
}

// covered reports whether picked places, in order, cover all.
func (c coverage) covered(picked []int) bool {
	front := c.lo
	for _, i := range picked {
		front = c.partOver(i, front)
	}
	return front >= c.hi-tieMM
}

// partOver is the right end of the stretch of place i that covers x.
func (c coverage) partOver(i int, x float64) float64 {
	for _, s := range c.parts[i] {
		if s.a <= x+tieMM && s.b >= x {
			x = s.b
		}
	}
	return x
}
