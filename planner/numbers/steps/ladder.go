package steps

import (
	"math"
	"slices"
)

// ladder holds the cuts that a constant step may use, zone by zone from left to right.
type ladder struct {
	coverage
	zones []rungs
}

// rungs are the places of one zone: the reading of the leading dial changes by one from each to the next.
type rungs struct {
	depthLeads  bool
	number      int // of the zone
	first, last int
	dial        dial // the leading one
}

func (z rungs) len() int { return z.last - z.first + 1 }

// lead says where the depth dial leads: where the curve is steeper than the given slope.
type lead float64

const (
	depthLeads   lead = 0               // wherever the curve slopes at all
	steeperLeads lead = 1               // past 45 degrees
	acrossLeads  lead = math.MaxFloat64 // nowhere
)

// newLadder sorts the places into zones. In a zone where the depth dial leads it replaces them with one cut for each depth reading,
// as near to the curve as it may go.
func (j *job) newLadder(c coverage, by lead) ladder {
	var places []place
	var zones []rungs
	replaced := false
	for from := 0; from < len(c.places); {
		to, kind := from, j.zoneOf(c, from, by)
		for to+1 < len(c.places) && (j.zoneOf(c, to+1, by) == kind) {
			to++
		}
		zone := rungs{number: len(zones), first: len(places), dial: j.feeler.across}
		run := c.places[from : to+1]
		if kind != 0 {
			replaced = true
			run = levels(run, kind, j.feeler)
			zone.depthLeads, zone.dial = true, j.feeler.depth
		}
		places = append(places, run...)
		zone.last = len(places) - 1
		if zone.len() > 0 {
			zones = append(zones, zone)
		}
		from = to + 1
	}
	if !replaced {
		return ladder{c, zones}
	}
	return ladder{j.feeler.cover(places, c.leftover), zones}
}

// zoneOf is 0 where the across dial leads in what place i covers; else +1 where the curve runs deeper to the right, -1 where it
// runs deeper to the left.
func (j *job) zoneOf(c coverage, i int, by lead) int {
	slope := j.feeler.surface.slope(c.middle(i))
	switch {
	case slope < -float64(by):
		return 1
	case slope > float64(by):
		return -1
	}
	return 0
}

// slope of the surface at x, or at the end of the curve that is nearer; of two pieces that meet at x, the right one's.
func (s surface) slope(x float64) float64 {
	x = min(max(x, s.lo), s.hi)
	slope := 0.0
	for _, g := range s.own() {
		if x >= g.lo && x <= g.hi {
			slope = g.slopeAt(x)
		}
	}
	return slope
}

// levels returns one cut for each depth reading that the run passes, in order across. Going deeper to the right, the cut for a
// reading stands at the first place that may go so deep; going deeper to the left, at the last.
func levels(run []place, sign int, f *feeler) []place {
	var out []place
	n := len(run)
	at := func(i int) place {
		if sign < 0 {
			return run[n-1-i]
		}
		return run[i]
	}
	for i, next := 0, at(0).depth; i < n; i++ {
		for ; next <= at(i).depth; next++ {
			p := at(i)
			p.depth, p.y = next, -f.depth.at(next)
			out = append(out, p)
		}
	}
	if sign < 0 {
		slices.Reverse(out)
	}
	return out
}

// middle of what place i covers, or of its width if it covers nothing.
func (c coverage) middle(i int) float64 {
	if n := len(c.parts[i]); n > 0 {
		return (c.parts[i][0].a + c.parts[i][n-1].b) / 2
	}
	return c.places[i].x
}

// starts is the leftmost point that a zone covers.
func (l ladder) starts(z rungs) float64 {
	x := l.hi
	for i := z.first; i <= z.last; i++ {
		if len(l.parts[i]) > 0 {
			x = min(x, l.parts[i][0].a)
		}
	}
	return x
}
