package planner

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// latheWanting refuses what no lathe owned can turn at all: there is none, its slides cannot be set, or the stock does not swing in it.
func latheWanting(lathe partspec.Machine, part *partspec.Part) []plan.Refusal {
	if lathe.Kind == "" {
		return []plan.Refusal{{What: "turning", Reasons: []string{"the workshop has no lathe"}, Remedies: []string{"add machine \"lathe\" to the workshop"}}}
	}
	if wanting := dialsWanting(lathe); wanting != nil {
		return wanting
	}
	if wide, u := part.Stock.EnvelopeDiameter(), unitOf(part); lathe.Swing > 0 && wide > lathe.Swing {
		return []plan.Refusal{{What: "the stock", Reasons: []string{fmt.Sprintf("Ø%s is over the %s that the lathe swings", wide.Text(u), lathe.Swing.Text(u))},
			Remedies: []string{"smaller stock, or a lathe that swings it"}}}
	}
	return nil
}

// coarsestSaddle is the coarsest graduation of a saddle by which shoulders are set: roughing leaves 0.2 on them (rule A-05), and a coarser one leaves more or none.
const coarsestSaddle = 0.25

// dialsWanting refuses a lathe on which no place can be set.
func dialsWanting(lathe partspec.Machine) []plan.Refusal {
	var out []plan.Refusal
	for _, name := range []string{"cross", "saddle"} {
		if _, ok := lathe.Dial(name); !ok {
			out = append(out, plan.Refusal{What: "setting the " + name, Reasons: []string{fmt.Sprintf("the %s has no %s dial", lathe.Name, name)},
				Remedies: []string{fmt.Sprintf("add dial %q { graduation, per_turn, reads } to it; an indicator or a scale is one too", name)}})
		}
	}
	if d, ok := lathe.Dial("saddle"); ok && float64(d.Graduation.Value) > coarsestSaddle {
		out = append(out, plan.Refusal{What: "setting the saddle", Reasons: []string{fmt.Sprintf("the saddle's graduation of %s is coarser than the %g that shoulders are set to", d.Graduation.Value.Text(units.InMM), coarsestSaddle)},
			Remedies: []string{"put an indicator or a scale against the saddle, and give its graduation: dial \"saddle\" { graduation = 0.1  reads = \"indicator\" }"}})
	}
	return out
}
