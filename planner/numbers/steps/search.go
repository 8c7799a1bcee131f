package steps

import "sort"

// search looks for a table shorter than known where a place covers more than one stretch, and the greedy answer may therefore
// be beaten: it asks for bound cuts, then one more, up to one less than known. proven is false when the budget ran out.
func (c coverage) search(bound int, known []int) (picked []int, proven bool) {
	s := searcher{coverage: c, nodes: mostNodes}
	for n := bound; n < len(known); n++ {
		if found := s.within([]stretch{{c.lo, c.hi}}, n); found != nil {
			sort.Ints(found)
			return found, true
		}
		if s.nodes == 0 {
			return known, false
		}
	}
	return known, true
}

// mostNodes bounds the search to about a tenth of a second.
const mostNodes = 20_000

type searcher struct {
	coverage
	nodes int
}

// within returns n places or fewer that cover rest, or nil. The leftmost point of rest needs some place: each is tried.
func (s *searcher) within(rest []stretch, n int) []int {
	if s.nodes == 0 || n == 0 || s.needsMore(rest, n) {
		return nil
	}
	s.nodes--
	for _, t := range s.tries(rest) {
		if len(t.rest) == 0 {
			return []int{t.place}
		}
		if more := s.within(t.rest, n-1); more != nil {
			return append(more, t.place)
		}
	}
	return nil
}

// needsMore reports whether no n places cover rest: there are more witnesses than that.
func (c coverage) needsMore(rest []stretch, n int) bool {
	count := 0
	for range c.witnesses(rest) {
		if count++; count > n {
			return true
		}
	}
	return false
}

// try is a place and what is left of rest after it.
type try struct {
	place int
	rest  []stretch
	size  float64
}

// tries lists the places over the leftmost point of rest, the one that leaves least first, without those that leave all that
// another leaves.
func (s *searcher) tries(rest []stretch) []try {
	x := rest[0].a
	var all []try
	from, to := s.near(x)
	for i := from; i < to; i++ {
		for _, p := range s.parts[i] {
			if p.a <= x+tieMM && p.b > x+tieMM {
				left := without(rest, s.parts[i])
				all = append(all, try{i, left, size(left)})
			}
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].size < all[j].size })
	var kept []try
	for _, t := range all {
		dominated := false
		for _, k := range kept {
			dominated = dominated || len(without(k.rest, t.rest)) == 0
		}
		if !dominated {
			kept = append(kept, t)
		}
	}
	return kept
}

func size(parts []stretch) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p.b - p.a
	}
	return sum
}

// without returns rest less parts; slivers within tieMM go.
func without(rest, parts []stretch) []stretch {
	var out []stretch
	for _, r := range rest {
		for _, p := range parts {
			if p.b < r.a || p.a > r.b {
				continue
			}
			if p.a > r.a+tieMM {
				out = append(out, stretch{r.a, p.a})
			}
			r.a = max(r.a, p.b)
		}
		if r.b > r.a+tieMM {
			out = append(out, r)
		}
	}
	return out
}
