package sequence

import "slices"

// maxFronts is how many of the furthest states a Blocked shows: more would not be read.
const maxFronts = 8

// blocked describes dead ends: states of which none could go on.
func (m *model) blocked(ever Set, ends []state) *Blocked {
	b := &Blocked{Never: m.toProblem(m.full &^ ever).Ops()}
	for _, s := range ends {
		f := m.front(s)
		if !slices.ContainsFunc(b.Fronts, f.equal) {
			b.Fronts = append(b.Fronts, f)
		}
		if len(b.Fronts) == maxFronts {
			break
		}
	}
	return b
}

func (f Front) equal(g Front) bool {
	return f.Done == g.Done && slices.EqualFunc(f.Waiting, g.Waiting, func(a, b Waiting) bool {
		return a.Op == b.Op && a.Missing == b.Missing && slices.Equal(a.Refused, b.Refused) && slices.Equal(a.Unlinked, b.Unlinked)
	})
}

func (m *model) front(s state) Front {
	f := Front{Done: m.toProblem(s.done)}
	for left := m.full &^ s.done; left != 0; left = left.rest() {
		f.Waiting = append(f.Waiting, m.waiting(s, left.first()))
	}
	slices.SortFunc(f.Waiting, func(a, b Waiting) int { return a.Op - b.Op })
	return f
}

func (m *model) waiting(s state, op int) Waiting {
	w := Waiting{Op: m.opOf[op], Missing: m.toProblem(m.pred[op] &^ s.done)}
	for k, c := range m.choices[op] {
		if !m.verdicts.allowed(op, k, s.done) {
			w.Refused = append(w.Refused, m.original(op, k))
		} else if _, ok := m.links.after(s.mem, s.class, c.class, op, s.done); !ok {
			w.Unlinked = append(w.Unlinked, m.original(op, k))
		}
	}
	slices.Sort(w.Refused)
	slices.Sort(w.Unlinked)
	return w
}
