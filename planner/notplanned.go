package planner

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// notPlanned refuses what no pass can plan, so that nothing of a drawing is passed over in silence.
func notPlanned(part *partspec.Part) []plan.Refusal {
	if part.Flat() {
		return []plan.Refusal{{What: "flat parts", Reasons: []string{"they are read and checked, and no order of work is made for them"},
			Remedies: []string{"work from the drawing"}}}
	}
	var out []plan.Refusal
	if part.Stock.Kind == partspec.Casting {
		out = append(out, plan.Refusal{What: "turning a casting", Reasons: []string{"castings are read and checked; only those of flat parts are planned"},
			Remedies: []string{"take bar, or write the casting as stock \"existing\" with its features"}})
	}
	for _, f := range part.Features {
		switch f.(type) {
		case *partspec.Holes, *partspec.Seat, *partspec.CrossHole, *partspec.Flat, *partspec.Slot:
			out = append(out, plan.Refusal{What: f.Head().ID(), Reasons: []string{"it lies beside or across the axis; such work is read and checked, and no order of work is made for it"},
				Remedies: []string{"leave it out and do that work from the drawing"}})
		}
	}
	return out
}
