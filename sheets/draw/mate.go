package draw

import (
	"math"
	"slices"

	"catchplate/planner/plan"
)

// throughMate reports whether an operation spots holes through from those of another part.
func throughMate(op plan.Operation) bool {
	return op.Process == plan.MarkOut && len(op.Cuts) > 0 && op.Cuts[0].At != nil && op.Cuts[0].At.By == "mate"
}

// barDeep is how wide a straight bar is drawn, on paper.
const barDeep = 4.0

// flushEdges are the edges of the work that those of its mate come flush with in this holding.
func (sc *flatScene) flushEdges() (edges []plan.OutlineSegment) {
	f := sc.p.Drawing.Flat
	for _, op := range sc.s.Operations {
		m := slices.IndexFunc(sc.p.Mates, func(m plan.Mate) bool { return throughMate(op) && m.For == op.Feature })
		if m < 0 || f == nil {
			continue
		}
		for _, e := range f.Outline {
			if slices.ContainsFunc(sc.p.Mates[m].Flush, func(pair plan.FlushEdge) bool { return pair.Edge == e.Name }) && !slices.Contains(edges, e) {
				edges = append(edges, e)
			}
		}
	}
	return edges
}

// flushBars draws the straight bars that the edges of the work and of its mate are pressed against.
func (c *Canvas) flushBars(sc *flatScene) {
	for _, e := range sc.flushEdges() {
		middle := sc.v.at((e.X0+e.X1)/2, (e.Y0+e.Y1)/2)
		out := sc.v.towards(math.Atan2(e.X0-e.X1, e.Y1-e.Y0) * 180 / math.Pi) // the metal lies on the left of an edge
		long := math.Hypot(e.X1-e.X0, e.Y1-e.Y0) * sc.v.scale
		c.blockAt(Holder, middle, out, barDeep, long*0.8)
		end := stepBy(middle, out, barDeep)
		sc.keep.line(middle, end)
		c.near(&sc.keep, end, 2.5, out, Text{Size: noteSize, Text: "straight bar"})
	}
}
