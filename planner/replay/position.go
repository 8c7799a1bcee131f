package replay

import (
	"math"

	"catchplate/partspec"
)

// checkUnplaced holds a drawn relation of something that is no surface of the body of revolution: the position of a pattern or a cross hole about an axis. Any
// other is proved by nobody, and so is a failure.
func (w *walk) checkUnplaced(r partspec.Relation) {
	w.at = where{}
	f := w.part.Feature(r.Of.Feature)
	to, ok := w.surfaceOf(r.To)
	switch f.(type) {
	case *partspec.Holes, *partspec.CrossHole:
		if ok && r.Kind == partspec.Position && !to.plane {
			w.checkPosition(r, f, to)
			return
		}
	}
	w.failOp("relation", "nothing proves that %s of %s to %s lies within %s", r.Kind, r.Of, r.To, mm(float64(r.Within)))
}

// checkPosition holds the place of every hole of a pattern about a turned surface: how far it lies from its drawn place, and how far the axis of what the mill's
// dials were set by may lie from that surface's.
func (w *walk) checkPosition(r partspec.Relation, f partspec.Feature, to surface) {
	made, _ := w.madeBy(to)
	for _, key := range w.holeOrder {
		h := w.holes[key]
		if key.feature != f.Head().Name || len(h.steps) == 0 {
			continue
		}
		s := h.steps[0]
		w.at = s.at
		err, known := w.axisError(s.key.setup, made)
		if w.plan.Setups[s.key.setup].Locates == r.To.Feature {
			err, known = 0, true // the dials were set by that very surface
		}
		if !known {
			w.failOp("relation", "%s of %s to %s within %s cannot be held: the work is set by a surface that nothing was set true to", r.Kind, r.Of, r.To, mm(float64(r.Within)))
			return
		}
		off := math.Hypot(h.x-h.x0(), h.y-h.y0()) + h.off
		if zone := 2*off + err; zone > float64(r.Within)+figure {
			w.failOp("relation", "%s of hole %d of %s to %s: within a zone of %s to expect, %s drawn", r.Kind, key.number, r.Of, to.name, mm(zone), mm(float64(r.Within)))
		}
	}
}

// axisError is the run-out to expect between the surface that a setup off the lathe is located on and one that was cut in setup made.
func (w *walk) axisError(setup, made int) (float64, bool) {
	on := w.locatedOn(setup)
	if on < 0 {
		return 0, false
	}
	return w.between(on, made)
}
