package planner

import (
	"fmt"
	"maps"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/sequence"
	"catchplate/planner/shape"
)

// flatWriter is what a writer keeps of a flat part as it goes.
type flatWriter struct {
	flat  shape.Flat
	table []plan.Zero // noughts of the table in the setup at hand
	held  heldStay
}

// heldStay is all that is done while a holding holds, be it in several setups because the dials are set anew, and what was done before.
type heldStay struct {
	mount string
	steps []sequence.Step
	done  map[int]bool
}

// noteHeld notes what a holding is to be put on for: the stays that follow one another in it.
func (w *writer) noteHeld(stays [][]sequence.Step) {
	mountOf := func(stay []sequence.Step) string { return w.mounts[w.choice(stay[0]).mount].ID }
	if id := mountOf(stays[0]); id != w.held.mount {
		w.held = heldStay{mount: id, done: maps.Clone(w.done)}
		for _, stay := range stays {
			if mountOf(stay) != id {
				break
			}
			w.held.steps = append(w.held.steps, stay...)
		}
	}
}

// flatStock tells the metal of a flat part.
func (w *writer) flatStock() {
	st, u, f := w.ctx.Part.Stock, unitOf(w.ctx.Part), w.ctx.Flat
	x0, y0, x1, y1 := f.Rim().Bounds()
	flat := w.flatNow()
	s := plan.Stock{Kind: st.Kind.String(), Flat: &flat, LeftZ: tidy(f.Back), RightZ: tidy(f.Front), LengthMM: math.Ceil(tidy(y1 - y0))}
	wide, high := x1-x0, y1-y0
	if st.Width.Value == 0 {
		wide = asked(wide, f.SideLeft(shape.Left)+f.SideLeft(shape.Right), u)
	}
	if st.Length.Value == 0 {
		high = asked(high, f.SideLeft(shape.Bottom)+f.SideLeft(shape.Top), u)
	}
	s.Text = fmt.Sprintf("%s %s thick, a piece %s by %s", st.Kind, inUnit(f.Front-f.Back, u), units.Length(tidy(wide)).Text(u), units.Length(tidy(high)).Text(u))
	if st.Kind == partspec.Casting {
		s.Text = fmt.Sprintf("casting, %s of metal on every face", inUnit(float64(st.Metal), u))
	}
	w.out.Stock = s
}

// asked is the size of a piece to fetch where the drawing gives none: if it is trimmed in any case, up to the next whole millimetre, or sixteenth of an inch.
func asked(mm, trimmed float64, u units.Unit) float64 {
	step := 1.0
	if u == units.InInch {
		step = float64(units.Inch) / 16
	}
	if trimmed == 0 {
		return mm
	}
	return math.Ceil(tidy(mm/step)) * step
}

func inUnit(mm float64, u units.Unit) string { return units.Length(mm).Round(3).Text(u) }

// flatNow is the flat part as it now is, for a sketch.
func (w *writer) flatNow() plan.Flat {
	f := w.flat
	out := plan.Flat{BackZ: tidy(f.Back), FrontZ: tidy(f.Front), Holes: append([]plan.FlatHole{}, w.beside...)}
	for _, e := range f.Rim().Edges {
		s := plan.OutlineSegment{X0: tidy(e.X0), Y0: tidy(e.Y0), X1: tidy(e.X1), Y1: tidy(e.Y1)}
		if e.IsArc() {
			s.RadiusMM, s.CentreX, s.CentreY, s.Hollow = tidy(e.Radius), tidy(e.CX), tidy(e.CY), e.Hollow
		}
		mx, my := e.At(0.5)
		for i, d := range f.Drawn.Edges {
			if _, _, off := d.Nearest(mx, my); math.Abs(off-f.Left[i]) < nameNoise && d.IsArc() == e.IsArc() {
				s.Name = w.ctx.Part.Outline.Edges[i].Name
				break
			}
		}
		out.Outline = append(out.Outline, s)
	}
	for _, g := range f.Slots {
		out.Slots = append(out.Slots, plan.FlatSlot{X0: tidy(g.X0), Y0: tidy(g.Y0), X1: tidy(g.X1), Y1: tidy(g.Y1), WidthMM: tidy(2 * g.Radius), FromZ: tidy(g.Z0), ToZ: tidy(g.Z1)})
	}
	for _, s := range f.Seats {
		out.Seats = append(out.Seats, plan.FlatSeat{Feature: s.Feature, On: holding.FaceName(s.On), AlongY: s.AlongY, MiddleMM: tidy(s.Middle), RadiusMM: tidy(s.Radius), AcrossMM: tidy(s.Across), DepthMM: tidy(s.Depth)})
	}
	return out
}

// nameNoise is how near to where it should stand an edge of the work lies to bear the drawn edge's name.
const nameNoise = 1e-6

// flatSteps are steps of the order as a holding sees them.
func (o *ordering) flatSteps(steps []sequence.Step) []holding.FlatStep {
	var list []holding.FlatStep
	for _, s := range steps {
		c := o.alts[s.Op][s.Alt]
		list = append(list, holding.FlatStep{Task: s.Op, Way: *c.way, Light: c.light})
	}
	return list
}

// flatStays splits a stay of a flat part on the mill where the dials are set anew, because the edges that coordinates begin at have just been made.
func (o *ordering) flatStays(steps []sequence.Step, before map[int]bool) [][]sequence.Step {
	var out [][]sequence.Step
	done := map[int]bool{}
	for k := range before {
		done[k] = true
	}
	from := 0
	for from < len(steps) {
		to := from + 1
		m := o.mounts[o.alts[steps[from].Op][steps[from].Alt].mount]
		for to < len(steps) && !o.counted(m, steps[to].Op, done) {
			to++
		}
		out = append(out, steps[from:to])
		for _, s := range steps[from:to] {
			done[s.Op] = true
		}
		from = to
	}
	return out
}

// counted reports whether an operation on the mill is counted from datum edges that were not all there when the stay began.
func (o *ordering) counted(m holding.Mount, task int, before map[int]bool) bool {
	t := o.shop.Tasks[task]
	if m.Machine != partspec.Mill || t.Process == plan.MillFace || o.datumsDone(before) {
		return false
	}
	if t.Flat == nil || len(t.Flat.Edges) == 0 {
		return true
	}
	for _, e := range t.Flat.Edges {
		for _, name := range o.ctx.Part.Outline.Datum {
			if o.ctx.Part.Outline.Edges[e.Edge].Name == name {
				return false
			}
		}
	}
	return true
}

// datumsDone reports whether every datum edge is at its place.
func (o *ordering) datumsDone(done map[int]bool) bool {
	for i, e := range o.ctx.Part.Outline.Edges {
		for _, name := range o.ctx.Part.Outline.Datum {
			if e.Name == name && o.ctx.Flat.Left[i] > nameNoise && !o.edgeDone(i, done) {
				return false
			}
		}
	}
	return true
}

func (o *ordering) edgeDone(edge int, done map[int]bool) bool {
	for i, t := range o.shop.Tasks {
		if t.Flat == nil || t.Stage != shape.Finishing || !done[i] {
			continue
		}
		for _, e := range t.Flat.Edges {
			if e.Edge == edge {
				return true
			}
		}
	}
	return false
}

// flatSetup fills in what a setup of a flat part has of its own.
func (w *writer) flatSetup(m holding.Mount, steps []sequence.Step, s *plan.Setup) {
	now := w.flatNow()
	s.FlatBefore = &now
	unfilled := *s
	w.shop.FlatSetup(m, w.flatSteps(w.held.steps), func(i int) bool { return w.held.done[i] }, s)
	if s.Grip.Eased != nil { // eased part way: each setup has a grip of its own
		*s = unfilled
		w.shop.FlatSetup(m, w.flatSteps(steps), func(i int) bool { return w.done[i] }, s)
	}
	s.Presses = onEdges(w.flat.Rim(), s.Presses)
	w.table = nil
	if m.Machine == partspec.Mill && w.byDials(steps) {
		var off float64
		w.table, off = w.edgesFound(m.Free)
		s.LocateMM = math.Max(s.LocateMM, math.Ceil(off*1e4)/1e4)
	}
}

// nearEdge is how far an edge may lie off its drawn place because a dial has no mark there, mm: more than the widest graduation.
const nearEdge = 0.1

// onEdges brings the jaws to where the edges now are: the next mark outside their drawn places.
func onEdges(rim plane.Region, presses []plan.Press) []plan.Press {
	for i, p := range presses {
		sin, cos := math.Sincos(p.AngleDeg * math.Pi / 180)
		for _, e := range rim.Edges {
			ox, oy := e.Outward(0)
			off := (e.X0-p.XMM)*cos + (e.Y0-p.YMM)*sin
			if !e.IsArc() && ox*cos+oy*sin > 1-nameNoise && math.Abs(off) < nearEdge {
				presses[i].XMM, presses[i].YMM = tidy(p.XMM+off*cos), tidy(p.YMM+off*sin)
				break
			}
		}
	}
	return presses
}

func (w *writer) flatOperation(done process.Done, task int) {
	cut := w.shop.Tasks[task].Flat
	if done.Flat != nil {
		cut = done.Flat
	}
	if cut != nil {
		w.flat = cut.Apply(w.flat)
	}
}
