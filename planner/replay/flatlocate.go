package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/tables"
)

// gluedRunOut is that of work glued on a close spigot (rule B-16; the figure is that of a mandrel turned in place and its gap).
const gluedRunOut = 0.02

// byEdges is what a place is found by that no hole marks.
const byEdges = "its datum edges"

// noteClocked keeps on which hole the table's noughts of a setting stand.
func (f *flatWalk) noteClocked() {
	x, okX := f.zeros[dialX]
	y, okY := f.zeros[dialY]
	if !okX || !okY {
		return
	}
	zx, zy := f.beforeWinding(x.Zero), f.beforeWinding(y.Zero)
	if h, ok := f.holeAt(zx.ReferenceMM, zy.ReferenceMM); ok {
		if hx, hy, _ := h.centred((f.work.back + f.work.front) / 2); math.Hypot(hx-zx.ReferenceMM, hy-zy.ReferenceMM) <= figure {
			f.about[f.setup.Number-1] = h.leader()
		}
	}
}

// checkCentred holds, on a lathe, that what the work is set by is there, and that its place is not claimed to be found more surely than that allows.
func (f *flatWalk) checkCentred() {
	if !f.onLathe() {
		return
	}
	if need, why := f.runOut(); f.setup.RunOutMM < need-figure && f.setup.Grip.Kind != "glued_bore" && f.setup.Grip.Kind != "clamps" {
		f.failOp("run-out", "it claims %s; %s runs out by %s", mm(f.setup.RunOutMM), why, mm(need))
	}
	need, how := f.centredBy()
	f.base = 0
	if h, ok := f.holeAt(f.setup.CentreX, f.setup.CentreY); ok && how != byEdges {
		f.base = h.off
		f.about[f.setup.Number-1] = h.leader()
	}
	if math.IsInf(need, 1) {
		f.failOp("located", "nothing is there to set the work by: no bore, no mark at %s, %s, and not both datum edges", mm(f.setup.CentreX), mm(f.setup.CentreY))
		return
	}
	need += f.leans()
	if f.setup.LocateMM < need-figure {
		f.failOp("located", "the work is said to run within %s of its place; by %s it does within %s", mm(f.setup.LocateMM), how, mm(need))
	}
}

// centredBy is the surest way in which the place on the spindle's axis can be found as the work now is, and its error.
func (f *flatWalk) centredBy() (need float64, how string) {
	x, y := f.setup.CentreX, f.setup.CentreY
	switch f.setup.Grip.Kind {
	case "mandrel":
		out, _ := f.runOut()
		return out / 2, "its mandrel"
	case "glued_bore":
		return gluedRunOut / 2, "its spigot"
	case "jaws":
		if len(f.setup.Presses) == 0 {
			out, _ := f.runOut()
			return out / 2, "its rim in the jaws"
		}
	}
	need = math.Inf(1)
	add := func(off float64, by string) {
		if off < need {
			need, how = off, by
		}
	}
	if h, ok := f.holeAt(x, y); ok {
		if hx, hy, r := h.centred((f.work.back + f.work.front) / 2); math.Hypot(hx-x, hy-y) <= figure && r >= leastSwept {
			add(f.centreError(), "its bore")
		}
	}
	if f.punchedAt(x, y) {
		add(f.markError(), "its mark")
	}
	for _, t := range f.work.taken {
		if tx, ty, _ := t.centred((t.z0 + t.z1) / 2); t.mark && math.Hypot(tx-x, ty-y) <= f.nearMark() {
			add(t.off, "the spot that its centre was marked by")
		}
	}
	if f.datumReady(0) && f.datumReady(1) && len(f.part.Outline.Datum) > 0 {
		add(math.Sqrt2*float64(tables.PlaceError(tables.ByTool)), byEdges)
	}
	return need, how
}

// nearMark is how far a spot may lie beside the place that it marks: half a graduation of each dial of the mill that made it.
func (f *flatWalk) nearMark() float64 {
	x, y := 0.0, 0.0
	for _, m := range f.job.Workshop.Machines {
		if m.Kind == partspec.Mill {
			dx, _ := m.Dial(dialX)
			dy, _ := m.Dial(dialY)
			x, y = math.Max(x, graduationOf(dx)/2), math.Max(y, graduationOf(dy)/2)
		}
	}
	return math.Hypot(x, y) + figure
}

// settleDisc lays the coordinates of a disc about its rim once that is turned: they begin at its centre. What carried it while it was turned then lies off by no
// more than it was centred within; all else by that, and by what lay between the two.
func (f *flatWalk) settleDisc() {
	now := f.setup.Number - 1
	if len(f.part.Outline.Datum) > 0 || !f.onLathe() || !f.rimTurned(now) {
		return
	}
	carried, ok := f.holeAt(f.setup.CentreX, f.setup.CentreY)
	ok = ok && carried.key.setup < now
	for i := range f.work.taken {
		t := &f.work.taken[i]
		switch {
		case t.key.setup == now:
			t.off, t.less, t.shared = math.Max(0, t.off-f.setup.LocateMM-f.base), 0, 0
		case ok && t.leader() == carried.leader():
			t.off, t.less, t.shared = f.setup.LocateMM, 0, f.setup.LocateMM
		case ok && t.centre:
			own := math.Max(0, t.off-t.shared) // all else, all that was made in its setting has off alike: what carried it lies off beside all of them
			t.off, t.less = f.apart(*t, carried)+f.setup.LocateMM, 0
			t.shared = math.Max(0, t.off-own)
		}
	}
}

// rimTurned reports whether a setup turned the rim.
func (f *flatWalk) rimTurned(setup int) bool {
	for _, t := range f.work.taken {
		if g, ok := t.swath.(turned); ok && g.outside && t.key.setup == setup {
			return true
		}
	}
	return false
}
