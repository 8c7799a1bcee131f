package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
	"catchplate/planner/tables"
)

const (
	// runOutPitches is the room beyond a full thread in which a die or a tool comes out before a shoulder. Rule C-28 asks for 1.5 to 2.5; a drawing may
	// give less, but never less than one.
	runOutPitches = 1.0
	// tapLead is the length of a plug tap's lead, in pitches, and one pitch to spare.
	tapLeadPitches = 3.0
)

// markBlank checks the blank of a thread or a knurl, and marks it.
func (w *walk) markBlank(op plan.Operation) {
	switch f := w.part.Feature(op.Feature).(type) {
	case *partspec.Thread:
		w.checkThreadTool(op, f)
		if op.Process == plan.Die && (w.setup.Tailstock || w.setup.Grip.Kind == "centres") {
			w.failOp("tailstock", "a die comes on over the end that a centre stands in")
		}
		w.checkBlank(f.On, f.Span, f.Inside, 0)
		w.checkRunOut(op.Process, f)
		w.checkReliefFirst(f)
		w.checkMarkedWithin(f.Name, float64(f.Span.Left), float64(f.Span.Right), f.Inside, float64(f.Thread.MinorInt)/2-float64(f.Thread.Pitch)/2)
		w.mark(f.Name, f.Inside, f.Span)
	case *partspec.Knurl:
		w.checkKnurlTool(op, f)
		w.checkBlank(f.On, f.Span, false, knurlUnder*float64(f.Pitch))
		w.checkMarkedWithin(f.Name, float64(f.Span.Left), float64(f.Span.Right), false, 0)
		w.mark(f.Name, false, f.Span)
	default:
		w.failOp("thread", "%q is no thread or knurl of the part", op.Feature)
	}
}

func (w *walk) mark(name string, inside bool, s partspec.Span) {
	if w.marked(name) {
		w.failOp("thread", "%s is there already", name)
	}
	w.marks = append(w.marks, mark{name, inside, float64(s.Left), float64(s.Right)})
}

// checkBlank holds that the surface to be threaded or knurled is to size now.
func (w *walk) checkBlank(on string, s partspec.Span, inside bool, under float64) {
	size, ok := blankOf(w.part.Feature(on))
	if !ok {
		return
	}
	// The faces beside it may lie a little otherwise than drawn, and corners are rounded: look at the inner part of the stretch.
	margin := float64(s.Length()) / 4
	lo, hi := float64(s.Left)+margin, float64(s.Right)-margin
	surface := w.body.Outer
	if inside {
		surface = w.body.Inner
	}
	low, high := 2*surface.Least(lo, hi), 2*surface.Greatest(lo, hi)
	if w.grooved(on, lo, hi) {
		low = high
	}
	if low < float64(size.Low)-under-same || high > float64(size.High)+same {
		w.failOp("blank", "the blank on %s is Ø%s to Ø%s now; it must be Ø%s to Ø%s", on, mm(low), mm(high), mm(float64(size.Low)-under), mm(float64(size.High)))
	}
}

// grooved reports whether a groove lies on a feature between two places.
func (w *walk) grooved(on string, lo, hi float64) bool {
	for _, f := range w.part.Features {
		if g, ok := f.(*partspec.Groove); ok && g.On == on && float64(g.Span.Left) < hi && float64(g.Span.Right) > lo {
			return true
		}
	}
	return false
}

func blankOf(f partspec.Feature) (partspec.Size, bool) {
	if f == nil {
		return partspec.Size{}, false
	}
	if s, ok := f.(*partspec.Spigot); ok {
		return s.Diameter, true
	}
	return diameterOf(f)
}

func (w *walk) checkThreadTool(op plan.Operation, f *partspec.Thread) {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil {
		w.failOp("tool", "%v", err)
		return
	}
	want := map[plan.Process]partspec.ToolKind{plan.Tap: partspec.Taps, plan.Die: partspec.Dies, plan.Thread: partspec.ThreadExternal}[op.Process]
	if op.Process == plan.Thread && f.Inside {
		want = partspec.ThreadInternal
	}
	if op.Process == plan.Knurl || c.Kind != want || f.Inside && op.Process == plan.Die || !f.Inside && op.Process == plan.Tap {
		w.failOp("tool", "a %s does not make %s", c.Kind, f.Name)
		return
	}
	if op.Process != plan.Thread {
		w.checkSizeOfTaps(op, float64(f.Thread.Major))
		if !cuts(c.Tool, f.Thread) {
			w.failOp("tool", "%s has no %s", c.Name, f.Thread.Designation)
		}
		return
	}
	p := float64(f.Thread.Pitch)
	if p < float64(c.LeastPitch)-same || p > float64(c.MostPitch)+same {
		w.failOp("tool", "the pitch is %s; %s cuts %s to %s", mm(p), c.Name, mm(float64(c.LeastPitch)), mm(float64(c.MostPitch)))
	}
	if w.machine.LeadscrewPitch == 0 {
		w.failOp("tool", "%s has no leadscrew to cut a thread by", w.machine.Name)
	}
}

// cuts reports whether a tap or die set has a thread.
func cuts(t partspec.Tool, want tables.Thread) bool {
	for _, name := range t.Threads {
		if have, err := tables.FindThread(name); err == nil && have.Designation == want.Designation {
			return true
		}
	}
	return false
}

func (w *walk) checkKnurlTool(op plan.Operation, f *partspec.Knurl) {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil || c.Kind != partspec.KnurlTool {
		w.failOp("tool", "%q is no knurling tool of the workshop", op.Tool.ID)
		return
	}
	for _, p := range c.Pitches {
		if math.Abs(float64(p-f.Pitch)) <= figure {
			return
		}
	}
	w.failOp("tool", "%s has no wheels of pitch %s", c.Name, mm(float64(f.Pitch)))
}

// checkRunOut holds that a thread has room to run out: outside, no shoulder close beyond its end; inside, hole beyond it.
func (w *walk) checkRunOut(by plan.Process, f *partspec.Thread) {
	p := float64(f.Thread.Pitch)
	end, dir := float64(f.Span.Left), -1.0
	if f.From == partspec.Left {
		end, dir = float64(f.Span.Right), 1
	}
	if !f.Inside {
		lo, hi := math.Min(end, end+dir*runOutPitches*p), math.Max(end, end+dir*runOutPitches*p)
		wall := w.body.Outer.Greatest(lo+offSurface, hi-offSurface)
		crest := float64(f.Thread.Major) / 2
		if wall > crest+same && !w.relieved(f, end, dir) {
			w.failOp("run-out", "the full thread goes up to a shoulder of Ø%s with no groove: it needs %s mm of room or relief", mm(2*wall), mm(runOutPitches*p))
		}
		return
	}
	room := tapLeadPitches * p
	if by == plan.Thread {
		room = runOutPitches * p
	}
	lo, hi := math.Min(end, end+dir*room), math.Max(end, end+dir*room)
	z0, z1 := w.body.Ends()
	lo, hi = math.Max(lo, z0), math.Min(hi, z1)
	if hi-lo <= offSurface {
		return // through
	}
	if hole := w.body.Inner.Least(lo+offSurface, hi-offSurface); hole < float64(f.Thread.MinorInt)/2-float64(p)/2 {
		w.failOp("run-out", "the hole is Ø%s within %s mm beyond the full thread: the tool needs room there (rule C-28)", mm(2*hole), mm(room))
	}
}

// checkReliefFirst holds that a groove or recess that is drawn at the end of the thread is there before the thread (rule A-13).
func (w *walk) checkReliefFirst(f *partspec.Thread) {
	end := float64(f.Span.Left)
	if f.From == partspec.Left {
		end = float64(f.Span.Right)
	}
	p := float64(f.Thread.Pitch)
	for _, g := range w.part.Features {
		left, right, ok := spanOf(g)
		if !ok || left > end+p || right < end-p {
			continue
		}
		mid := (left + right) / 2
		there := true
		switch g := g.(type) {
		case *partspec.Groove:
			there = g.On != f.On || 2*w.body.Outer.Least(mid-offSurface, mid+offSurface) <= float64(g.Bottom.High)+same
		case *partspec.Recess:
			there = g.On != f.On || 2*w.body.Inner.Greatest(mid-offSurface, mid+offSurface) >= float64(g.Diameter.Low)-same
		}
		if !there {
			w.failOp("run-out", "%s, where the thread runs out, is not cut yet (rule A-13)", g.Head().ID())
		}
	}
}

// relieved reports whether the last stretch of the thread before a shoulder is a groove down to its core.
func (w *walk) relieved(f *partspec.Thread, end, dir float64) bool {
	p := float64(f.Thread.Pitch)
	a, b := math.Min(end, end-dir*p), math.Max(end, end-dir*p)
	return w.body.Outer.Greatest(a+p/4, b-p/4) <= float64(f.Thread.CoreExt)/2+same
}

// checkMarks holds that no cut goes through a thread or knurl that is there already.
func (w *walk) checkMarks(before solid.Body) {
	for _, m := range w.marks {
		lo, hi := m.z0+(m.z1-m.z0)/4, m.z1-(m.z1-m.z0)/4
		l := solid.Lost(before.Keep(lo, hi), w.body.Keep(lo, hi), same)
		if m.inside && l.Inside > same || !m.inside && l.Outside > same || l.Whole > same {
			w.failOp("thread", "it cuts away %s, which is threaded or knurled already", m.feature)
		}
	}
}
