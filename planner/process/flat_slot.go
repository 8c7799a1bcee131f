package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/shape"
)

// flatSlot makes the task of a slot in a flat part, along X or Y by one dial: an end mill of its width once, or a smaller one down the middle and then along both sides.
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
	tool, ok := c.slotMill(f)
	size := tool.size
	switch {
	case math.Abs(groove.X0-groove.X1) > sizeNoise && math.Abs(groove.Y0-groove.Y1) > sizeNoise:
		return t.orLacking(fmt.Sprintf("%s lies askew: two dials at once cannot be followed by hand; turn it along X or Y", f.Name))
	case !c.coordinates():
		return t.orLacking(fmt.Sprintf("milling %s: no mill with dials x, y and quill (or z) is owned", f.Name))
	case !ok:
		return t.orLacking(fmt.Sprintf("milling %s: no end mill owned between %.3f and %.3f, nor one so little smaller that passes beside each other leave its ends round", f.Name, float64(f.Width.Low), float64(f.Width.High)))
	}
	sides := []partspec.End{f.From}
	if f.Through {
		sides = []partspec.End{partspec.Right, partspec.Left}
	}
	for _, e := range sides {
		w := c.millWay(e, tool)
		w.Rate = c.millRate(size, c.slotDepth(size), tool.Tool) // the whole width at once: as fast as the motor bears
		w.DeepMM, w.ForceAt = depth, size/2
		w.ForceN = c.milledForce(w.Rate.DepthMM, size, size, w.Rate.FeedMM)
		w.Span = [2]float64{groove.Z0, groove.Z1}
		w.Minutes = minutesTrial + float64(len(slotTracks(groove, size))*passes(depth+through, w.Rate.DepthMM))*(groove.Length()/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeFlatSlot(f, t, w, groove, depth, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

// slotMill is the end mill for a slot: one of its width, else the largest smaller one whose passes, one down the middle and one along each side, leave no more standing in
// the round ends than the limits of the width allow.
func (c *Context) slotMill(f *partspec.Slot) (millingCutter, bool) {
	if tool, size, ok := c.sized(partspec.EndMill, float64(f.Width.Low), float64(f.Width.High)); ok {
		return millingCutter{tool, partspec.EndMill, size}, true
	}
	for _, m := range c.endMills() {
		if m.size < float64(f.Width.Low) && roundEnded(float64(f.Width.Mid())/2, float64(f.Width.Low)/2, m.size/2, c.graduationOff()) {
			return m, true
		}
	}
	return millingCutter{}, false
}

// roundEnded reports whether a cutter of a radius, set beside and beyond the end of a slot by what it is too small, opens a round of the least radius: between the two
// directions the most metal stands at 45 degrees, at the distance d from the cutter's middle,
//
//	d² = low² - 2 low e cos 45° + e²,  e = half - radius
//
// Plane geometry; all in mm.
func roundEnded(half, low, radius, off float64) bool {
	e := half - radius
	return math.Sqrt(low*low-math.Sqrt2*low*e+e*e) <= radius-off
}

// slotTrack is a pass along a slot.
type slotTrack struct {
	where          string
	x0, y0, x1, y1 float64
	from, to       stand
}

// slotTracks are the passes of a cutter along a slot: down the middle, and where it is smaller, so much beyond both ends and along both sides.
func slotTracks(g shape.Groove, size float64) []slotTrack {
	e := g.Radius - size/2
	if e < sizeNoise || g.Length() < sizeNoise {
		return []slotTrack{{x0: g.X0, y0: g.Y0, x1: g.X1, y1: g.Y1}}
	}
	ux, uy := (g.X1-g.X0)/g.Length()*e, (g.Y1-g.Y0)/g.Length()*e
	return []slotTrack{
		{where: ", middle", x0: g.X0 - ux, y0: g.Y0 - uy, x1: g.X1 + ux, y1: g.Y1 + uy},
		{where: ", one side", x0: g.X0 - uy, y0: g.Y0 + ux, x1: g.X1 - uy, y1: g.Y1 + ux},
		{where: ", other side", x0: g.X0 + uy, y0: g.Y0 - ux, x1: g.X1 + uy, y1: g.Y1 - ux},
	}
}

// slotStands puts the ends of passes on the dials, so that the moving dial counts up.
func (p *page) slotStands(tracks []slotTrack) []slotTrack {
	for i := range tracks {
		t := &tracks[i]
		if (t.x1-t.x0)*p.sense("x")+(t.y1-t.y0) < 0 {
			t.x0, t.y0, t.x1, t.y1 = t.x1, t.y1, t.x0, t.y0
		}
		t.from, t.to = p.overDials(tidyMM(t.x0), tidyMM(t.y0)), p.overDials(tidyMM(t.x1), tidyMM(t.y1))
	}
	return tracks
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
	all, reached := p.sunk(depth, f.Through)
	metal := depth
	if f.Through {
		metal -= through // the last layer comes out below
	}
	solid, _ := p.sunk(metal, f.Through)
	n := p.layersOf(solid, w.PassMM(j.Light))
	layer := func(k int64) int64 {
		if k == n {
			return all
		}
		return solid * k / n
	}
	tracks := p.slotStands(slotTracks(g, w.SizeMM))
	for k := int64(1); k <= n; k++ {
		q := layer(k)
		p.line(passName(int(k), int(n)), p.quill(), q, p.both(float64(q)*float64(p.dial(p.quill()).Graduation.Value), p.quill())+" deep", "", false)
		for _, t := range tracks {
			name := passName(int(k), int(n)) + t.where
			p.op.Cuts = append(p.op.Cuts,
				plan.Cut{Name: name + ", down", From: withReading(t.from.at, p.quill(), layer(k-1)), To: withReading(t.from.at, p.quill(), q)},
				plan.Cut{Name: name, From: withReading(t.from.at, p.quill(), q), To: withReading(t.to.at, p.quill(), q)})
		}
	}
	for _, t := range tracks {
		for _, end := range []struct {
			word string
			at   stand
		}{{"begin at", t.from}, {"run to", t.to}} {
			p.line(end.word+t.where, "x", countOf(end.at.at, "x"), "middle of the cutter", "", false)
			p.line(end.word+t.where, "y", countOf(end.at.at, "y"), "middle of the cutter", "", false)
		}
	}
	p.note("An end mill that cuts at its centre; down at the beginning, then along, every pass the same way.")
	p.why("approached one way", "C-08")
	p.op.Checks = append(p.op.Checks, c.check(f.Name+", width", f.Name, f.Width, insideCheck))
	made := g
	if len(tracks) == 1 {
		made.Radius = w.SizeMM / 2
	}
	if !f.Through {
		made.Z0, made.Z1 = ordered(top, top+into(w.End)*reached)
		p.op.Checks = append(p.op.Checks, c.check(f.Name+", depth", f.Name, f.Depth, depthCheck))
	}
	p.done.Flat = &shape.FlatCut{Slots: []shape.Groove{made}}
	return p.finish()
}
