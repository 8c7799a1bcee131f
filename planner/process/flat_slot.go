package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/shape"
)

// flatSlot makes the task of a slot in a flat part: an end mill of its width, along X or Y by one dial.
func (c *Context) flatSlot(f *partspec.Slot) Task {
	a, b := f.Ends[0], f.Ends[1]
	groove := shape.Groove{Capsule: plane.Capsule{X0: float64(a.X.Value), Y0: float64(a.Y.Value), X1: float64(b.X.Value), Y1: float64(b.Y.Value), Radius: float64(f.Width.Mid()) / 2}, Z1: c.Length}
	depth := c.Length
	if !f.Through {
		depth = float64(f.Depth.Mid())
		groove.Z0, groove.Z1 = ordered(c.endZ(f.From), c.endZ(f.From)+into(f.From)*depth)
	}
	t := Task{Op: shape.Op{ID: f.ID() + "/mill", Feature: f.Name, Process: plan.MillSlot, Stage: shape.Finishing, Z0: groove.Z0, Z1: groove.Z1, Makes: []string{f.Name},
		Tight: float64(f.Width.Width()), Depth: depth, Flat: &shape.FlatCut{Slots: []shape.Groove{groove}}}}
	t.Place = math.Min(math.Min(float64(a.X.Width()), float64(a.Y.Width())), math.Min(float64(b.X.Width()), float64(b.Y.Width()))) / 2
	for _, end := range f.Ends { // where it is worked
		t.Spots = append(t.Spots, shape.Spot{X: float64(end.X.Value), Y: float64(end.Y.Value), Radius: groove.Radius})
	}
	if !f.Through {
		t.End = f.From
	}
	tool, size, ok := c.sized(partspec.EndMill, float64(f.Width.Low), float64(f.Width.High))
	switch {
	case math.Abs(groove.X0-groove.X1) > sizeNoise && math.Abs(groove.Y0-groove.Y1) > sizeNoise:
		return t.orLacking(fmt.Sprintf("%s lies askew: two dials at once cannot be followed by hand; turn it along X or Y", f.Name))
	case !c.coordinates():
		return t.orLacking(fmt.Sprintf("milling %s: no mill with dials x, y and quill (or z) is owned", f.Name))
	case !ok:
		return t.orLacking(fmt.Sprintf("milling %s: no end mill owned between %.3f and %.3f", f.Name, float64(f.Width.Low), float64(f.Width.High)))
	}
	sides := []partspec.End{f.From}
	if f.Through {
		sides = []partspec.End{partspec.Right, partspec.Left}
	}
	for _, e := range sides {
		w := c.millWay(e, millingCutter{tool, partspec.EndMill, size})
		w.Rate.DepthMM = c.slotDepth(size)
		w.DeepMM, w.ForceAt = depth, size/2
		w.ForceN = c.milledForce(w.Rate.DepthMM, size, size, w.Rate.FeedMM)
		w.Span = [2]float64{groove.Z0, groove.Z1}
		w.Minutes = minutesTrial + float64(passes(depth+through, w.Rate.DepthMM))*(groove.Length()/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeFlatSlot(f, t, w, groove, depth, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

func (c *Context) writeFlatSlot(f *partspec.Slot, t Task, w Way, g shape.Groove, depth float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Mill %s, %s wide", f.Name, f.Width.Value.Text(c.unit())))
	p.op.DepthMM = w.PassMM(j.Light)
	p.tableZeros()
	top := j.Flat.Front
	if w.End == partspec.Left {
		top = j.Flat.Back
	}
	p.quillZero(top, "touch the face")
	if f.Through {
		depth = j.Flat.Front - j.Flat.Back + through
	}
	x0, y0, x1, y1 := g.X0, g.Y0, g.X1, g.Y1
	if (x1-x0)*p.sense("x")+(y1-y0) < 0 { // the moving dial counts up
		x0, y0, x1, y1 = x1, y1, x0, y0
	}
	from, to := p.overDials(tidyMM(x0), tidyMM(y0)), p.overDials(tidyMM(x1), tidyMM(y1))
	all, reached := p.sunk(depth, f.Through)
	n := int64(passes(depth, w.PassMM(j.Light)))
	for k := int64(1); k <= n; k++ {
		name := passName(int(k), int(n))
		q := all * k / n
		p.op.Cuts = append(p.op.Cuts,
			plan.Cut{Name: name + ", down", From: withReading(from.at, p.quill(), all*(k-1)/n), To: withReading(from.at, p.quill(), q)},
			plan.Cut{Name: name, From: withReading(from.at, p.quill(), q), To: withReading(to.at, p.quill(), q)})
		p.line(name, p.quill(), q, p.both(float64(q)*float64(p.dial(p.quill()).Graduation.Value), p.quill())+" deep", "", false)
	}
	for _, end := range []struct {
		word string
		at   stand
	}{{"begin at", from}, {"run to", to}} {
		p.line(end.word, "x", countOf(end.at.at, "x"), "middle of the cutter", "", false)
		p.line(end.word, "y", countOf(end.at.at, "y"), "middle of the cutter", "", false)
	}
	p.note("An end mill that cuts at its centre; down at the beginning, then along, every pass the same way.")
	p.why("approached one way", "C-08")
	p.op.Checks = append(p.op.Checks, c.check(f.Name+", width", f.Name, f.Width, insideCheck))
	made := g
	made.Radius = w.SizeMM / 2
	if !f.Through {
		made.Z0, made.Z1 = ordered(top, top+into(w.End)*reached)
		p.op.Checks = append(p.op.Checks, c.check(f.Name+", depth", f.Name, f.Depth, depthCheck))
	}
	p.done.Flat = &shape.FlatCut{Slots: []shape.Groove{made}}
	return p.finish()
}
