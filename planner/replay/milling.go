package replay

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

func (w *walk) fileSeat(op plan.Operation, f partspec.Feature)              {}
func (w *walk) checkMilling(op plan.Operation, f partspec.Feature, a aside) {}
