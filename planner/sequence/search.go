package sequence

import "slices"

// search is A* over states: the state with the least cost so far plus bound is expanded next. Since the bound never
// overestimates, the first whole order taken from the queue is the cheapest; until then the least key in the queue bounds it.
type search struct {
	m     *model
	bound estimator
	store *store
	queue *queue
	stats Stats

	budget    int   // nodes that may be spent
	beamed    int   // states the beams kept
	best      int32 // cost of the incumbent above model.base
	incumbent []Step
	ever      Set // operations done in some state reached
}

const noCost = int32(1<<31 - 1)

func newSearch(m *model, bound estimator, budget int) *search {
	s := &search{m: m, bound: bound, budget: budget, store: newStore(), queue: newQueue(), best: noCost}
	s.enter(node{class: -1, parent: -1})
	return s
}

// madePerNode is how many successors count as one node of a budget: one that leads to a known state, or to none, takes time though it is not kept.
const madePerNode = 2

// spent counts the nodes used up: states kept, by the search and by beams, successors made, and what the bound took.
func (s *search) spent() int {
	return s.store.n + s.beamed + s.stats.Generated/madePerNode + s.bound.spent()
}

// kept counts the states kept, by the search and by beams, and the entries behind the bound.
func (s *search) kept() int { return s.store.n + s.beamed + s.bound.entries() }

// run expands states until the incumbent is proven or nothing is left (true), or so many states and entries are kept, or the budget is
// spent (false).
func (s *search) run(kept int) bool {
	for s.kept() < kept && s.spent() < s.budget {
		key, ok := s.queue.least()
		if !ok || key >= s.best {
			return true
		}
		_, id := s.queue.pop()
		n := s.store.at(id)
		switch {
		case n.status == closed || n.status == checked || n.cost+n.rest != key:
		case n.status == pending:
			s.confirm(n)
		default:
			s.expand(id)
		}
	}
	return false
}

// expand makes the successors of a node.
func (s *search) expand(id int32) {
	n := s.store.at(id)
	n.status = closed
	s.stats.Expanded++
	st := n.state()
	s.m.moves(st, s.m.available(st.done), func(op, choice int) {
		s.stats.Generated++
		c := &s.m.choices[op][choice]
		mem, ok := s.m.links.after(st.mem, st.class, c.class, op, st.done)
		if !ok {
			return
		}
		s.reach(node{
			done: st.done.With(op), mem: mem, class: int16(c.class),
			cost: n.cost + s.m.stepInto(st.class, c.class) + c.excess, parent: id, op: uint8(op), choice: uint8(choice),
		})
	})
}

// reach takes up a successor. A verdict that is not known yet may be dear to ask: the successor then waits in the queue, and the
// verdict is asked only when its turn comes.
func (s *search) reach(n node) {
	allowed, known := s.m.verdicts.recall(int(n.op), int(n.choice), s.store.at(n.parent).done)
	switch {
	case !known:
		n.rest = s.bound.rest(n.done, int(n.class), s.best-n.cost)
		if n.cost+n.rest < s.best && n.rest < deadEnd {
			n.status = pending
			s.queue.push(n.cost+n.rest, s.store.add(n))
		}
	case allowed:
		s.absorb(n)
	}
}

// confirm asks the verdict that a pending node waits for.
func (s *search) confirm(n *node) {
	n.status = checked
	if s.m.verdicts.allowed(int(n.op), int(n.choice), s.store.at(n.parent).done) {
		s.absorb(*n)
	}
}

// absorb completes a state reached and enters it.
func (s *search) absorb(n node) {
	st := s.m.absorb(n.state(), nil)
	n.done, n.mem = st.done, st.mem
	s.enter(n)
}

// enter keeps a state if it is new or cheaper than before.
func (s *search) enter(n node) {
	s.ever |= n.done
	id, slot := s.store.find(n.state())
	if id >= 0 {
		old := s.store.at(id)
		if old.cost <= n.cost {
			return
		}
		n.rest = old.rest
	} else {
		n.rest = s.bound.rest(n.done, int(n.class), s.best-n.cost)
	}
	if n.cost+n.rest >= s.best || n.rest >= deadEnd {
		return
	}
	n.status = open
	if id >= 0 {
		*s.store.at(id) = n
	} else {
		id = s.store.add(n)
		s.store.enter(id, slot)
	}
	if n.done == s.m.full {
		s.best, s.incumbent = n.cost, s.order(id)
		return
	}
	s.queue.push(n.cost+n.rest, id)
}

// order reads the steps that lead to a node back from its chain of parents.
func (s *search) order(id int32) []Step {
	var chain []node
	for ; id >= 0; id = s.store.at(id).parent {
		chain = append(chain, *s.store.at(id))
	}
	slices.Reverse(chain)
	return s.m.replay(chain)
}

// replay lists the steps along a chain of nodes: the step that made each, and what it then absorbed.
func (m *model) replay(chain []node) []Step {
	var steps []Step
	st := state{class: -1}
	for _, n := range chain[1:] {
		op, c := int(n.op), m.choices[n.op][n.choice].class
		mem, _ := m.links.after(st.mem, st.class, c, op, st.done)
		steps = append(steps, m.step(op, int(n.choice)))
		st = m.absorb(state{st.done.With(op), c, mem}, &steps)
	}
	return steps
}

// lower returns the bound proven so far, above model.base.
func (s *search) lower() int32 {
	if key, ok := s.queue.least(); ok {
		return min(key, s.best)
	}
	return s.best
}
