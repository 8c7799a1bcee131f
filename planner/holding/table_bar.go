package holding

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// uprightBar lists a chuck on the table with the part still on its bar: the most metal to grip, and the way for what would leave nothing to hold by later.
func (s Shop) uprightBar(h partspec.Holding, on partspec.MachineKind) []Mount {
	if !s.Place.OnBar() {
		return nil
	}
	m := s.onStock(h)[0]
	m.Machine, m.Minutes, m.Locate, m.RunOut = on, m.Minutes+chuckOnTable, s.centreError(), 2*s.centreError()
	return []Mount{m}
}

// trued reports whether anything round has been finished that work on its bar can be clocked by.
func (s Shop) trued(done func(int) bool) bool {
	for i := range s.Tasks {
		if done(i) && s.trues(i) {
			return true
		}
	}
	return false
}

// trues reports whether a task finishes a round surface, or bores a pilot, that an indicator can be swept on.
func (s Shop) trues(i int) bool {
	t := s.Tasks[i]
	return t.Process == plan.TurnFinish || t.Stage == shape.Finishing && (t.Process == plan.BoreOut || t.Process == plan.Ream)
}
