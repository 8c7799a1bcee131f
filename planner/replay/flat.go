package replay

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// flatWalk follows flat work through a plan, in one world. What a lathe does to it is rebuilt by the walk of turned work, on a body of revolution about
// the place that then runs on the spindle's axis; what all machines and hands take is kept as figures of the plane between two heights.
type flatWalk struct {
	*walk
	drawn    drawnFlat
	work     flatWork
	punched  []mark2            // marks on the work
	tapped   map[hole]bool      // drawn holes that have been tapped
	lines    map[string]float64 // edges whose lines are scribed, and the face that they are scribed on: +1 = the front
	passes   []pass             // of the operation at hand
	pushes   []flatPush         // of the setup at hand
	squeezes []squeezedHere     // of the setup at hand
	base     float64            // lathe: how far what the work is set by may itself lie off its place
	about    map[int]cutKey     // for a setup, the hole that it was set by
	rough    float64            // lathe: how far the outside that the cross dial counts from may lie off, on radius
	clamped  clampedSo          // the last setup with clamps on a table
	gaps     bool               // the rim was not round about the lathe's centre when the work was put in
}

// clampedSo is how clamps were put on in a setup, and the middle that they are spread about.
type clampedSo struct {
	setup            int
	holding, freeEnd string
	list             []plan.Clamp
	x, y             float64
}

// mark2 is a punch mark or a pair of lines, on the face that was free when it was made.
type mark2 struct {
	x, y float64
	on   string
}

// hole names a drawn hole: its feature, and its number within a pattern.
type hole struct {
	feature string
	number  int
}

// proveFlat replays a flat part in every world.
func proveFlat(r *record, job *partspec.Job, part *partspec.Part, p plan.Part) plan.Proof {
	drawn, err := drawFlat(part)
	if err != nil {
		r.fail(where{}, "drawing", "%v", err)
		return plan.Proof{}
	}
	runs := inEvery(flatWorlds(p), func(world world) *walk {
		w := &walk{record: &record{part: r.part, known: r.known}, job: job, part: part, plan: p, world: world, removing: map[cutKey]bool{}, filed: map[string]bool{}, filedAfter: map[string]int{}, seatSet: map[string]float64{}}
		f := &flatWalk{walk: w, drawn: drawn, tapped: map[hole]bool{}, lines: map[string]float64{}, about: map[int]cutKey{}}
		if w.whole = f.lay() && f.run(); w.whole {
			f.checkFinished()
		}
		return w
	})
	r.gather(runs)
	for _, w := range runs {
		if !w.whole {
			return plan.Proof{}
		}
	}
	checkRemoving(r, p, removed(runs))
	if len(r.failures) == 0 {
		tellFlat(r, p, part, runs[0].motion, len(runs))
	}
	return plan.Proof{Clauses: r.clauses, Cuts: runs[0].motion}
}

// run follows the whole plan.
func (f *flatWalk) run() bool {
	for i, s := range f.plan.Setups {
		if !f.mount(s) {
			return false
		}
		for k, op := range s.Operations {
			f.at = where{s.Number, op.ID}
			f.operate(i, k, op)
			f.noteSqueezed(k)
		}
		f.at = where{setup: s.Number}
		f.release()
	}
	return true
}

// mount puts the work into a setup.
func (f *flatWalk) mount(s plan.Setup) bool {
	f.setup, f.at = s, where{setup: s.Number}
	f.zeros, f.zeroTool, f.loads, f.pushes, f.squeezes = map[string]nought{}, "", nil, nil, nil
	if s.FreeEnd != "left" && s.FreeEnd != "right" {
		f.failOp("pose", "the free end is %q: expected left (the back) or right (the front)", s.FreeEnd)
		return false
	}
	if !f.findMachine() || f.onSpindle() && !f.findHolding() {
		return false
	}
	f.checkPose()
	f.checkAskew()
	f.laySolid()
	f.checkNotHollow()
	f.checkHeld()
	f.checkFlatEased()
	f.checkSaid()
	f.checkBalance()
	f.checkCentred()
	return true
}

// onSpindle reports whether the setup at hand stands on a machine, rather than at the bench.
func (f *flatWalk) onSpindle() bool { return f.setup.MachineKind != string(partspec.Bench) }

// onLathe reports whether the work turns.
func (f *flatWalk) onLathe() bool { return f.setup.MachineKind == string(partspec.Lathe) }

// operate carries one operation out.
func (f *flatWalk) operate(i, k int, op plan.Operation) {
	f.passes = nil
	f.checkByHand(op)
	f.checkToolOfChain(op)
	switch op.Process {
	case plan.Deburr:
	case plan.MarkOut:
		if h := matchedHoles(f.part.Feature(op.Feature)); h != nil {
			f.checkRegistered(h)
			f.spotThrough(op, h)
		} else {
			f.checkHandTool(op)
		}
		f.markOut(op)
	case plan.FileSeat:
		f.checkHandTool(op)
		if seat, ok := f.part.Feature(op.Feature).(*partspec.Seat); ok {
			f.fileSeat(op, f.faceView(seat), true)
		} else {
			f.fileSeat(op, seatView{}, false)
		}
	case plan.Saw, plan.FileEdge:
		f.checkHandTool(op)
		f.byHand(i, k, op)
	default:
		f.onMachine(i, k, op)
	}
}

// onMachine carries an operation out that has a tool in a spindle, or the work.
func (f *flatWalk) onMachine(i, k int, op plan.Operation) {
	if len(op.Cuts) == 0 && !(f.onLathe() && op.Process == plan.Thread) {
		f.failOp("cuts", "there is no cut in it, so nothing shows what it takes away")
		return
	}
	f.checkMatched(op, f.part.Feature(op.Feature))
	f.checkSeatLast(op)
	switch {
	case f.onLathe():
		f.turn(i, k, op)
	case f.onMill():
		f.mill(i, k, op)
	case op.Process == plan.Tap:
		f.tapByHand(i, k, op)
	default:
		f.failOp("machine", "%q is no work for the bench", op.Process)
	}
	f.widenOnce(op)
}

// widenOnce keeps how far measured places may lie from what the plan reckons with: one measurement of many passes counts once.
func (f *flatWalk) widenOnce(op plan.Operation) {
	seen := map[plan.Measured]bool{}
	for _, cut := range op.Cuts {
		if cut.ToMeasure == nil || seen[*cut.ToMeasure] {
			continue
		}
		seen[*cut.ToMeasure] = true
		f.widen(plan.Operation{Cuts: []plan.Cut{cut}})
	}
}

// flatWorlds are the worlds of flat work. The passes side by side that one measurement ends (a face in rows) end at one place, so they go to the same end of
// its range together.
func flatWorlds(p plan.Part) []world {
	all := []world{{}, {high: true}}
	keys := measuredCuts(p)
	if len(keys) == 0 {
		return all[:1]
	}
	type group struct {
		setup, op int
		by        plan.Measured
	}
	var order []group
	groups := map[group]map[cutKey]bool{}
	for _, k := range keys {
		g := group{k.setup, k.op, *p.Setups[k.setup].Operations[k.op].Cuts[k.cut].ToMeasure}
		if groups[g] == nil {
			groups[g] = map[cutKey]bool{}
			order = append(order, g)
		}
		groups[g][k] = true
	}
	if len(order) == 1 {
		return all
	}
	for _, g := range order {
		all = append(all, world{false, groups[g]}, world{true, groups[g]})
	}
	return all
}

// turn carries an operation out in the lathe.
func (f *flatWalk) turn(i, k int, op plan.Operation) {
	f.setZeros(op)
	f.checkDials(op)
	f.checkSpeed(op)
	if op.Process == plan.Tap {
		f.failOp("machine", "holes of a flat part are tapped at the bench, the mill or the drilling machine")
		return
	}
	if op.Process == plan.Thread {
		f.threadTurned(op)
		return
	}
	f.checkStart(op)
	var last motion
	for c, cut := range op.Cuts {
		m, ok := f.rebuild(op, cut, cutKey{i, k, c}, last)
		if !ok {
			return
		}
		f.motion++
		if c > 0 && last.to == m.from {
			f.removing[m.key] = true
		}
		before := f.body
		f.body = m.apply(before)
		f.checkCut(op, m, before)
		f.checkMeasured(cut, m)
		f.checkShown(op, m)
		f.checkReach(m, before)
		f.addLoad(op, m, before)
		f.checkTurnedClear(m, f.takeTurned(op, m))
		last = m
	}
}

// mill carries an operation out on the mill or the drilling machine.
func (f *flatWalk) mill(i, k int, op plan.Operation) {
	if op.Process != plan.Tap {
		f.checkSuits(op)
	}
	f.zeroMill(op, f)
	f.noteClocked()
	f.checkDials(op)
	f.checkSpeed(op)
	for c, cut := range op.Cuts {
		rebuild := f.rebuildMill
		if cut.Along != nil {
			rebuild = f.rebuildAlong
		}
		m, ok := rebuild(op, cut, cutKey{i, k, c})
		if !ok {
			return
		}
		f.motion++
		f.passes = append(f.passes, m)
		f.checkPlaced(cut, m)
		if seat, ok := f.part.Feature(op.Feature).(*partspec.Seat); ok {
			f.takeSeatPass(op, seat, m)
			continue
		}
		if op.Process == plan.Tap {
			f.tap(op, m)
			continue
		}
		f.takePass(op, m)
	}
	f.checkTable(op, f.passes)
}
