package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// round makes the tasks of a rounded outside edge: stepped like a profile of one arc, then filed to a radius gauge.
func (c *Context) round(f *partspec.Fillet) []Task {
	host, ok := c.blockNamed(f.Edge.Feature)
	step := Task{Op: shape.Op{ID: f.ID() + "/steps", Feature: f.Name, Process: plan.Steps, Stage: shape.Roughing, End: f.Edge.Axial.Other(), Z0: float64(f.Edge.Z), Z1: float64(f.Edge.Z)}}
	if !ok || !host.Cylinder() || host.AsSupplied {
		return []Task{step.orLacking(fmt.Sprintf("%s: only the edge of a turned cylinder is rounded; draw this one as an arc of the profile", f.Name))}
	}
	b, arc := c.roundBlock(f, host)
	step.Z0, step.Z1, step.Outer, step.Depth = b.Z0, b.Z1, b.Curve, b.Greatest-b.Least
	for _, e := range ends() {
		for _, tool := range c.steppers() {
			step.addSteps(c, b, arc, tool, e)
		}
	}
	if len(step.Ways) > 0 {
		step.Lacking = nil
	}
	return []Task{step.orLacking(f.Name + ": no round-nosed or grooving tool is owned"), c.roundFile(f, b)}
}

// faceFound is how far from its drawn place the face lies that a rounded edge belongs to: a shoulder stands where a graduation of the saddle lets it, and the round
// begins there.
func faceFound(b solid.Body, edge shape.Block, faces partspec.End) float64 {
	z := edge.Z1
	if faces == partspec.Left {
		z = edge.Z0
	}
	off, height := 0.0, faceLook
	pieces := b.Outer.Pieces()
	for i := 1; i < len(pieces); i++ {
		d, jump := pieces[i].Z0-z, math.Abs(pieces[i].R0-pieces[i-1].R1)
		if math.Abs(d) < leaveFace && jump > height {
			off, height = d, jump
		}
	}
	return off
}

// movedArc is a profile moved along the axis.
func movedArc(f *partspec.Profile, by float64) *partspec.Profile {
	g := *f
	g.Segments = slices.Clone(f.Segments)
	for i := range g.Segments {
		s := &g.Segments[i]
		s.Z0, s.Z1, s.CentreZ = s.Z0+units.Length(by), s.Z1+units.Length(by), s.CentreZ+units.Length(by)
	}
	return &g
}

func (c *Context) blockNamed(name string) (shape.Block, bool) {
	for _, b := range c.Blocks {
		if b.Name == name {
			return b, true
		}
	}
	return shape.Block{}, false
}

// roundBlock is the stretch of a cylinder that a rounded edge takes, and the same as a profile of one arc.
func (c *Context) roundBlock(f *partspec.Fillet, host shape.Block) (shape.Block, *partspec.Profile) {
	z, r, rho := float64(f.Edge.Z), host.Greatest, float64(f.Radius.Mid())
	in := z + rho // where the arc runs out into the cylinder
	left, right := units.Length(r-rho), units.Length(r)
	if f.Edge.Axial == partspec.Left {
		in, left, right = z-rho, right, left
	}
	z0, z1 := math.Min(z, in), math.Max(z, in)
	arc := &partspec.Profile{FeatureHead: f.FeatureHead, Span: partspec.Span{Left: units.Length(z0), Right: units.Length(z1)}, FinishFile: true,
		Segments: []partspec.Segment{{Z0: units.Length(z0), R0: left, Z1: units.Length(z1), R1: right, Arc: true, Convex: true,
			CentreZ: units.Length(in), CentreR: units.Length(r - rho), Radius: f.Radius.Mid()}}}
	return shape.Block{Feature: arc, Name: f.Name, Z0: z0, Z1: z1, Curve: shape.ProfileCurve(arc), Least: r - rho, Greatest: r}, arc
}

// addSteps adds the way to step a rounded edge with a tool from an end, or says why there is none.
func (t *Task) addSteps(c *Context, b shape.Block, arc *partspec.Profile, tool partspec.Tool, e partspec.End) {
	lack := func(format string, a ...any) {
		t.Lacking = append(t.Lacking, fmt.Sprintf("%s with the %s: ", arc.Name, tool.Name)+fmt.Sprintf(format, a...))
	}
	switch {
	case !c.hangsFree(b, t.End, tool, e):
		lack("it hangs over the edge, and what stands there is in its way")
		return
	case tool.Kind != partspec.Turning && float64(tool.Reach) < c.stockRadius()-b.Least:
		lack("it reaches %.1f deep, the round goes %.1f below the stock", float64(tool.Reach), c.stockRadius()-b.Least)
		return
	}
	w, err := c.stepWay(b, arc, *t, tool, e, 0)
	if err != nil {
		lack("%v", err)
		return
	}
	w.Ordinary = e == t.End
	step := *t
	w.Write = func(j Job) (plan.Operation, Done) {
		op, done := c.writeSteps(b, movedArc(arc, faceFound(j.Before, b, step.End)), step, w, j)
		op.DepthMM = math.Min(op.DepthMM, step.Depth*j.Light)
		op.Title = fmt.Sprintf("Step the rounded edge %s, R%s, %d cuts", arc.Name, units.Decimal(b.Greatest-b.Least, 3), len(op.Cuts))
		return op, done
	}
	t.Ways = append(t.Ways, w)
}

// hangsFree reports whether a tool that works from an end may hang over a rounded edge: into the air past the free end of the part, or over a lower neighbour,
// clear of it and of what stands beyond.
func (c *Context) hangsFree(b shape.Block, faces partspec.End, tool partspec.Tool, free partspec.End) bool {
	edge := b.Z1
	if faces == partspec.Left {
		edge = b.Z0
	}
	for _, other := range c.Blocks {
		if near(other.Z1, edge) && faces == partspec.Left || near(other.Z0, edge) && faces == partspec.Right {
			return other.Greatest < b.Least-bladeNose(tool) && other.Z1-other.Z0 > bladeWidth(tool)
		}
	}
	return faces == free
}

// bladeNose is how far below the foot of a vertical edge a tool may go that hangs over it.
func bladeNose(t partspec.Tool) float64 {
	if t.Kind == partspec.RoundNose {
		return float64(t.Radius)
	}
	return float64(t.NoseRadius)
}

// roundFile makes the task of filing a rounded edge.
func (c *Context) roundFile(f *partspec.Fillet, b shape.Block) Task {
	t := Task{Op: shape.Op{ID: f.ID() + "/file", Feature: f.Name, Process: plan.FileProfile, Stage: shape.Finishing, End: f.Edge.Axial.Other(), Z0: b.Z0, Z1: b.Z1, Outer: b.Curve, Makes: []string{f.Name}}}
	rate := c.rate(cutFinish, 2*b.Greatest, partspec.Tool{})
	for _, e := range ends() {
		for _, tool := range c.tools(partspec.Files) {
			w := Way{End: e, Tool: tool, Ordinary: e == t.End, Rate: rate, ForceAt: b.Greatest, ForceN: fileForce, Span: [2]float64{b.Z0, b.Z1}}
			w.Minutes = 2 + 2*math.Pi*b.Greatest*(b.Z1-b.Z0)*minutesFileArea
			w.Write = func(j Job) (plan.Operation, Done) {
				p := c.page(j, t, w, fmt.Sprintf("File the edge %s round to R%s", f.Name, p0(c, f.Radius)))
				p.note("Blue the steps. File until the blue at the inner corner of every step just vanishes, and try it with a radius gauge of %s.", p0(c, f.Radius))
				p.note("At most %.2f mm is to come off anywhere, square to the surface.", c.fileLeft())
				p.why("the crests are the file's, the inner corners are the witness", "C-18")
				p.op.DepthMM = c.fileLeft()
				curve := b.Curve.Shift(faceFound(j.Before, b, t.End), 0)
				p.done.Outer = solid.Lower(curve, j.Before.Outer)
				return p.finish()
			}
			t.Ways = append(t.Ways, w)
		}
	}
	return t.orLacking(f.Name + ": no file is owned")
}
