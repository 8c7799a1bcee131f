package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// zeroMill sets a mill's dials to nought. Those of the table stay good through the setup, whatever the tool; that along the spindle is set anew for each
// tool.
func (w *walk) zeroMill(op plan.Operation, work touchable) {
	if op.Tool.ID != w.zeroTool {
		delete(w.zeros, dialQuill)
		delete(w.zeros, dialZ)
		w.zeroTool = op.Tool.ID
	}
	seen := map[string]bool{}
	for _, z := range op.Zeros {
		if seen[z.Dial] {
			w.failOp("zero", "the %s dial is set to nought twice in one operation: which one its figures start from cannot be told", z.Dial)
		}
		seen[z.Dial] = true
		d, ok := w.machine.Dial(z.Dial)
		if axisOf(z.Dial) < 0 || !ok {
			w.failOp("zero", "%s has no %s dial to set", w.machine.Name, z.Dial)
			continue
		}
		if z.Outward {
			w.failOp("zero", "the %s dial does not count outward", z.Dial)
		}
		if z.WoundBack != 0 && axisOf(z.Dial) == 2 {
			w.failOp("zero", "the %s dial is wound back %d turns: only dials of the table are", z.Dial, z.WoundBack)
		}
		if old, set := w.zeros[z.Dial]; set && axisOf(z.Dial) < 2 && old.Dial == z.Dial && old.ReferenceMM == z.ReferenceMM && old.WoundBack == z.WoundBack {
			continue // as it was set in this setting already
		}
		delete(w.zeros, z.Dial)
		if at, ok := w.touchMill(z, work, op.Zeros); ok {
			w.zeros[z.Dial] = nought{Zero: z, reference: at.at, off: at.off, clocked: at.clocked, graduation: graduationOf(d)}
		}
	}
}

// touchMill finds the surface that a dial is set on. It must be there, and is where this world has it.
func (w *walk) touchMill(z plan.Zero, work touchable, all []plan.Zero) (found, bool) {
	p, axis := w.poseOf(), axisOf(z.Dial)
	if axis == 2 {
		return w.nearestFound(z, work.tops(p), 0, "face that looks at the spindle")
	}
	touched := make([]plan.Zero, len(all))
	for i, other := range all {
		touched[i] = w.beforeWinding(other)
	}
	back := w.beforeWinding(z).ReferenceMM - z.ReferenceMM
	z.ReferenceMM += back
	f, ok := w.clocked(z, work, touched)
	if !ok {
		f, ok = w.nearestFound(z, work.edges(p, axis), w.edgeError(), "edge")
	}
	f.at -= back
	return f, ok
}

// beforeWinding is a nought of the table where its surface was touched, before the slide was wound back whole turns.
func (w *walk) beforeWinding(z plan.Zero) plan.Zero {
	d, ok := w.machine.Dial(z.Dial)
	if axis := axisOf(z.Dial); ok && (axis == 0 || axis == 1) {
		z.ReferenceMM += w.poseOf().goes(axis) * float64(z.WoundBack) * turnOf(d)
	}
	return z
}

// nearestFound is the surface that a nought's reference means.
func (w *walk) nearestFound(z plan.Zero, list []found, finding float64, what string) (found, bool) {
	best := found{at: math.NaN()}
	off := math.Inf(1)
	for _, f := range list {
		if d := math.Abs(f.at - z.ReferenceMM); d < off {
			best, off = f, d
		}
	}
	if off > w.slackPlace+w.slackRadius+best.off+same {
		w.failOp("zero", "the %s dial is to be set at %s, but there is no %s to touch; the nearest is at %s", z.Dial, mm(z.ReferenceMM), what, mm(best.at))
		return found{}, false
	}
	best.off += finding
	return best, true
}

// clocked is the nought of a table's dial on the middle of a round surface: both dials must be set there. Of the error in the table's plane each dial has
// the share that makes it up.
func (w *walk) clocked(z plan.Zero, work touchable, all []plan.Zero) (found, bool) {
	refs := [2]float64{math.NaN(), math.NaN()}
	for _, other := range all {
		if axis := axisOf(other.Dial); axis == 0 || axis == 1 {
			refs[axis] = other.ReferenceMM
		}
	}
	for _, c := range work.centres(w.poseOf()) {
		if math.Abs(c.x-refs[0]) <= same && math.Abs(c.y-refs[1]) <= same {
			at := [2]float64{c.x, c.y}[axisOf(z.Dial)]
			return found{at: at, off: (c.off + w.centreError()) / math.Sqrt2, clocked: true}, true
		}
	}
	return found{}, false
}

// edgeError is how far off an edge may be found with the best that is owned; centreError the middle of a round surface.
func (w *walk) edgeError() float64 {
	return w.ownError(partspec.EdgeFinder, tables.ByEdge, float64(tables.PlaceError(tables.ByTool)))
}

// ownError is the best accuracy among the tools of a kind: their own where they give it, else the table's; without is what serves where none is owned.
func (w *walk) ownError(kind partspec.ToolKind, row tables.Placing, without float64) float64 {
	best, owned := math.Inf(1), false
	for _, t := range w.job.Workshop.Tools {
		if t.Kind != kind {
			continue
		}
		owned = true
		if t.Accuracy > 0 {
			best = math.Min(best, float64(t.Accuracy))
		} else {
			best = math.Min(best, float64(tables.PlaceError(row)))
		}
	}
	if !owned {
		return without
	}
	return best
}

func (w *walk) centreError() float64 {
	for _, i := range w.job.Workshop.Instruments {
		if i.Kind == partspec.DialIndicator {
			return float64(tables.PlaceError(tables.ByClocking))
		}
	}
	return math.Sqrt2 * w.edgeError() // half the sum of an edge on each side, both ways
}
