package replay

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// checkWorkedEnd holds that no length is taken from an end that a seat has hollowed out: there is no face to touch, and a drill would meet a slope. What only comes
// off its bar is set by the high points of the rim.
func (w *walk) checkWorkedEnd(op plan.Operation) {
	if op.Process == plan.PartOff {
		return
	}
	end := partspec.Right
	if w.free() < 0 {
		end = partspec.Left
	}
	for _, a := range w.milled {
		if seat, ok := w.part.Feature(a.feature).(*partspec.Seat); ok && seat.On == end {
			w.failOp("entry", "%s has hollowed out the end that it is worked from", seat.ID())
			return
		}
	}
}
