package replay

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// checkEntered holds that no tool enters a bore from an end that a seat has hollowed out: there is no face to touch for its depth, and it would meet a slope.
func (w *walk) checkEntered(op plan.Operation) {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil || !c.set() && c.Kind != partspec.Boring && c.Kind != partspec.RecessTool {
		return
	}
	end := partspec.Right
	if w.free() < 0 {
		end = partspec.Left
	}
	for _, a := range w.milled {
		if seat, ok := w.part.Feature(a.feature).(*partspec.Seat); ok && seat.On == end {
			w.failOp("entry", "%s has hollowed out the end that the bore is entered from", seat.ID())
			return
		}
	}
}
