package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// What is cut beside or across the axis of turned work leaves its body of revolution alone: it is kept as passes, in the order of the plan, and held against the
// drawing when all is done. The body itself is what the lathe has left.

// aside is a pass beside or across the axis, with what it is for and when it was made.
type aside struct {
	pass
	feature string
	process plan.Process
	at      where
	body    solid.Body // the turned work at that moment
	packing float64    // set over: how far, in degrees, the nearest packing may be off
}

// offLathe reports whether the setup at hand stands elsewhere than on a lathe.
func (w *walk) offLathe() bool { return w.onMill() || w.atBench() }

func (w *walk) atBench() bool { return w.setup.MachineKind == string(partspec.Bench) }

// operateAside carries an operation out that is not the lathe's. It reports whether it was one; threads and knurls on turned blanks are made anywhere.
func (w *walk) operateAside(i, k int, op plan.Operation) bool {
	if !w.offLathe() {
		return false
	}
	w.checkSpeed(op)
	switch f := w.part.Feature(op.Feature).(type) {
	case *partspec.Thread, *partspec.Knurl:
		w.markBlank(op)
	case *partspec.Holes, *partspec.CrossHole, *partspec.Seat, *partspec.SideSeat, *partspec.Flat, *partspec.Slot:
		w.operateFeature(i, k, op, f)
	default:
		if op.Process != plan.Deburr {
			w.failOp("machine", "%q is no work for a %s on turned work", op.Process, w.setup.MachineKind)
		}
	}
	return true
}

// operateFeature carries out an operation on a feature beside or across the axis.
func (w *walk) operateFeature(i, k int, op plan.Operation, f partspec.Feature) {
	switch op.Process {
	case plan.Deburr:
		return
	case plan.FileSeat:
		v, ok := w.seatOf(f)
		w.fileSeat(op, v, ok)
		return
	}
	if len(op.Cuts) == 0 {
		w.failOp("cuts", "there is no cut in it, so nothing shows what it takes away")
		return
	}
	h := matchedHoles(f)
	if h != nil && op.Process == plan.MarkOut {
		w.checkRegistered(h)
		w.spotThrough(op, h)
		w.markOut(i, k, op, f)
		return
	}
	w.checkSuits(op)
	w.turnHead(op)
	w.zeroMill(op, turnedWork{w})
	if op.Process == plan.MarkOut {
		w.markOut(i, k, op, f)
		return
	}
	w.checkMatched(op, f)
	w.checkDials(op)
	var passes []pass
	for c, cut := range op.Cuts {
		m, ok := w.rebuildMill(op, cut, cutKey{i, k, c})
		if !ok {
			return
		}
		w.motion++
		passes = append(passes, m)
		if cut.ToMeasure != nil {
			w.checkMeasurable(cut, true)
		}
		if math.Abs(m.to[0]-m.from[0]) > same && math.Abs(m.to[1]-m.from[1]) > same {
			w.failOp("readings", "cut %q moves both slides of the table at once", m.name)
		}
		w.take(op, f, m)
		w.checkShownPass(op, m, w.clearAt(m))
	}
	w.checkTable(op, passes)
	w.checkStepTable(op)
	w.checkNumbersOf(op, f)
}

// take keeps a pass, and holds what must be true of it at once.
func (w *walk) take(op plan.Operation, f partspec.Feature, m pass) {
	a := aside{pass: m, feature: op.Feature, process: op.Process, at: w.at, body: w.body}
	if t := w.setup.Tilt; t != nil {
		a.packing = packingAngle(*t)
	}
	switch f := f.(type) {
	case *partspec.Holes, *partspec.CrossHole:
		w.checkHollowEntry(a)
		w.drillHole(op, f, a)
		w.checkOnSlide(m, 0)
	default:
		if m.pose.leans {
			w.failOp("pose", "%s is not cut in work that is set over", f.Head().ID())
			return
		}
		w.milled = append(w.milled, a)
		w.checkMilling(op, f, a)
		deep, _ := w.engaged(a)
		w.checkOnSlide(m, deep)
	}
	w.checkHoldingClear(a)
	w.addPush(op, a)
}

// checkSuits holds that an operation's tool is of a kind that can do it.
func (w *walk) checkSuits(op plan.Operation) {
	if op.Process == plan.Tap {
		return // the thread says which
	}
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil {
		w.failOp("tool", "%v", err)
		return
	}
	_, seat := w.part.Feature(op.Feature).(*partspec.Seat)
	if swung := seat && op.Process == plan.BoreHead && c.Kind == partspec.FlyCutter; !swung && !suits(op.Process, c.Kind) {
		w.failOp("tool", "a %s does not %s", c.Kind, op.Process)
	}
}

// clearAt reports whether a pass that moves over the table ends beside the work, so that where exactly it stops makes no difference.
func (w *walk) clearAt(m pass) bool {
	if _, moves := m.slot(); !moves {
		return false
	}
	z0, z1 := w.body.Ends()
	lo, hi := -w.body.Outer.Greatest(z0, z1), w.body.Outer.Greatest(z0, z1)
	out := func(at, r, lo, hi float64) bool { return at-r >= hi-same || at+r <= lo+same }
	if m.pose.across && out(m.to[0], m.radius, z0, z1) || !m.pose.across && out(m.to[0], m.radius, lo, hi) {
		return true
	}
	return out(m.to[1], m.radius, lo, hi)
}

// turnedWork is turned work as the noughts of a mill find it.
type turnedWork struct{ w *walk }

func (t turnedWork) tops(p pose) []found {
	var list []found
	if p.leans {
		return t.hollows(p)
	}
	if !p.across {
		for _, z := range facesOf(t.w.body) {
			list = append(list, found{at: z})
		}
		return list
	}
	for _, r := range t.radii() {
		list = append(list, found{at: r})
	}
	for _, a := range t.w.milled {
		if _, ok := t.w.part.Feature(a.feature).(*partspec.Flat); ok && a.pose.across && sameTurn(a.pose.deg, p.deg) {
			list = append(list, found{at: a.to[2], off: a.measured})
		}
	}
	return list
}

// radii are those of the outside's cylinders.
func (t turnedWork) radii() []float64 {
	var list []float64
	for _, p := range t.w.body.Outer.Pieces() {
		if !p.IsArc() && math.Abs(p.R0-p.R1) <= same {
			list = append(list, p.R0)
		}
	}
	return list
}

func (t turnedWork) edges(p pose, axis int) []found {
	var list []found
	if p.leans {
		return t.setOverEdges(p, axis)
	}
	if p.across && axis == 0 {
		for _, z := range facesOf(t.w.body) {
			list = append(list, found{at: z})
		}
		return list
	}
	for _, r := range t.radii() {
		list = append(list, found{at: r}, found{at: -r})
	}
	if p.across {
		list = append(list, found{at: 0}) // half the sum of both sides
	}
	return list
}

func (t turnedWork) centres(p pose) []centre {
	if p.across || p.leans {
		return nil
	}
	return []centre{{}}
}

// sameTurn reports whether two angles, in degrees, are one direction.
func sameTurn(a, b float64) bool { return turnBetween(a, b) <= sameAngle }

// turnBetween is the angle between two directions, 0 to 180 degrees.
func turnBetween(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 360)) }

// sameAngle is how far, in degrees, two directions may differ that should agree: noise of the drawing's figures.
const sameAngle = 1e-6
