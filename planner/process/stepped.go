package process

import (
	"catchplate/partspec"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/solid"
)

// stepped is the outside that a table of plunges leaves, crests, overhang and all. The readings are still those of the page's noughts.
func (p *page) stepped(t steps.Table) solid.Curve {
	side := solid.TowardsPlus
	if p.j.Free == partspec.Left {
		side = solid.TowardsMinus
	}
	edge := solid.BladeEdge(float64(p.tool.Width), float64(p.tool.NoseRadius), side)
	if p.tool.Kind == partspec.RoundNose {
		edge = solid.RoundEdge(float64(p.tool.Radius))
	}
	var left solid.Curve
	for _, cut := range t.Cuts {
		at := solid.Point{Z: p.positionAt(cut.AcrossGrads), R: p.radiusAt(cut.DepthGrads)}
		left = solid.Lower(left, edge.Sweep(at, at)).Join(edge.Sweep(at, at))
	}
	return left
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
	var runs []steps.Run
	for _, r := range t.Runs {
		if max(r.First, r.Last) < first || min(r.First, r.Last) > last {
			continue
		}
		r.First, r.Last = min(max(r.First, first), last)-first, min(max(r.Last, first), last)-first
		runs = append(runs, r)
	}
	t.Cuts, t.Runs = t.Cuts[first:last+1], runs
	return t
}
