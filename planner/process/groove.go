package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// groove makes the tasks of an outside groove.
func (c *Context) groove(f *partspec.Groove) []Task {
	if f.Angle > 0 {
		return c.vee(f)
	}
	z0, z1, r := float64(f.Span.Left), float64(f.Span.Right), float64(f.Bottom.Mid())/2
	t := Task{Op: shape.Op{ID: f.ID() + "/groove", Feature: f.Name, Process: plan.Groove, Stage: shape.Finishing, Z0: z0, Z1: z1, Outer: solid.Const(z0, z1, r),
		Makes: []string{f.Name}, Tight: float64(f.Bottom.Width()), Round: c.roundness(f.Bottom), Depth: c.surfaceAt(f) - r}}
	size := f.Bottom
	for _, tool := range c.blades() {
		if float64(tool.Reach) < c.besideGroove(f)-r || float64(tool.Width) > float64(f.Width.High) {
			continue
		}
		if got := c.bladeWidth(f.Width, tool); got < float64(f.Width.Low)-sizeNoise || got > float64(f.Width.High)+sizeNoise {
			t.Lacking = append(t.Lacking, wrongWidth(f.Name, tool, got, f.Width))
			continue
		}
		rate := c.rate(cutGroove, 2*(r+t.Depth), tool)
		n := math.Max(1, math.Ceil((z1-z0)/(float64(tool.Width)*bladeStep)))
		for _, e := range ends() {
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: r + t.Depth, Span: [2]float64{z0, z1}}
			w.Minutes = cutMinutes(t.Depth, int(n), rate) + cutMinutes(z1-z0, 1, rate)
			w.ForceN = c.force(float64(tool.Width), rate.FeedMM)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeGroove(f, t, w, size, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	return []Task{t.orLacking(fmt.Sprintf("%s: no grooving or parting tool owned is at most %.2f wide and reaches %.2f (tool \"grooving\" { width = ...  reach = ... })", f.Name, float64(f.Width.High), t.Depth))}
}

// bladeWidth is the width that a blade cuts, moved along by whole graduations of the saddle: the nearest to the middle of the limits.
func (c *Context) bladeWidth(width partspec.Size, blade partspec.Tool) float64 {
	d, _ := c.Lathe.Dial("saddle")
	g := float64(d.Graduation.Value)
	return float64(blade.Width) + g*float64(widened(float64(width.Mid()), float64(blade.Width), g))
}

func wrongWidth(name string, blade partspec.Tool, got float64, want partspec.Size) string {
	return fmt.Sprintf("%s with the %s: it cuts %.2f wide on the saddle's graduations, wanted are %.3f to %.3f: a blade ground to that width would do, or a finer saddle dial", name, toolText(blade, 0), got, float64(want.Low), float64(want.High))
}

// besideGroove is the greatest radius of metal beside a groove: its own surface's, or a higher neighbour's when the groove lies at its foot.
func (c *Context) besideGroove(f *partspec.Groove) float64 {
	r := c.surfaceAt(f)
	for i, b := range c.Blocks {
		if b.Name != f.On {
			continue
		}
		if i > 0 && near(float64(f.Span.Left), b.Z0) {
			r = math.Max(r, c.Blocks[i-1].Greatest+leaveRadius)
		}
		if i+1 < len(c.Blocks) && near(float64(f.Span.Right), b.Z1) {
			r = math.Max(r, c.Blocks[i+1].Greatest+leaveRadius)
		}
	}
	return r
}

// surfaceAt is the radius of the surface a groove is cut in, or of the wider groove around it.
func (c *Context) surfaceAt(f *partspec.Groove) float64 {
	r := c.stockRadius()
	for _, b := range c.Blocks {
		if b.Name == f.On {
			r = b.Greatest
		}
	}
	return r
}

func (c *Context) writeGroove(f *partspec.Groove, t Task, w Way, size partspec.Size, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Groove %s in %s", f.Name, f.On))
	before := j.Before.Outer.Greatest(t.Z0, t.Z1)
	p.crossZero(2*before, false, "touch the outside there, "+p.diameter(before))
	p.saddleZero()
	p.op.DepthMM = math.Min(p.op.DepthMM, t.upToDepth())
	p.bladeTo(p.bladePlaces(t.Z0, t.Z1, float64(w.Tool.Width)), turning{radius: float64(size.Mid()) / 2, size: &size}, float64(w.Tool.Width), "")
	p.note("The saddle's figure is for the corner of the blade nearest to the headstock.")
	p.why("the groove comes after the diameter it is cut in", "A-12")
	p.op.Checks = append(p.op.Checks, c.check(f.Name+", diameter at the bottom", f.Name, f.Bottom, outsideCheck))
	return p.finish()
}

// recess makes the task of a groove inside a bore.
func (c *Context) recess(f *partspec.Recess) Task {
	z0, z1, r := float64(f.Span.Left), float64(f.Span.Right), float64(f.Diameter.Mid())/2
	host := c.holeNamed(f.On)
	t := Task{Op: shape.Op{ID: f.ID() + "/recess", Feature: f.Name, Process: plan.Recess, Stage: shape.Finishing, Inside: true, Z0: z0, Z1: z1, Inner: solid.Const(z0, z1, r),
		Makes: []string{f.Name}, Tight: float64(f.Diameter.Width()), Depth: r - host.Radius}}
	for _, tool := range c.tools(partspec.RecessTool) {
		for _, e := range mouths(host) {
			reach := math.Max(math.Abs(c.endZ(e)-z0), math.Abs(c.endZ(e)-z1))
			if float64(tool.Depth) < t.Depth || float64(tool.LeastBore) > 2*host.Radius+sizeNoise || float64(tool.Reach) < reach || float64(tool.Width) > float64(f.Width.High) {
				continue
			}
			if got := c.bladeWidth(f.Width, tool); got < float64(f.Width.Low)-sizeNoise || got > float64(f.Width.High)+sizeNoise {
				t.Lacking = append(t.Lacking, wrongWidth(f.Name, tool, got, f.Width))
				continue
			}
			rate := c.rate(cutGroove, 2*r, tool)
			n := math.Max(1, math.Ceil((z1-z0)/(float64(tool.Width)*bladeStep)))
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: r, Span: [2]float64{z0, z1}}
			w.Minutes = cutMinutes(t.Depth, int(n), rate)
			w.ForceN = c.force(float64(tool.Width), rate.FeedMM)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeRecess(f, t, w, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	return t.orLacking(fmt.Sprintf("%s: no recess tool owned enters Ø%.2f, cuts %.2f deep, reaches it and is at most %.2f wide", f.Name, 2*host.Radius, t.Depth, float64(f.Width.High)))
}

// upToDepth is a task's depth, in hundredths rounded up: all that a blade which plunges into a finished surface has before it.
func (t Task) upToDepth() float64 { return math.Ceil(100*t.Depth-sizeNoise) / 100 }

func (c *Context) holeNamed(name string) shape.Hole {
	for _, h := range c.Holes {
		if h.Name == name {
			return h
		}
	}
	return shape.Hole{}
}

func (c *Context) writeRecess(f *partspec.Recess, t Task, w Way, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Recess %s in %s", f.Name, f.On))
	found := j.Before.Inner.Least(t.Z0, t.Z1)
	p.crossZero(2*found, true, "touch the wall of the hole, "+p.diameter(found))
	p.saddleZero()
	p.op.DepthMM = math.Min(p.op.DepthMM, t.upToDepth())
	last := p.aimAt(float64(f.Diameter.Low), float64(f.Diameter.High))
	width := float64(w.Tool.Width)
	counts := p.bladePlaces(t.Z0, t.Z1, width)
	for k, s := range counts {
		name := fmt.Sprintf("plunge %d", k+1)
		p.cut(name, at(-1, s), at(last.marks, s), last.measure)
		p.line(name, "saddle", s, "", "", false)
	}
	p.line("out to", "cross", last.marks, p.diameter(last.radius), "", last.measure != nil)
	a, b := p.positionAt(counts[0]), p.positionAt(counts[len(counts)-1])
	lo, hi := math.Min(a, b), math.Max(a, b)
	if p.j.Free == partspec.Right {
		hi += width
	} else {
		lo -= width
	}
	p.done.Inner = solid.Const(lo, hi, last.radius)
	p.note("The cross dial grows outward here; the saddle's figure is for the blade's headstock side.")
	p.why("the run-out comes before the thread", "A-13")
	p.op.Checks = append(p.op.Checks, c.check(f.Name+", diameter", f.Name, f.Diameter, insideCheck))
	return p.finish()
}
