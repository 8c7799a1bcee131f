package steps

import (
	"cmp"
	"math"
	"slices"
)

// ConstantStep is a table in which one dial advances by one constant whole number of graduations, so that a miscount shows. A new
// zone begins where the lead passes from dial to dial or the depth turns; the number stays the same.
type ConstantStep struct {
	Cuts            []Cut // in order of across; none if no constant step keeps the leftover
	Runs            []Run
	StepGrads       int64
	Zones           []Zone
	WorstLeftoverMM float64
}

// Zone is a part of the curve with one leading dial.
type Zone struct {
	First      int  // index of its first cut
	DepthLeads bool // else the across dial leads
	StepMM     float64
}

// customaryStepMM is the step across that hand-made tables use. Common practice, no source.
const customaryStepMM = 0.25

// customary counts the cuts of a table with the usual step from the dial's zero, each as deep as it may go; 0 if it does not keep
// the leftover.
func (j *job) customary(c coverage) int {
	step := max(1, int(math.Round(customaryStepMM/j.feeler.across.travelMM)))
	zero := int(((-c.places[0].across)%int64(step) + int64(step)) % int64(step))
	l := ladder{c, []rungs{{last: len(c.places) - 1}}}
	for _, end := range l.walk(nil, &leg{front: c.lo}, l.zones[0], zero, step, c.hi) {
		return end.count
	}
	return 0
}

// leg is the way up a ladder so far: count cuts, which cover all up to the front.
type leg struct {
	count int
	front float64
	// The last stretch of the way: rungs first, first + step, ... of a zone, after what came before.
	before   *leg
	zone     int
	first, n int
}

// best returns the shortest way up with one step in all zones, nil if there is none. Steps are tried from the widest down, until
// narrower ones cannot need fewer cuts: within one zone that is a proof; over several, half the best step is taken as the end.
func (l ladder) best() (top *leg, step int) {
	tries := mostTries
	for s := l.widest(); s >= 1 && tries > 0; s-- {
		if top != nil && (len(l.zones) == 1 && l.least(s) >= top.count || len(l.zones) > 1 && 2*s < step) {
			break
		}
		if end := l.climb(s, &tries); end != nil && (top == nil || end.count < top.count) {
			top, step = end, s
		}
	}
	return top, step
}

// mostTries bounds the work of best, in rungs looked at: well under a second.
const mostTries = 20_000_000

// widest is a bound on the step: m cuts with any spacing are needed, and all but one in each zone are a step from the one before.
func (l ladder) widest() int {
	readings := 0
	for _, z := range l.zones {
		readings += z.len() - 1
	}
	picked, _ := l.greedy()
	if picked == nil {
		return 0
	}
	return readings / max(1, len(picked)-len(l.zones))
}

// least is a bound on the cuts with a step in the only zone: its readings between the last place that covers the start of the curve
// and the first that covers the end.
func (l ladder) least(step int) int {
	last, first := -1, -1
	for i := range l.places {
		if l.covers(i, l.lo) {
			last = i
		}
		if first < 0 && l.covers(i, l.hi) {
			first = i
		}
	}
	return (max(0, first-last)+step-1)/step + 1
}

// climb returns the shortest way up with a given step. From zone to zone it keeps, for each number of cuts, the way that reaches
// farthest; a zone may start at any rung and may be left early or left out.
func (l ladder) climb(step int, tries *int) *leg {
	legs := []*leg{{front: l.lo}}
	for n, z := range l.zones {
		goal := l.hi
		for _, later := range l.zones[n+1:] {
			goal = min(goal, l.starts(later))
		}
		for _, from := range legs {
			for start := range min(step, z.len()) {
				*tries -= z.len()/step + 1
				legs = l.walk(legs, from, z, z.first+start, step, goal)
			}
		}
		legs = farthest(legs)
	}
	if end := legs[len(legs)-1]; end.front >= l.hi-tieMM {
		return end
	}
	return nil
}

// farthest keeps of the legs those that reach farther than every leg with no more cuts.
func farthest(legs []*leg) []*leg {
	slices.SortStableFunc(legs, func(a, b *leg) int {
		return cmp.Or(cmp.Compare(a.count, b.count), cmp.Compare(b.front, a.front))
	})
	kept := legs[:0]
	for _, g := range legs {
		if len(kept) == 0 || g.front > kept[len(kept)-1].front+tieMM {
			kept = append(kept, g)
		}
	}
	return kept
}

// walk takes every step-th rung of a zone from start: the first is the last that covers where the walk begins, and from there none is
// left out. It appends to legs each way that brings the front to the goal or past it, and ends at the end of the curve or at a gap.
func (l ladder) walk(legs []*leg, from *leg, z rungs, start, step int, goal float64) []*leg {
	at := leg{count: from.count, front: from.front, before: from, zone: z.number, first: -1}
	for i := start; i <= z.last && at.front < l.hi-tieMM; i += step {
		reach := l.partOver(i, from.front)
		switch {
		case reach > from.front && reach >= at.front:
			at.first, at.n, at.front = i, 1, reach
		case at.n > 0:
			at.n++
			at.front = max(at.front, l.partOver(i, at.front))
		}
		if l.places[i].x-l.reach > at.front {
			break
		}
		if at.count = from.count + at.n; at.n > 0 && at.front >= goal-tieMM {
			way := at
			legs = append(legs, &way)
		}
	}
	return legs
}

// way lists the rungs of a leg and those before it, and where the zones begin.
func (l ladder) way(end *leg, step int) (picked []int, zones []Zone) {
	var legs []*leg
	for g := end; g.before != nil; g = g.before {
		legs = append(legs, g)
	}
	for _, g := range slices.Backward(legs) {
		z := l.zones[g.zone]
		stepMM, _ := z.dial.moved(int64(step)).Float64()
		zones = append(zones, Zone{First: len(picked), DepthLeads: z.depthLeads, StepMM: stepMM})
		for n := range g.n {
			picked = append(picked, g.first+n*step)
		}
	}
	return picked, zones
}
