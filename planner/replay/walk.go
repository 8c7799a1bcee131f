package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// moment is the work just after a cut.
type moment struct {
	setup, op int // places in the plan
	body      solid.Body
}

// mark is a thread or a knurl on its blank.
type mark struct {
	feature string
	inside  bool
	z0, z1  float64
}

// walk follows the work through a plan, in one world.
type walk struct {
	*record
	job   *partspec.Job
	part  *partspec.Part
	plan  plan.Part
	world world

	body  solid.Body
	trace []moment // the stock, then after every cut
	marks []mark
	filed map[string]bool // profiles and rounded edges that have been filed
	spots []solid.Curve   // centre holes, as holes

	holes      map[holeKey]*drilled // beside and across the axis
	holeOrder  []holeKey            // in the order in which they were begun
	milled     []aside              // seats, flats and slots, pass by pass
	seats      map[string]*seatSeen // of them, as looked at along the pipe's axis
	seatSet    map[string]float64   // where the dials have the axis of a seat's pipe, across it
	punched    map[markKey]bool
	spotted    map[string]float64 // patterns spotted through from another part, and the drill that did it
	filedAfter map[string]int     // how many passes of a seat came before the file
	pushes     []push             // of this setup, off the lathe
	parted     bool               // the piece has been cut off in this setup
	fixed      bool               // a face has been made that places along the axis are counted from

	setup     plan.Setup
	turnedDeg float64    // by a dividing head, at the operation at hand
	mounted   solid.Body // the work when it was put in
	contact   float64    // length over which the grip touches
	lightly   bool       // so short that only light cuts may be taken
	rests     []rest     // for each setup so far, the finished face that it sits on
	located   []int      // for each setup so far, the setup in which the surface it is located on was cut; -1 for raw metal
	at        where
	machine   partspec.Machine
	holding   partspec.Holding

	zeros       map[string]nought
	zeroTool    string
	slackRadius float64 // how far a measured diameter may lie from the one the plan reckons with, in radius
	slackPlace  float64 // the same for a measured place

	removing map[cutKey]bool // cuts that have removed metal
	all      []load          // what every cut pushes with
	loads    []load          // those of this setup
	engaging engagement
	motion   int  // movements rebuilt
	whole    bool // flat work: it was followed to its end
}

// free is +1 when the right end points away from the headstock, else -1.
func (w *walk) free() float64 {
	if w.setup.FreeEnd == "left" {
		return -1
	}
	return 1
}

// failOp tells a failure of the operation at hand.
func (w *walk) failOp(clause, format string, a ...any) { w.fail(w.at, clause, format, a...) }

// run follows the whole plan.
func (w *walk) run() {
	w.body = w.stock()
	w.trace = []moment{{-1, -1, w.body}}
	for i, s := range w.plan.Setups {
		if !w.mount(s) {
			return
		}
		for k, op := range s.Operations {
			w.at = where{s.Number, op.ID}
			w.easing(op)
			w.operate(i, k, op)
		}
		w.at = where{setup: s.Number}
		w.release()
	}
}

// mount puts the work into a setup.
func (w *walk) mount(s plan.Setup) bool {
	w.setup, w.at = s, where{setup: s.Number}
	w.zeros, w.zeroTool, w.parted, w.loads, w.pushes = map[string]nought{}, "", false, nil, nil
	if s.FreeEnd != "left" && s.FreeEnd != "right" {
		w.failOp("pose", "the free end is %q: expected left or right", s.FreeEnd)
		return false
	}
	switch w.setup.Grip.Kind {
	case "mandrel", "split_mandrel", "glued_bore":
		w.setup.Grip.Inside = true
	}
	w.mounted, w.contact, w.lightly = w.body, 0, false
	if !w.findMachine() || !w.findHolding() {
		return false
	}
	w.turnedDeg = 0
	w.checkPose()
	w.checkDividing()
	if !w.checkTilt() {
		return false
	}
	w.checkWhole()
	w.checkGrip()
	w.checkEased()
	w.noteLocated()
	w.noteRest()
	return true
}

// checkWhole holds that the work is in one piece.
func (w *walk) checkWhole() {
	switch {
	case w.body.Empty():
		w.failOp("work", "nothing is left of the work")
	case !w.body.Whole():
		w.failOp("work", "the work is in more than one piece")
	}
}

// operate carries one operation out.
func (w *walk) operate(i, k int, op plan.Operation) {
	if w.parted && removes(op) {
		w.failOp("order", "the piece has been cut off already in this setup: it is no longer held")
		return
	}
	w.checkByHand(op)
	w.checkToolOfChain(op)
	if w.operateAside(i, k, op) {
		return
	}
	w.setZeros(op)
	w.checkDials(op)
	w.checkSpeed(op)
	before := w.body
	switch op.Process {
	case plan.Deburr:
	case plan.SawOff:
		w.saw(op, cutKey{i, k, 0})
		w.trace = append(w.trace, moment{i, k, w.body})
	case plan.FileProfile:
		w.file(op)
		w.trace = append(w.trace, moment{i, k, w.body})
	case plan.Thread, plan.Tap, plan.Die, plan.Knurl:
		w.markBlank(op)
	default:
		if len(op.Cuts) == 0 {
			w.failOp("cuts", "there is no cut in it, so nothing shows what it takes away")
		}
		w.checkStart(op)
		w.checkWorkedEnd(op)
		w.cuts(i, k, op)
		w.checkStepTable(op)
	}
	w.checkMarks(before)
	w.widen(op)
}

// removes reports whether an operation takes metal away, or marks it.
func removes(op plan.Operation) bool { return op.Process != plan.Deburr }

func (w *walk) cuts(i, k int, op plan.Operation) {
	var last motion
	for c, cut := range op.Cuts {
		m, ok := w.rebuild(op, cut, cutKey{i, k, c}, last)
		if !ok {
			return
		}
		w.motion++
		if c > 0 && last.to == m.from {
			// A tool led out along the face that it has just cut takes nothing more off, and need not.
			w.removing[m.key] = true
		}
		before := w.body
		w.body = m.apply(before)
		w.checkCut(op, m, before)
		w.checkMeasured(cut, m)
		w.checkShown(op, m)
		w.checkReach(m, before)
		w.checkGripClear(m, before)
		w.checkWasher(m, before)
		w.addLoad(op, m, before)
		if op.Process == plan.PartOff {
			w.cutOff(m)
		}
		if m.Kind == partspec.CentreDrill {
			w.spots = append(w.spots, m.inner)
		}
		w.trace = append(w.trace, moment{i, k, w.body})
		w.fixed = true
		last = m
	}
	if op.Process == plan.PartOff && !w.parted {
		w.failOp("parting", "the cut does not go through: metal still joins the piece to the bar")
	}
}

// cutOff takes away what lies towards the headstock of the cut, when the cut goes through.
func (w *walk) cutOff(m motion) {
	headstock, freeEnd := m.width()
	a, b := m.to.Z-w.free()*headstock, m.to.Z+w.free()*freeEnd
	lo, hi := math.Min(a, b), math.Max(a, b)
	if left := w.body.Keep(lo+same, hi-same); !left.Empty() || hi-lo < same {
		return
	}
	w.parted = true
	if w.free() > 0 {
		w.body = w.body.Keep((lo+hi)/2, solid.Far)
	} else {
		w.body = w.body.Keep(-solid.Far, (lo+hi)/2)
	}
}

// widen keeps how far measured places may lie from what the plan reckons with.
func (w *walk) widen(op plan.Operation) {
	for _, cut := range op.Cuts {
		if m := cut.ToMeasure; m != nil && m.What == "diameter" {
			w.slackRadius = math.Max(w.slackRadius, (m.HighMM-m.LowMM)/2)
		} else if m != nil {
			w.slackPlace += m.HighMM - m.LowMM
		}
	}
}

// metalAt reports whether a body has metal at a point.
func metalAt(b solid.Body, z, r float64) bool {
	return !b.Keep(z-offSurface, z+offSurface).TurnTo(solid.Const(-solid.Far, solid.Far, r+offSurface)).
		BoreTo(solid.Const(-solid.Far, solid.Far, r-offSurface)).Empty()
}

// maker is the place in the plan of the cut that removed a point; the stock itself has none (-1), nor has a point still there or never metal.
func (w *walk) maker(z, r float64) (setup, op int) {
	for _, m := range w.trace {
		if !metalAt(m.body, z, r) {
			return m.setup, m.op
		}
	}
	return -1, -1
}
