package planner

import (
	"slices"

	"catchplate/planner/rules"
	"catchplate/planner/sequence"
)

// stays splits an order into unbroken stays in one mount.
func (o *ordering) stays(steps []sequence.Step) [][]sequence.Step {
	var out [][]sequence.Step
	for from := 0; from < len(steps); {
		to := from + 1
		for to < len(steps) && o.alts[steps[to].Op][steps[to].Alt].mount == o.alts[steps[from].Op][steps[from].Alt].mount {
			to++
		}
		if o.ctx.Part.Flat() {
			out = append(out, o.flatStays(steps[from:to], doneBefore(steps[:from]))...)
		} else {
			out = append(out, steps[from:to])
		}
		from = to
	}
	return out
}

func doneBefore(steps []sequence.Step) map[int]bool {
	done := map[int]bool{}
	for _, s := range steps {
		done[s.Op] = true
	}
	return done
}

// crowded finds a choice that asks for a firmer grip than its companions in the same stay can bear, even when the grip is eased part way. Each choice passes by
// itself at its own moment; that they do not pass together is only known once they are together. Told as well is which of them it would spoil first.
func (o *ordering) crowded(steps []sequence.Step) (hungry, spoiled sequence.Step, found bool) {
	done := map[int]bool{}
	for _, stay := range o.stays(steps) {
		m := o.mounts[o.alts[stay[0].Op][stay[0].Alt].mount]
		if m.Jaws() > 0 {
			list := o.demands(m, stay, done)
			before, rest := list[:easeAt(list)], list[easeAt(list):]
			if !fits(rest) || !standsBefore(before, rest) {
				hungry, spoiled = farthest(list)
				return hungry, spoiled, true
			}
		}
		for _, s := range stay {
			done[s.Op] = true
		}
	}
	return hungry, spoiled, false
}

// standsBefore reports whether the grip before an easing spoils nothing that is made under it: it is no lighter than the one after.
func standsBefore(before, rest []demand) bool {
	if len(before) == 0 {
		return true
	}
	need, _ := window(rest)
	_, most := window(before)
	return fits(before) && (most == 0 || need <= most)
}

// farthest are the step that asks for the firmest grip and the one that stands the least.
func farthest(list []demand) (hungry, spoiled sequence.Step) {
	firm, weak := list[0], list[0]
	for _, d := range list {
		if d.least > firm.least {
			firm = d
		}
		if d.most > 0 && (weak.most == 0 || d.most < weak.most) {
			weak = d
		}
	}
	return firm.step, weak.step
}

// easeRule is the rule by which a grip is eased between what it must hold firmly and what it would spoil then.
const easeRule = "B-24"

// relieve brings a heavy cut before what its grip would spoil, so that the grip can be eased between them; where no order has them so, the cut is to be held otherwise.
func (o *ordering) relieve(hungry, spoiled sequence.Step) {
	arc := rules.Arc{Before: hungry.Op, After: spoiled.Op, Rule: easeRule}
	if arc.Before != arc.After && !slices.Contains(o.arcs, arc) {
		o.arcs = append(o.arcs, arc)
		if result, err := sequence.Solve(o.problem(), o.nodes); err == nil && result.Blocked == nil {
			return
		}
		o.arcs = o.arcs[:len(o.arcs)-1]
	}
	o.forbid(hungry)
}

// forbid takes a choice away.
func (o *ordering) forbid(s sequence.Step) {
	alts := o.alts[s.Op]
	o.alts[s.Op] = append(alts[:s.Alt:s.Alt], alts[s.Alt+1:]...)
}
