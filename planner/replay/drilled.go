package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// aim is a hole as drawn beside or across the axis, in the frame of the pose it is drilled in.
type aim struct {
	id       string // of its feature
	number   int    // within its pattern, from 1
	x, y     partspec.Size
	within   float64 // how far it may lie from its place, radially; 0 = by the limits of x and y
	ring     float64 // of a hole of a ring: how far the ring's middle may lie off, beside those
	diameter partspec.Size
	thread   *partspec.Thread
	sink     *partspec.Sink
	mated    bool     // it lies where the hole of another part does
	lean     *leaning // it is square to a seat
}

// drilled is a hole as it has been made so far.
type drilled struct {
	aim
	pose   pose
	x, y   float64 // where it really is, as far as is known
	off    float64 // how far from there it may lie, radially
	less   float64 // how much less that is along either axis
	shared float64 // of it, what all that was made in its setting shares
	placed bool    // something has begun it
	marked bool    // by a mark, or a spot: a drill finds a start
	steps  []aside // the tools that went down it, in order
	tapped *aside
}

// holeKey names a hole: its feature, and its number.
type holeKey struct {
	feature string
	number  int
}

// aimsOf are the holes of a feature, in the frame of a pose.
func (w *walk) aimsOf(f partspec.Feature, p pose) []aim {
	switch f := f.(type) {
	case *partspec.Holes:
		if p.leans && f.SquareTo != "" {
			return w.leaningAims(f, p)
		}
		var list []aim
		for i, at := range f.Places {
			list = append(list, aim{id: f.ID(), number: i + 1, x: at.X, y: at.Y, within: float64(f.Within), ring: ringOff(f), diameter: f.Diameter, thread: f.Thread, sink: f.Sink, mated: f.Mate != nil})
		}
		return list
	case *partspec.CrossHole:
		return []aim{{id: f.ID(), number: 1, x: f.Z, y: w.onAxis(w.widthOf(f.On)), diameter: f.Diameter, thread: f.Thread}}
	}
	return nil
}

// nearestAim is the hole that a place is meant for.
func nearestAim(list []aim, x, y float64) (aim, float64) {
	var best aim
	off := math.Inf(1)
	for _, a := range list {
		if d := math.Hypot(x-float64(a.x.Value), y-float64(a.y.Value)); d < off {
			best, off = a, d
		}
	}
	return best, off
}

// drillHole takes a tool down a drawn hole.
func (w *walk) drillHole(op plan.Operation, f partspec.Feature, a aside) {
	if !w.checkDirection(f, a) {
		return
	}
	a = w.turnedAside(f, a)
	goal, off := nearestAim(w.aimsOf(f, a.pose), a.to[0], a.to[1])
	if _, moves := a.slot(); moves || off > float64(goal.diameter.Value)/2 {
		w.failOp("place", "cut %q stands at %s, %s; no hole of %s is drawn there", a.name, mm(a.to[0]), mm(a.to[1]), f.Head().ID())
		return
	}
	key := holeKey{op.Feature, goal.number}
	h := w.holes[key]
	if h == nil {
		h = &drilled{aim: goal, pose: a.pose}
		w.holes[key] = h
		w.holeOrder = append(w.holeOrder, key)
	}
	switch {
	case op.Process == plan.Tap:
		w.tapHole(op, h, a)
		return
	case h.tapped != nil:
		w.failOp("thread", "cut %q goes down hole %d, which is tapped already", a.name, h.number)
	}
	w.follow(h, a)
	w.checkStep(op, h, a)
	w.checkBackwards(h, a)
	if h.deepens(a) {
		w.removing[a.key] = true
	}
	h.steps = append(h.steps, a)
}

// checkDirection holds that the tool comes from where the hole is drawn from.
func (w *walk) checkDirection(f partspec.Feature, a aside) bool {
	switch f := f.(type) {
	case *partspec.Holes:
		if a.pose.across {
			w.failOp("pose", "%s lies along the axis; the work lies across", f.ID())
			return false
		}
		if a.pose.leans != (f.SquareTo != "") {
			w.failOp("pose", "%s runs %s; the work %s", f.ID(), runs(f), a.pose.stands())
			return false
		}
		from := f.From == partspec.Left
		if looks := a.pose.free < 0; looks != from && (!f.Through || f.Sink != nil && (a.process == plan.Counterbore || a.process == plan.Countersink)) {
			w.failOp("pose", "%s goes in from the %s end; the other looks at the spindle", f.ID(), f.From)
			return false
		}
	case *partspec.CrossHole:
		if !a.pose.across {
			w.failOp("pose", "%s lies across the axis; the work stands upright", f.ID())
			return false
		}
		if turn := turnBetween(a.pose.deg, float64(f.Angle)); turn > math.Max(sameAngle, a.pose.coarse) && !(f.Through && 180-turn <= sameAngle) {
			w.failOp("pose", "%s is drawn at %s degrees; the spindle stands at %s", f.ID(), mm(float64(f.Angle)), mm(a.pose.deg))
			return false
		}
	}
	return true
}

// runs is which way holes run, in words.
func runs(f *partspec.Holes) string {
	if f.SquareTo != "" {
		return "square to " + f.SquareTo
	}
	return "along the axis"
}

// followed is how far from a hole a tool that follows it may stand by its dials: the drill finds it. Common practice, no source.
const followed = 0.05

// guided reports whether a tool follows the hole that it finds.
func (a aside) guided() bool {
	switch a.Kind {
	case partspec.Drills, partspec.Reamers, partspec.Counterbores, partspec.Countersink, partspec.CentreDrill, partspec.HoleSaw, partspec.Taps:
		return true
	}
	return false
}

// follow keeps where a hole is. The first tool places it; those that are guided follow; a boring head or a milling cutter makes it anew where it stands, and must
// clean all of the old one up.
func (w *walk) follow(h *drilled, a aside) {
	x, y := a.to[0], a.to[1]
	switch {
	case !h.placed && a.by == byHole:
		w.failOp("start", "cut %q is to stand in a hole at %s, %s; there is none", a.name, mm(x), mm(y))
	case !h.placed:
		h.x, h.y, h.off = x, y, a.within+a.wander()
		h.less, h.shared = a.less, a.shared()
		h.marked = a.by == byPunch || a.by == byScribe || a.by == byMate || a.Kind == partspec.CentreDrill
		w.checkMarked(h, a)
	case a.guided():
		if apart := math.Hypot(x-h.x, y-h.y); apart > followed {
			w.failOp("place", "cut %q stands %s from the hole that it is to follow", a.name, mm(apart))
		}
		if !h.marked && !h.guides() { // a flat that a milling cutter has left leads no drill
			h.off, h.less, h.shared = math.Max(h.off, a.within+a.wander()), math.Min(h.less, a.less), math.Min(h.shared, a.shared())
		}
	default:
		if apart := math.Hypot(x-h.x, y-h.y) + h.off + a.within; apart+h.widest() > a.radius+same && h.full() {
			w.failOp("place", "cut %q, Ø%s, may not clean up the hole of Ø%s that lies up to %s off it", a.name, mm(2*a.radius), mm(2*h.widest()), mm(apart))
		}
		h.x, h.y, h.off, h.less, h.shared = x, y, a.within, a.less, a.shared()
	}
	h.placed = true
}

// guides reports whether a tool that is guided, or a boring head, has gone down: what comes after follows it.
func (h *drilled) guides() bool {
	for _, s := range h.steps {
		if s.guided() || s.Kind == partspec.BoringHead {
			return true
		}
	}
	return false
}

// widest is the radius of the widest tool that went all the way down.
func (h *drilled) widest() float64 {
	r := 0.0
	for _, s := range h.steps {
		if s.bores() {
			r = math.Max(r, s.radius)
		}
	}
	return r
}

// bores reports whether a tool makes the hole itself rather than its mouth.
func (a aside) bores() bool {
	switch a.process {
	case plan.Spot, plan.Counterbore, plan.Countersink, plan.Tap:
		return false
	}
	return a.Kind != partspec.CentreDrill
}

// full reports whether the hole has its depth in metal yet, not only a spot.
func (h *drilled) full() bool { return h.widest() > 0 }

// deepens reports whether a tool takes more than those before it: it is wider, or goes deeper.
func (h *drilled) deepens(a aside) bool {
	up := a.pose.up()
	for _, s := range h.steps {
		if s.pose.up() != up {
			continue
		}
		if s.radius >= a.radius-same && up*(s.fullTo()-a.fullTo()) <= same && up*(s.to[2]-a.to[2]) <= same {
			return false
		}
	}
	return true
}

// fullTo is where along the spindle the full diameter ends.
func (m pass) fullTo() float64 { return m.to[2] + m.pose.up()*m.coneLong() }

// checkStep holds what a tool needs to go down: a start, a hole to follow, no more to take than it can.
func (w *walk) checkStep(op plan.Operation, h *drilled, a aside) {
	found := 2 * h.widest()
	size := 2 * a.radius
	switch a.Kind {
	case partspec.Drills:
		if !h.marked && found == 0 {
			w.failOp("start", "a drill of Ø%s starts on a plain surface: spot it or punch it first", mm(size))
		}
		if size > mostFromSolid && (found == 0 || size-found > mostDrillStep+same) {
			w.failOp("depth of cut", "a drill of Ø%s finds a hole of Ø%s: from solid at most Ø%s is drilled, and a hole is opened by at most %s at once (rule A-25)",
				mm(size), mm(found), mm(mostFromSolid), mm(mostDrillStep))
		}
	case partspec.HoleSaw:
		w.failOp("tool", "a hole saw opens plates, not round work")
	case partspec.Reamers:
		if found == 0 || size-found > mostForReamer+same || size <= found {
			w.failOp("depth of cut", "a reamer of Ø%s finds a hole of Ø%s; it takes at most %s off the diameter (rule A-27)", mm(size), mm(found), mm(mostForReamer))
		}
	case partspec.Counterbores, partspec.Countersink, partspec.BoringHead:
		if found == 0 {
			w.failOp("start", "a %s needs a hole to follow or to begin in", a.Kind)
		}
	case partspec.CentreDrill:
		if found > 0 {
			w.failOp("start", "hole %d is spotted when it has been drilled", h.number)
		}
	}
	if h.sink != nil && a.Kind == partspec.Countersink {
		size = math.Min(size, float64(h.sink.Diameter.High))
	}
	w.checkRim(op, a.pass, size)
}

// checkRim holds the speed of a tool's rim against the fastest that the table gives for metal and tool.
func (w *walk) checkRim(op plan.Operation, m pass, across float64) {
	most := fastest(w.part.Material, m.cutter)
	if most == 0 || op.RPM == 0 || op.RPM <= slowest(w.machine)+sameSpeed {
		return
	}
	if v := math.Pi * across * op.RPM / 1000; v > most*overSpeed {
		w.failOp("speed", "%s rev/min on Ø%s is %s m/min; %s is cut at up to %s with this tool", mm(op.RPM), mm(across), mm(math.Round(v*10)/10), w.part.Material.Name, mm(most))
	}
}

// checkBackwards holds that no larger tool has gone down before a smaller one, which then does nothing.
func (w *walk) checkBackwards(h *drilled, a aside) {
	if !h.deepens(a) {
		w.failOp("removes metal", "cut %q takes nothing: hole %d is that wide and deep already", a.name, h.number)
	}
}
