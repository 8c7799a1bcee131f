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
	edge := solid.BladeEdge(float64(p.tool.Width), 0, side)
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
