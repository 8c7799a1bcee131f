package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// tapHole taps a hole: its core must be there, to size, and the taps of its thread owned.
func (w *walk) tapHole(op plan.Operation, h *drilled, a aside) {
	w.removing[a.key] = true
	switch {
	case h.thread == nil:
		w.failOp("thread", "hole %d of %s has no thread on the drawing", h.number, h.id)
		return
	case h.tapped != nil:
		w.failOp("thread", "hole %d of %s is tapped twice", h.number, h.id)
		return
	case !h.full():
		w.failOp("blank", "hole %d of %s is tapped before it is drilled", h.number, h.id)
		return
	}
	t := *h.thread
	t.Inside, t.Name = true, h.id
	w.checkThreadTool(op, &t)
	w.follow(h, a)
	if d := 2 * h.widest(); d < float64(h.diameter.Low)-same || d > float64(h.diameter.High)+same {
		w.failOp("blank", "the core of hole %d of %s is Ø%s now; it must be Ø%s to Ø%s", h.number, h.id, mm(d), mm(float64(h.diameter.Low)), mm(float64(h.diameter.High)))
	}
	h.tapped = &a
}

// checkTapped holds, when all is done, that a tapped hole has its full thread, and room below it for the tap's lead.
func (w *walk) checkTapped(at where, h *drilled, metal metalAlong) {
	if h.thread == nil {
		return
	}
	if h.tapped == nil {
		w.fail(where{}, "finished part", "hole %d of %s is never tapped", h.number, h.id)
		return
	}
	mouth, ok := metal.mouth(h)
	if !ok {
		return
	}
	up := h.tapped.pose.up()
	out := metal.out(h, h.widest())
	if up != h.pose.up() {
		mouth, out = out, mouth
	}
	deep := up*mouth - up*h.tapped.to[2]
	need := float64(h.thread.Length.Low)
	_, _, through := metal.depth()
	if through {
		need = math.Min(need, up*mouth-up*out)
	}
	if deep < need-same {
		w.fail(h.tapped.at, "thread", "hole %d of %s is tapped %s deep; its full thread is %s", h.number, h.id, mm(deep), mm(need))
	}
	if through {
		return
	}
	full, point := h.deepest()
	p := float64(h.thread.Thread.Pitch)
	if room := up*mouth - full - need; room < tapLeadPitches*p-same {
		w.fail(at, "run-out", "hole %d of %s has %s mm below its full thread; the tap's lead needs %s (rule C-28)", h.number, h.id, mm(room), mm(tapLeadPitches*p))
	}
	if up*h.tapped.to[2] < point-same {
		w.fail(h.tapped.at, "thread", "the tap runs on the floor of hole %d of %s", h.number, h.id)
	}
}

// markOut marks the places of a pattern at the bench.
func (w *walk) markOut(i, k int, op plan.Operation, f partspec.Feature) {
	list := w.aimsOf(f, w.poseOf())
	w.checkPasses(op)
	for _, l := range op.Holes {
		if l.X != (plan.Line{}) || l.Y != (plan.Line{}) {
			w.failOp("table", "hole %d has a reading; marks are scribed from the work", l.Number)
		}
	}
	for c, cut := range op.Cuts {
		w.removing[cutKey{i, k, c}] = true // it scratches the surface
		if cut.At == nil {
			w.failOp("place", "mark %q does not say where", cut.Name)
			continue
		}
		w.checkAt(*cut.At)
		if _, seat := f.(*partspec.Seat); seat { // the line that says which way round it lies goes through the part's axis
			if math.Hypot(cut.At.XMM, cut.At.YMM) > figure {
				w.failOp("place", "mark %q stands at %s, %s; the pipe's axis crosses the part's", cut.Name, mm(cut.At.XMM), mm(cut.At.YMM))
			}
			continue
		}
		goal, off := nearestAim(list, cut.At.XMM, cut.At.YMM)
		if off > figure {
			w.failOp("place", "mark %q stands at %s, %s; no hole of %s is drawn there", cut.Name, mm(cut.At.XMM), mm(cut.At.YMM), f.Head().ID())
			continue
		}
		key := markKey{holeKey{op.Feature, goal.number}, w.free()}
		if w.punched[key] {
			w.failOp("place", "hole %d of %s is marked twice", goal.number, goal.id)
		}
		w.punched[key] = true
	}
	w.checkNumbersOf(op, f)
}

// markKey is a mark on one face of the work.
type markKey struct {
	holeKey
	face float64
}

// checkMarked holds that a mark is there where a tool is set by one.
func (w *walk) checkMarked(h *drilled, a aside) {
	if a.by != byPunch && a.by != byScribe && a.by != byMate {
		return
	}
	if !w.punched[markKey{holeKey{a.feature, h.number}, w.free()}] {
		w.failOp("start", "cut %q is set by a %s, which nobody has made on this face", a.name, a.by)
	}
}

// checkNumbersOf holds that the table gives each hole the number and the place of the drawing.
func (w *walk) checkNumbersOf(op plan.Operation, f partspec.Feature) {
	for _, l := range op.Holes {
		found := false
		for _, a := range w.aimsOf(f, w.drawnPose()) {
			found = found || a.number == l.Number && math.Abs(float64(a.x.Value)-l.XMM) <= figure && math.Abs(float64(a.y.Value)-l.YMM) <= figure
		}
		if !found {
			w.failOp("table", "hole %d of %s is not drawn at %s, %s", l.Number, f.Head().ID(), mm(l.XMM), mm(l.YMM))
		}
	}
	for _, c := range op.Chords {
		if most := w.spread(f, c.From) + w.spread(f, c.To); c.WithinMM > most+figure {
			w.failOp("table", "holes %d and %d are to be measured within %s; their places allow %s", c.From, c.To, mm(c.WithinMM), mm(most))
		}
	}
}

// drawnPose is the pose that the places of the table of holes are drawn in: that of the setup before it is set over.
func (w *walk) drawnPose() pose {
	p := w.poseOf()
	p.leans = false
	return p
}

// spread is how far a hole may lie from its place at most.
func (w *walk) spread(f partspec.Feature, number int) float64 {
	for _, a := range w.aimsOf(f, w.drawnPose()) {
		if a.number == number {
			return math.Max(a.within, math.Hypot(float64(a.x.Width()), float64(a.y.Width()))/2)
		}
	}
	return 0
}
