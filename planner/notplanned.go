package planner

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// notPlanned refuses what no pass can plan, so that nothing of a drawing is passed over in silence.
func notPlanned(part *partspec.Part) []plan.Refusal {
	if part.Flat() {
		return nil // what is not planned on one says so itself
	}
	if part.Stock.Kind == partspec.Casting {
		return []plan.Refusal{{What: "turning a casting", Reasons: []string{"castings are read and checked; only those of flat parts are planned"},
			Remedies: []string{"write a cast stick, or a casting with a chucking piece, as stock \"bar\" or \"tube\" with rough = true; another casting as stock \"existing\" with its features"}}}
	}
	return nil
}
