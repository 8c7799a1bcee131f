package steps

import "math"

// ConstantStep is a table in which one dial advances by one constant whole number of graduations, so that a miscount shows. Where
// the lead changes from dial to dial, or the depth turns, a new zone begins with a step of its own.
type ConstantStep struct {
	Cuts            []Cut // in order of across; none if no constant step keeps the leftover
	Runs            []Run
	Zones           []Zone
	WorstLeftoverMM float64
}

// Zone is a part of the curve with one leading dial.
type Zone struct {
	DepthLeads bool // else the across dial leads
	StepGrads  int64
	StepMM     float64
	First      int // index of its first cut
}

// customaryStepMM is the step across that hand-made tables use. Common practice, no source.
const customaryStepMM = 0.25

// customary counts the cuts of a table with the usual step from the dial's zero, each as deep as it may go; 0 if it does not keep
// the leftover.
func (j *job) customary(c coverage) int {
	travel := j.request.Across.TravelMM()
	step := max(1, int(math.Round(customaryStepMM/travel)))
	zero := int(((-c.places[0].across)%int64(step) + int64(step)) % int64(step))
	l := ladder{coverage: c}
	_, count, _ := l.walk(rungs{last: len(c.places) - 1}, zero, step, c.lo, c.hi)
	return count
}

// ladder holds the cuts that a constant step may use, zone by zone from left to right.
type ladder struct {
	coverage
	zones []rungs
}

// rungs are the places of one zone: the reading of the leading dial changes by one from each to the next.
type rungs struct {
	depthLeads  bool
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
		zone := rungs{first: len(places), dial: j.feeler.across}
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
	for _, g := range s.pieces {
		if x >= g.lo && x <= g.hi && g.hi > s.lo && g.lo < s.hi {
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
		for i, k := 0, len(out)-1; i < k; i, k = i+1, k-1 {
			out[i], out[k] = out[k], out[i]
		}
	}
	return out
}

// best is the shorter of two ways to hand over from zone to zone: as soon as the next zone can cover on, or not before
// the last cut of the zone is no more use. It is nil if some zone has no step that keeps the leftover.
func (l ladder) best() (picked []int, zones []Zone) {
	picked, zones = l.climb(func(n int) float64 { return l.middle(l.zones[n].last) })
	early, earlyZones := l.climb(func(n int) float64 { return l.starts(l.zones[n+1]) })
	if early != nil && (picked == nil || len(early) < len(picked)) {
		return early, earlyZones
	}
	return picked, zones
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

// climb picks a constant step for each zone in turn: the fewest cuts that bring the front to the zone's goal, then the
// farthest reach.
func (l ladder) climb(goalOf func(zone int) float64) (picked []int, zones []Zone) {
	front := l.lo
	for n, z := range l.zones {
		goal := l.hi
		if n+1 < len(l.zones) {
			goal = min(l.hi, goalOf(n))
		}
		if front >= goal-tieMM {
			continue
		}
		best, step := l.bestStep(z, front, goal)
		if best == nil {
			return nil, nil
		}
		stepMM, _ := z.dial.moved(step).Float64()
		zones = append(zones, Zone{DepthLeads: z.depthLeads, StepGrads: step, StepMM: stepMM, First: len(picked)})
		picked = append(picked, best...)
		for _, i := range best {
			front = l.partOver(i, front)
		}
		if front >= l.hi-tieMM {
			break
		}
	}
	if front < l.hi-tieMM {
		return nil, nil
	}
	return picked, zones
}

// middle of what place i covers, or of its width if it covers nothing.
func (c coverage) middle(i int) float64 {
	if n := len(c.parts[i]); n > 0 {
		return (c.parts[i][0].a + c.parts[i][n-1].b) / 2
	}
	return c.places[i].x
}

// bestStep tries every step and start in a zone, wide steps first, and stops when narrower ones cannot need fewer cuts.
func (l ladder) bestStep(z rungs, front, goal float64) (best []int, step int64) {
	reach, count, first := front, 0, 0
	least := l.span(z, front, goal)
	for s := l.widest(z, front, goal); s >= 1; s-- {
		if count > 0 && (least+s-1)/s+1 >= count {
			break
		}
		for start := range s {
			from, n, far := l.walk(z, z.first+start, s, front, goal)
			if n > 0 && (count == 0 || n < count || n == count && far > reach+tieMM) {
				first, count, reach, step = from, n, far, int64(s)
			}
		}
	}
	for n := range count {
		best = append(best, first+n*int(step))
	}
	return best, step
}

// widest is a bound on the step: m cuts with any spacing are needed, so m-1 steps must fit in the zone.
func (l ladder) widest(z rungs, front, goal float64) int {
	m := 0
	for ; front < goal-tieMM; m++ {
		far := front
		from, to := l.near(front)
		for i := max(from, z.first); i < min(to, z.last+1); i++ {
			far = max(far, l.partOver(i, front))
		}
		if far <= front {
			return 0 // no cut of this zone covers on
		}
		front = far
	}
	return (z.len() - 1) / max(1, m-1)
}

// span is the least number of readings between a place that covers front and one that covers goal.
func (l ladder) span(z rungs, front, goal float64) int {
	last, first := -1, -1
	for i := z.first; i <= z.last; i++ {
		if l.covers(i, front) {
			last = i
		}
		if first < 0 && l.covers(i, goal) {
			first = i
		}
	}
	return max(0, first-last)
}

// walk takes every step-th place from start: first is the last that covers where the walk begins, and from there none is left out
// until the front is at the goal. count is 0 if a gap opens.
func (l ladder) walk(z rungs, start, step int, front, goal float64) (first, count int, far float64) {
	far = front
	for i := start; i <= z.last; i += step {
		reach := l.partOver(i, front)
		switch {
		case reach > front && reach >= far:
			first, count, far = i, 1, reach
		case count > 0:
			count, far = count+1, max(far, l.partOver(i, far))
			if l.places[i].x-l.reach > far {
				return 0, 0, far
			}
		}
		if count > 0 && far >= goal-tieMM {
			return first, count, far
		}
	}
	return 0, 0, far
}
