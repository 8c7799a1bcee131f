package planner

import (
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// Work about an offset axis is planned as work on a piece that is there already: what the main axis leaves, as it is seen from the offset one
// (partspec.Part.SeenFrom). It comes last, when the work is whole, finished and round about its main axis, and so can be gripped and clocked by it.

// planEccentrics adds to the plan of a part what is turned about its offset axes.
func planEccentrics(out *plan.Part, job *partspec.Job, part *partspec.Part, opt Options) {
	list, refused := aboutAxes(job, part, opt)
	if refused != nil {
		refuseAxes(out, refused)
		return
	}
	for _, best := range list {
		added := plan.Part{}
		writeOut(&added, best)
		before := len(out.Setups)
		appendWork(out, added)
		if !opt.rules().Has("A-06e") { // nothing then says which axis comes first
			out.Setups = slices.Concat(out.Setups[before:], out.Setups[:before])
		}
	}
}

// aboutAxes finds the order of the work about each offset axis, or what stands against it.
func aboutAxes(job *partspec.Job, part *partspec.Part, opt Options) ([]*attempt, []plan.Refusal) {
	var list []*attempt
	for _, axis := range part.Axes {
		best, refused := bestAttempt(job, part.SeenFrom(axis), opt)
		if best == nil {
			return nil, refused
		}
		if len(best.order.stays(best.order.result.Order)) > 1 {
			return nil, []plan.Refusal{{What: "turning about the axis " + axis.Name, Reasons: []string{"what lies about it would take more than one setting, and a second one points another way (A-06e)"},
				Remedies: []string{"a shorter bore, or tools that reach through it from one end"}}}
		}
		list = append(list, best)
	}
	return list, nil
}

// refuseAxes takes the plan of a part back that cannot be finished about its offset axes.
func refuseAxes(out *plan.Part, why []plan.Refusal) {
	*out = plan.Part{Name: out.Name, Note: out.Note, Material: out.Material, MaterialName: out.MaterialName, Quantity: out.Quantity, DrawnInInch: out.DrawnInInch,
		LengthMM: out.LengthMM, Drawing: out.Drawing, Refusals: why}
}

// appendWork lets the work of one plan follow that of another.
func appendWork(out *plan.Part, added plan.Part) {
	setups := len(out.Setups)
	last := out.Setups[setups-1].Operations
	number, before := last[len(last)-1].Number, last[len(last)-1].ID
	out.Setups[setups-1].SafeStop = true
	for _, s := range added.Setups {
		s.Number += setups
		for i := range s.Operations {
			op := &s.Operations[i]
			op.Number += number
			if op.Process == plan.TurnRough || op.Process == plan.TurnFinish {
				op.Notes = append(op.Notes, "Until it is round the cut meets metal in part of every turn only: a tough, sharp tool short in its post, and the belt or gears at the speed given or the next slower one. Diameters are touched with the spindle turning, on the side that swings farthest out.")
			}
		}
		out.Setups = append(out.Setups, s)
	}
	out.Rejected = append(out.Rejected, added.Rejected...)
	first := added.Setups[0].Operations[0].ID
	follow(&out.Order, added.Order, plan.Pair{Before: before, After: first})
	out.Minutes += added.Minutes
	for _, c := range added.Cautions {
		out.Cautions = caution(out.Cautions, c)
	}
}

// follow lets the order of the work about an offset axis follow that about the main one; a pair of neighbours joins the two.
func follow(order *plan.Order, added plan.Order, joint plan.Pair) {
	joint.Rule, joint.Text = "A-06e", "what lies about the main axis is finished first"
	order.Pairs = append(append(order.Pairs, joint), added.Pairs...)
	order.CostMinutes += added.CostMinutes
	order.BoundMinutes += added.BoundMinutes
	order.Proven = order.Proven && added.Proven
	order.States += added.States
}

// caution adds a warning that is not there yet.
func caution(list []plan.Caution, c plan.Caution) []plan.Caution {
	for _, known := range list {
		if known == c {
			return list
		}
	}
	return append(list, c)
}

// section is the work as it now is; of work that is set over on either side of the spindle's axis.
func (w *writer) section() plan.Section {
	s := Section(w.body)
	if seen := w.ctx.Part.Seen; seen != nil {
		s.Near = segments(solid.Lower(w.body.Outer, w.ctx.Stock.Outer.Shift(0, -2*float64(seen.From.Offset.Value))))
	}
	return s
}
