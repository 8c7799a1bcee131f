package sequence

// Absorption: what can be done at once, in the present class, at its least own cost, is done at once. That is sound, if the
// cost of changing obeys the triangle inequality: take any way to finish, and pull the operation forward to now. Taking it
// out of its later place makes nothing dearer (triangle), doing it now costs nothing more, and precedence only relaxes.
// Two things could still forbid it, and then the search branches instead:
//
//   - another operation's verdict may turn from yes to no by it: so no alternative of an operation that is not done may
//     have it in its mask, unless the table of its answers shows that none turns so from here on, or that other must
//     come after it in any case;
//   - a link with a partner that is not done would be opened early.

// absorption holds what is known about it beforehand.
type absorption struct {
	free  []Set     // class -> operations that can be done in it at their least cost, tied and watched ones included
	at    [][]uint8 // class, operation -> the choice that does so
	other []Set     // class -> operations that have some other choice in it
	watch [][]harm  // operation -> choices of others that it may harm
}

// harm is a choice of operation op that another operation, done first, may spoil. The places are those of the condition in
// which that would happen; without a condition it may happen always.
type harm struct {
	op     int
	when   *condition
	places uint64
}

func newAbsorption(m *model) absorption {
	a := absorption{
		free:  make([]Set, len(m.classes)),
		at:    make([][]uint8, len(m.classes)),
		other: make([]Set, len(m.classes)),
		watch: make([][]harm, m.n),
	}
	for op, choices := range m.choices {
		for k, c := range choices {
			if c.excess == 0 && m.triangle && !a.free[c.class].Has(op) {
				if a.at[c.class] == nil {
					a.at[c.class] = make([]uint8, m.n)
				}
				a.free[c.class] = a.free[c.class].With(op)
				a.at[c.class][op] = uint8(k)
			} else {
				a.other[c.class] = a.other[c.class].With(op)
			}
			for s := c.mask &^ m.succ[op].With(op) &^ m.pred[op]; s != 0; s = s.rest() {
				a.heed(s.first(), op, c.when)
			}
		}
	}
	return a
}

// heed notes that a choice of op under the given condition hangs on operation x.
func (a *absorption) heed(x, op int, when *condition) {
	h := harm{op: op, when: when}
	if when != nil {
		if h.places = when.harm(x); h.places == 0 {
			return
		}
	}
	a.watch[x] = append(a.watch[x], h)
}

// threatens reports whether the harm may still happen once the operations in done are done.
func (h *harm) threatens(done Set) bool {
	return !done.Has(h.op) && (h.when == nil || h.places&later(h.when.place(done)) != 0)
}

// settled reports whether operation op, if it can be done now, may be pulled forward to now.
func (m *model) settled(op int, done Set) bool {
	return m.harmless(op, done) && (!m.links.tied.Has(op) || m.links.partnersOf(op)&^done == 0)
}

// harmless reports whether doing op can turn no verdict from yes to no from here on.
func (m *model) harmless(op int, done Set) bool {
	for i := range m.absorption.watch[op] {
		if m.absorption.watch[op][i].threatens(done) {
			return false
		}
	}
	return true
}

// absorb does all that can be absorbed in state s, and notes the steps in trace if it is not nil.
func (m *model) absorb(s state, trace *[]Step) state {
	if s.class < 0 {
		return s
	}
	for again := true; again; {
		again = false
		for left := m.absorption.free[s.class] &^ s.done; left != 0; left = left.rest() {
			op := left.first()
			if m.pred[op]&^s.done != 0 {
				continue
			}
			if !m.plain && !m.absorbs(&s, op) {
				continue
			}
			s.done = s.done.With(op)
			if trace != nil {
				*trace = append(*trace, m.step(op, int(m.absorption.at[s.class][op])))
			}
			again = !m.plain // a verdict may have changed; without verdicts one pass in rising order finds all
		}
	}
	return s
}

// absorbs reports whether op, which precedence lets go, may be absorbed in s; if so, the links are updated.
func (m *model) absorbs(s *state, op int) bool {
	if !m.settled(op, s.done) || !m.verdicts.allowed(op, int(m.absorption.at[s.class][op]), s.done) {
		return false
	}
	mem, ok := m.links.after(s.mem, s.class, s.class, op, s.done)
	if ok {
		s.mem = mem
	}
	return ok
}
