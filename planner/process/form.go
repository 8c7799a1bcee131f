package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// veeOpened opens a vee that no blade goes to the bottom of, as far as the narrowest one goes between the flanks: the form tool is spared that metal.
func (c *Context) veeOpened(v vee) Task {
	saddle, _ := c.Lathe.Dial("saddle")
	best := partspec.Tool{}
	for _, tool := range c.blades() {
		if best.Width == 0 || tool.Width < best.Width {
			best = tool
		}
	}
	w, middle := float64(best.Width), (v.left+v.right)/2
	r := v.bottom + (math.Max(0, w-v.width())/2+float64(saddle.Graduation.Value)/2)*v.rise() + formLeave
	t := v.task("middle", shape.Roughing, middle-w/2, middle+w/2, solid.Const(middle-w/2, middle+w/2, r))
	t.Depth = v.top - r
	if best.Width == 0 || t.Depth < formLeave || float64(best.Reach) < c.besideGroove(v.f)-r {
		return t
	}
	rate := c.rate(cutGroove, 2*v.top, best)
	for _, e := range ends() {
		way := Way{End: e, Tool: best, Ordinary: true, Rate: rate, ForceAt: v.top, Span: [2]float64{t.Z0, t.Z1}}
		way.Minutes, way.ForceN = cutMinutes(t.Depth, 1, rate), c.force(w, rate.FeedMM)
		way.Write = func(j Job) (plan.Operation, Done) {
			p := c.page(j, t, way, fmt.Sprintf("Open the vee %s", v.f.Name))
			before := j.Before.Outer.Greatest(t.Z0, t.Z1)
			p.crossZero(2*before, false, "touch the outside there, "+p.diameter(before))
			p.saddleZero()
			corner := middle - w/2
			if j.Free == partspec.Left {
				corner = middle + w/2
			}
			z0 := c.onDial(corner, j.Free) - (corner - (middle - w/2))
			p.bladeTo(p.bladePlaces(z0, z0+w, w), turning{radius: r}, w, "")
			p.note("The saddle's figure is for the corner of the blade nearest to the headstock.")
			p.why("the middle of a vee is opened first, so that the form tool keeps its edge", veeRule)
			return p.finish()
		}
		t.Ways = append(t.Ways, way)
	}
	return t
}

// veeFormed makes both flanks with a form tool of their own angle: its point goes in at each corner of the bottom. whole says that a blade has cut the bottom.
func (c *Context) veeFormed(v vee, whole bool) Task {
	t := v.task("flanks", shape.Finishing, float64(v.f.Span.Left), float64(v.f.Span.Right), v.flank(partspec.Left).Join(solid.Const(v.left, v.right, v.bottom)).Join(v.flank(partspec.Right)))
	t.Tight, t.Round = float64(min(v.f.Width.Width(), v.f.Bottom.Width())), c.roundness(v.f.Bottom)
	for _, tool := range c.tools(partspec.ChamferTool) {
		if math.Abs(float64(tool.Angle)-v.flankDeg) > angleNoise {
			continue
		}
		for _, e := range ends() {
			if why := c.formLack(v, whole, e); why != "" {
				t.Lacking = append(t.Lacking, fmt.Sprintf("%s with the %s: %s", v.f.Name, tool.Name, why))
				continue
			}
			rate := c.rate(cutGroove, 2*v.top, tool)
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: v.top, Span: [2]float64{t.Z0, t.Z1}}
			w.Minutes = minutesEdge + cutMinutes(v.depth(), 2, rate)
			w.ForceN = c.force(v.run()+v.width(), rate.FeedMM)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeFormed(v, t, w, whole, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	if len(t.Ways) > 0 {
		t.Lacking = nil
	}
	return t
}

// formLack says why a form tool cannot make a vee from an end; empty when it can.
func (c *Context) formLack(v vee, whole bool, free partspec.End) string {
	cross, _ := c.Lathe.Dial("cross")
	if v.run() > plan.FormReachMM {
		return fmt.Sprintf("a flank is %.2f long on the axis, the tool's edge reaches %.0f", v.run(), plan.FormReachMM)
	}
	if !whole && v.width() > narrowBottom {
		return fmt.Sprintf("the bottom is %.2f wide, and no blade owned goes into it", v.width())
	}
	for _, z := range v.corners() {
		if off := math.Abs(c.onDial(z, free)-z) + radial(cross)/v.rise(); off > v.room() {
			return fmt.Sprintf("the dials place a flank within %.3f, its limits allow %.3f: widen them, or draw the vee's middle on a graduation of the saddle", off, v.room())
		}
	}
	return ""
}

// corners are where the point of a form tool goes in.
func (v vee) corners() []float64 {
	if v.width() <= sizeNoise {
		return []float64{v.left}
	}
	return []float64{v.left, v.right}
}

func (c *Context) writeFormed(v vee, t Task, w Way, whole bool, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Form the flanks of the vee %s, %s", v.f.Name, v.f.Angle))
	before := j.Before.Outer.Greatest(t.Z0, t.Z1)
	p.crossZero(2*before, false, "touch the outside there, "+p.diameter(before))
	p.saddleZero()
	marks, r := p.cross(v.bottom)
	var places []int64
	for n, z := range v.corners() {
		s, reached := p.saddle(z)
		places = append(places, s)
		name := fmt.Sprintf("corner %d", n+1)
		p.cut(name, at(-1, s), at(marks, s), nil)
		p.line(name, "saddle", s, "point of the tool", "", false)
		tip := solid.Point{Z: reached, R: r}
		cut := solid.VeeEdge(v.flankDeg, plan.FormReachMM).Sweep(tip, tip)
		p.done.Outer = solid.Lower(p.done.Outer, cut).Join(p.done.Outer).Join(cut)
	}
	if n := len(places); n > 1 && places[0] != places[1] { // what stands between the blade's slot and the corners
		p.cut("along the bottom", at(marks, places[1]), at(marks, places[0]), nil)
		p.done.Outer = solid.Lower(p.done.Outer, solid.Const(p.positionAt(places[0]), p.positionAt(places[1]), r)).Join(p.done.Outer)
	}
	p.line("in to", "cross", marks, p.diameter(r), "", false)
	p.note("A form tool cuts on its whole edge: slow, with light, steady feed.")
	p.note("Its point stands square to the axis: try it against the work's face or with a gauge of %s.", units.Angle(2*(90-v.flankDeg)))
	p.note("The vee is then %s wide at the surface.", v.widthText(c))
	p.why("the flanks come after the middle", veeRule)
	if !whole {
		p.op.Checks = append(p.op.Checks, c.check(v.f.Name+", diameter at the bottom", v.f.Name, v.f.Bottom, outsideCheck))
	}
	return p.finish()
}
