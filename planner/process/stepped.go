package process

import (
	"catchplate/partspec"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// sweeps adds to what the page leaves what an edge leaves on its way along the axis at a depth, crests, overhang and all.
func (p *page) sweeps(edge solid.Edge, from, to, depth int64) {
	left := edge.Sweep(solid.Point{Z: p.positionAt(from), R: p.radiusAt(depth)}, solid.Point{Z: p.positionAt(to), R: p.radiusAt(depth)})
	p.done.Outer = solid.Lower(p.done.Outer, left).Join(left)
}

// plunged is the edge of a tool that is plunged.
func (p *page) plunged() solid.Edge {
	if p.tool.Kind == partspec.RoundNose {
		return solid.RoundEdge(float64(p.tool.Radius))
	}
	return p.blade()
}

// knife is the edge of a knife, as far as its trailing side matters beside what it has cut before.
func (p *page) knife() solid.Edge {
	side := solid.TowardsPlus
	if p.j.Free == partspec.Left {
		side = solid.TowardsMinus
	}
	return solid.NoseEdge(float64(p.tool.NoseRadius), plan.TrailDeg, clearance, side)
}

// cutting is a table without the cuts at its ends that only touch a surface which is there already: a rounded edge runs out into a finished one.
func cutting(t steps.Table) steps.Table {
	return trimmed(t, func(c steps.Cut) bool { return c.DepthGrads <= 0 })
}

// trimmed is a table without the cuts at its ends that are idle.
func trimmed(t steps.Table, idle func(steps.Cut) bool) steps.Table {
	first, last := 0, len(t.Cuts)-1
	for first <= last && idle(t.Cuts[first]) {
		first++
	}
	for last >= first && idle(t.Cuts[last]) {
		last--
	}
	if first == 0 && last == len(t.Cuts)-1 {
		return t
	}
	return t.Part(first, last)
}
