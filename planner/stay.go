package planner

import (
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
// itself at its own moment; that they do not pass together is only known once they are together.
func (o *ordering) crowded(steps []sequence.Step) (sequence.Step, bool) {
	done := map[int]bool{}
	for _, stay := range o.stays(steps) {
		m := o.mounts[o.alts[stay[0].Op][stay[0].Alt].mount]
		if m.Jaws() > 0 {
			list := o.demands(m, stay, done)
			before, rest := list[:easeAt(list)], list[easeAt(list):]
			if !fits(rest) || !standsBefore(before, rest) {
				return hungriest(list), true
			}
		}
		for _, s := range stay {
			done[s.Op] = true
		}
	}
	return sequence.Step{}, false
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

// hungriest is the step that asks for the firmest grip.
func hungriest(list []demand) sequence.Step {
	best := list[0]
	for _, d := range list {
		if d.least > best.least {
			best = d
		}
	}
	return best.step
}

// forbid takes a choice away.
func (o *ordering) forbid(s sequence.Step) {
	alts := o.alts[s.Op]
	o.alts[s.Op] = append(alts[:s.Alt:s.Alt], alts[s.Alt+1:]...)
}
