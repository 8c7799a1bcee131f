package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// fillet makes the tasks of a rounded edge (round), or of a rounded corner: the round-nosed tool runs along the diameter into the corner and out along the shoulder. The turning
// before it stops short by the radius (filletAt).
func (c *Context) fillet(f *partspec.Fillet) []Task {
	z, r, radius := float64(f.Edge.Z), float64(f.Edge.R), float64(f.Radius.Mid())
	t := Task{Op: shape.Op{ID: f.ID() + "/fillet", Feature: f.Name, Process: plan.Fillet, Stage: shape.Finishing, Inside: f.Edge.Inside, Makes: []string{f.Name}, Tight: float64(f.Radius.Width()), Depth: radius}}
	if f.Edge.Inside {
		t.Z0, t.Z1 = z, z
		t.Lacking = []string{fmt.Sprintf("%s: an edge or a corner inside a hole is not rounded here: break the edge with a chamfer, or leave the corner to the tool (inner_corner)", f.Name)}
		return []Task{t}
	}
	if f.Edge.Convex {
		return c.round(f)
	}
	dir := 1.0 // away from the shoulder
	if f.Edge.End == partspec.Right {
		dir = -1
	}
	t.Z0, t.Z1 = math.Min(z, z+dir*radius), math.Max(z, z+dir*radius)
	t.Outer = solid.Arc(z, r+radius, z+dir*radius, r, z+dir*radius, r+radius, false)
	for _, tool := range c.tools(partspec.RoundNose) {
		if tool.Radius < f.Radius.Low || tool.Radius > f.Radius.High || float64(tool.Reach) < c.stockRadius()-r+forceSlack {
			continue
		}
		for _, e := range ends() {
			rate := c.rate(cutGroove, 2*(r+radius), tool)
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: r + radius, Span: [2]float64{t.Z0, t.Z1}, Minutes: minutesEdge + cutMinutes(2*radius, 2, rate)}
			w.ForceN = c.force(radius, rate.FeedMM)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeFillet(f, t, w, dir, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	reach := c.stockRadius() - r + forceSlack
	return []Task{t.orLacking(fmt.Sprintf("%s: no round-nosed tool of radius %.2f to %.2f that reaches %.1f is owned: grind one, and write tool \"round_nose\" { radius = %g  reach = %.0f } into the workshop",
		f.Name, float64(f.Radius.Low), float64(f.Radius.High), reach, radius, math.Ceil(reach)))}
}

func (c *Context) writeFillet(f *partspec.Fillet, t Task, w Way, dir float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Round the corner %s.%s with the %s", f.Edge.Feature, f.Edge.End, w.Tool.Name))
	z, nose := float64(f.Edge.Z), float64(w.Tool.Radius)
	made := j.Before.Outer.Least(t.Z0-clearance, t.Z1+clearance)
	p.crossZero(2*made, false, "touch the diameter beside the corner, "+p.diameter(made))
	p.saddleZero()
	shoulder := j.Before.Outer.Greatest(t.Z0-clearance, t.Z1+clearance)
	in, inZ := p.saddle(z + dir*nose)
	start, _ := p.saddle(z + dir*(float64(f.Radius.High)+nose))
	out, _ := p.cross(shoulder + clearance)
	p.cut("into the corner", at(0, start), at(0, in), nil)
	p.cut("out along the shoulder", at(0, in), at(out, in), nil)
	p.line("middle of the nose at", "saddle", in, "tangent to the shoulder", "", false)
	p.line("hold at", "cross", 0, p.diameter(made), "", false)
	p.done.Outer = solid.Arc(inZ-dir*nose, made+nose, inZ, made, inZ, made+nose, false)
	p.why("the corner comes after its diameter", "A-12")
	return p.finish()
}

// filletBeside is the radius of the fillet that the neighbour towards an end has at its foot against this block: metal that turning leaves there.
func (c *Context) filletBeside(i int, e partspec.End) float64 {
	k := i + 1
	if e == partspec.Left {
		k = i - 1
	}
	if k < 0 || k >= len(c.Blocks) {
		return 0
	}
	return c.filletAt(c.Blocks[k].Name, e.Other())
}

// filletAt is the radius of the fillet at one end of a block, 0 for none: turning stops so far short of the shoulder.
func (c *Context) filletAt(block string, e partspec.End) float64 {
	for _, f := range c.Part.Features {
		if fl, ok := f.(*partspec.Fillet); ok && !fl.Edge.Convex && !fl.Edge.Inside && fl.Edge.Feature == block && fl.Edge.End == e {
			return float64(fl.Radius.Mid())
		}
	}
	return 0
}
