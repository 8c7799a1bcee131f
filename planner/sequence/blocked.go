package sequence

import (
	"cmp"
	"slices"
)

// maxFronts is how many of the furthest states a Blocked shows: more would not be read.
const maxFronts = 8

// mostRoamed is how many sets of done operations are looked at, at the end, to see what stops the work.
const mostRoamed = 100_000

// roam looks which sets of operations can be done at all, whatever the cost and the links. An operation whose being done can harm
// no other's verdict is done at once; of the others every one is tried.
type roam struct {
	m     *model
	seen  map[Set]bool
	ever  Set
	ends  []Set // furthest sets from which nothing can be done
	whole bool  // all operations can be done
	most  int   // sets to look at
}

func newRoam(m *model, most int) *roam {
	r := &roam{m: m, seen: map[Set]bool{}, most: most}
	r.visit(0)
	return r
}

// complete reports that everything was looked at, blocked that it proves that there is no order.
func (r *roam) complete() bool { return len(r.seen) < r.most }
func (r *roam) blocked() bool  { return !r.whole && r.complete() }

func (r *roam) visit(done Set) {
	done, open := r.settle(done)
	if r.whole || r.seen[done] || !r.complete() {
		return
	}
	r.seen[done] = true
	r.ever |= done
	if done == r.m.full {
		r.whole = true
		return
	}
	if open == 0 {
		r.end(done)
	}
	for ; open != 0; open = open.rest() {
		r.visit(done.With(open.first()))
	}
}

// settle does what can be done without harm, and returns the other operations that can be done now.
func (r *roam) settle(done Set) (Set, Set) {
	for {
		var open Set
		before := done
		for ready := r.m.available(done); ready != 0; ready = ready.rest() {
			op := ready.first()
			switch {
			case !r.m.possible(op, done):
			case r.m.harmless(op, done):
				done = done.With(op)
			default:
				open = open.With(op)
			}
		}
		if done == before {
			return done, open
		}
	}
}

// possible reports whether some alternative of op is allowed.
func (m *model) possible(op int, done Set) bool {
	for k := range m.choices[op] {
		if m.verdicts.allowed(op, k, done) {
			return true
		}
	}
	return false
}

func (r *roam) end(done Set) {
	switch {
	case len(r.ends) > 0 && done.Len() < r.ends[0].Len():
		return
	case len(r.ends) > 0 && done.Len() > r.ends[0].Len():
		r.ends = r.ends[:0]
	}
	r.ends = append(r.ends, done)
}

// explain says what stops the work.
func (r *roam) explain() *Blocked {
	slices.Sort(r.ends)
	b := &Blocked{Never: r.m.toProblem(r.m.full &^ r.ever).Ops()}
	for _, done := range r.ends[:min(len(r.ends), maxFronts)] {
		b.Fronts = append(b.Fronts, r.m.front(state{done: done, class: -1}))
	}
	return b
}

// blockedByLinks says what stopped a search: its furthest states.
func (s *search) blockedByLinks() *Blocked {
	var ends []state
	for i := range int32(s.store.n) {
		n := s.store.at(i)
		if n.status != closed {
			continue
		}
		if len(ends) > 0 && n.done.Len() > ends[0].done.Len() {
			ends = ends[:0]
		}
		if len(ends) == 0 || n.done.Len() == ends[0].done.Len() {
			ends = append(ends, n.state())
		}
	}
	slices.SortStableFunc(ends, func(a, b state) int {
		return cmp.Or(cmp.Compare(a.done, b.done), cmp.Compare(a.class, b.class))
	})
	b := &Blocked{Never: s.m.toProblem(s.m.full &^ s.ever).Ops()}
	for _, end := range ends[:min(len(ends), maxFronts)] {
		b.Fronts = append(b.Fronts, s.m.front(end))
	}
	return b
}

func (m *model) front(s state) Front {
	f := Front{Done: m.toProblem(s.done)}
	for left := m.full &^ s.done; left != 0; left = left.rest() {
		f.Waiting = append(f.Waiting, m.waiting(s, left.first()))
	}
	slices.SortFunc(f.Waiting, func(a, b Waiting) int { return cmp.Compare(a.Op, b.Op) })
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
