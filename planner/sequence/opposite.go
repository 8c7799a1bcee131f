package sequence

// Neighbour tells, for two operations that follow each other in an order, what fixes that they do.
type Neighbour struct {
	Before, After int
	Arc           int  // the arc of Problem.Prec that fixes it, or -1; with an arc nothing below is set
	Cost          int  // the cheapest order with After somewhere before Before costs this; if not Exact, at least this
	Exact         bool //
	Impossible    bool // there is no order with After before Before, though no arc forbids it
}

// mostTabled is the most sets of done operations for which the opposite orders are read from tables; above it they are bounded.
const mostTabled = 100_000

// opposedBudget is the budget in nodes for bounding one opposite order; the tables behind the bound serve all of them.
const opposedBudget = 100_000

// Neighbours explains the order of a result, pair by pair. It is exact if no more than 100,000 sets of operations can be done
// on the way: then all states are tabled once from the start and once from the end, and the cheapest order through each step
// is the sum of both sides. Beyond, each opposite order is searched for with a small budget, and what is proven by then is given;
// it never costs less than the result's own bound.
func Neighbours(p *Problem, result Result) ([]Neighbour, error) {
	order := result.Order
	if _, err := Cost(p, order); err != nil {
		return nil, err
	}
	if len(order) < 2 {
		return nil, nil
	}
	l := list(p)
	m := newModel(l.p, nil)
	pairs := make([]Neighbour, len(order)-1)
	for k := range pairs {
		pairs[k] = Neighbour{Before: order[k].Op, After: order[k+1].Op, Arc: -1}
		for i, arc := range p.Prec {
			if arc == [2]int{order[k].Op, order[k+1].Op} {
				pairs[k].Arc = i
				break
			}
		}
	}
	at := pick(inverse(m.opOf), inverse(l.opOf)) // operation as given -> operation of the model
	if m.countSets(mostTabled) <= mostTabled {
		m.tableOpposites(pairs, at)
	} else {
		m.boundOpposites(pairs, at, result.Bound)
	}
	return pairs, nil
}

// countSets counts the sets of operations that precedence lets be done, up to just above the limit.
func (m *model) countSets(limit int) int {
	seen := map[Set]bool{0: true}
	stack := []Set{0}
	for len(stack) > 0 && len(seen) <= limit {
		done := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for ready := m.available(done); ready != 0; ready = ready.rest() {
			if next := done.With(ready.first()); !seen[next] {
				seen[next] = true
				stack = append(stack, next)
			}
		}
	}
	return len(seen)
}

// successors calls yield for every state one operation further on, with nothing absorbed, and what the step costs above the
// least own cost of its operation.
func (m *model) successors(s state, yield func(t state, op int, cost int32)) {
	for ready := m.available(s.done); ready != 0; ready = ready.rest() {
		op := ready.first()
		for k := range m.choices[op] {
			c := &m.choices[op][k]
			if !m.verdicts.allowed(op, k, s.done) {
				continue
			}
			if mem, ok := m.links.after(s.mem, s.class, c.class, op, s.done); ok {
				yield(state{s.done.With(op), c.class, mem}, op, m.stepInto(s.class, c.class)+c.excess)
			}
		}
	}
}

// tableOpposites fills the costs of the pairs exactly. A step that does operation a when b is done lies on the best order with b
// before a, for some step: the cheapest order through it is the sum of what the tables say of its two ends.
func (m *model) tableOpposites(pairs []Neighbour, at []int) {
	other := make([]int, m.n) // operation -> the one that follows it in the order, if no arc says so, else -1
	least := make([]int32, m.n)
	for i := range other {
		other[i], least[i] = -1, deadEnd
	}
	for _, pair := range pairs {
		if pair.Arc < 0 {
			other[at[pair.Before]] = at[pair.After]
		}
	}
	m.tableEnds(m.tableStarts(), func(done Set, op int, through int32) {
		if b := other[op]; b >= 0 && done.Has(b) {
			least[op] = min(least[op], through)
		}
	})
	for k := range pairs {
		pair := &pairs[k]
		if pair.Arc >= 0 {
			continue
		}
		c := least[at[pair.Before]]
		pair.Exact, pair.Impossible = true, c >= deadEnd
		if !pair.Impossible {
			pair.Cost = int(m.base + c)
		}
	}
}

// tableStarts returns all states with what it costs to come to them. States are numbered as they are reached, so that each comes after
// every state with fewer operations done.
func (m *model) tableStarts() *store {
	table := newStore()
	table.put(node{class: -1})
	for i := int32(0); i < int32(table.n); i++ {
		n := *table.at(i)
		m.successors(n.state(), func(t state, _ int, cost int32) {
			id, _ := table.find(t)
			if id < 0 {
				table.put(node{done: t.done, class: int16(t.class), mem: t.mem, cost: n.cost + cost})
			} else if old := table.at(id); n.cost+cost < old.cost {
				old.cost = n.cost + cost
			}
		})
	}
	return table
}

// tableEnds works out, from the last state to the first, what it costs to finish, and calls yield for every step of every state: what
// is done before it, the operation it does, and the cost of the cheapest order through it.
func (m *model) tableEnds(table *store, yield func(done Set, op int, through int32)) {
	for i := int32(table.n) - 1; i >= 0; i-- {
		n := table.at(i)
		n.rest = deadEnd
		if n.done == m.full {
			n.rest = 0
		}
		m.successors(n.state(), func(t state, op int, cost int32) {
			id, _ := table.find(t)
			on := min(deadEnd, cost+table.at(id).rest)
			n.rest = min(n.rest, on)
			yield(n.done, op, n.cost+on)
		})
	}
}

// put keeps a node and enters it under its state, which must be new.
func (s *store) put(n node) {
	_, slot := s.find(n.state())
	s.enter(s.add(n), slot)
}

// boundOpposites fills the costs of the pairs with what a small search for each proves. The bound is that of the problem without the
// opposite order demanded, which is a relaxation of the problem with it.
func (m *model) boundOpposites(pairs []Neighbour, at []int, known int) {
	bound := newEstimator(m, DefaultBudget)
	for k := range pairs {
		pair := &pairs[k]
		if pair.Arc >= 0 {
			continue
		}
		s := newSearch(m.demanding(at[pair.After], at[pair.Before]), bound, bound.spent()+opposedBudget)
		finished := s.run(s.budget)
		pair.Exact = finished
		pair.Impossible = finished && s.incumbent == nil
		if !pair.Impossible {
			pair.Cost = max(known, int(m.base+s.lower()))
		}
	}
}

// demanding returns the model with operation first demanded before operation second. Operations are then no longer numbered each after
// its predecessors, so absorption must look more than once: the model is not plain. It numbers its memories of links anew.
func (m *model) demanding(first, second int) *model {
	d := *m
	d.plain = false
	d.links = newLinks(&d)
	d.pred, d.succ = closure(m.n, append(m.arcs(), [2]int{first, second}))
	return &d
}

// arcs returns precedence as arcs of the model, indirect ones included.
func (m *model) arcs() [][2]int {
	var arcs [][2]int
	for op, pred := range m.pred {
		for ; pred != 0; pred = pred.rest() {
			arcs = append(arcs, [2]int{pred.first(), op})
		}
	}
	return arcs
}
