package sequence

import (
	"cmp"
	"slices"
)

// maxAlts is the most alternatives of one operation: an alternative's place is kept in a byte of every state.
const maxAlts = 256

// model is a problem made ready for the search. Operations, alternatives and classes are put in an order that does not hang on
// how the input lists them; opOf leads back to the indices of the problem. All costs of changing are between classes.
type model struct {
	p     *Problem
	n     int
	full  Set
	opOf  []int   // model operation -> problem operation
	altOf [][]int // alternative of a sharpened problem -> alternative of the original; nil if it is not sharpened

	pred, succ []Set // direct and indirect predecessors and successors
	choices    [][]choice
	least      []int32 // least own cost of each operation
	base       int32   // sum of least: every order pays it

	conditional bool // some choice has a mask

	classes []class
	entry   []int32   // cost of starting in a class
	change  [][]int32 // cost from class to class
	// triangle says that change never gets cheaper by a detour. Without a matrix it is so: the setup, and the tool with its machine, that a step ends with were each taken
	// up on the last part of the detour, or before and kept; and a detour changes machines at least as often.
	triangle bool

	links      links
	verdicts   verdicts
	absorption absorption
	entered    []bool // scratch of moves
	plain      bool   // neither verdicts nor links
}

// class is what the cost of a step depends on. In a problem with a matrix, every operation is a class of its own.
type class struct{ setup, tool, machine int }

// choice is an alternative in model terms.
type choice struct {
	class  int
	own    int32      // own cost and risk
	excess int32      // own above the operation's least
	alt    int        // index in the problem
	mask   Set        // operations of the model on which the verdict hangs; 0 if there is none to ask
	when   *condition // all answers on it, if they are known
}

// newModel translates a valid problem. A sharpened problem has altOf to lead back to the alternatives of the original; then
// all answers of Allowed that hang on few operations are worked into the model.
func newModel(p *Problem, altOf [][]int) *model {
	m := &model{p: p, altOf: altOf, n: len(p.Ops), full: fullSet(len(p.Ops))}
	m.sortOps()
	m.closePrecedence()
	m.makeClasses()
	m.makeChoices()
	m.makeCosts()
	m.links = newLinks(m)
	m.verdicts = newVerdicts(m)
	if altOf != nil {
		m.tabulate()
	}
	m.entered = make([]bool, len(m.classes))
	m.absorption = newAbsorption(m)
	m.plain = m.links.tied == 0 && !m.conditional
	return m
}

// sortOps numbers the operations: each after its predecessors, and of those that may come next first the one listed first. So one
// pass through a set in rising order meets every operation after its predecessors.
func (m *model) sortOps() {
	pred := make([]Set, m.n)
	for _, arc := range m.p.Prec {
		pred[arc[1]] = pred[arc[1]].With(arc[0])
	}
	for placed := Set(0); placed != m.full; {
		for left := m.full &^ placed; left != 0; left = left.rest() {
			if op := left.first(); pred[op]&^placed == 0 {
				placed = placed.With(op)
				m.opOf = append(m.opOf, op)
				break
			}
		}
	}
}

// toProblem translates a set.
func (m *model) toProblem(s Set) Set { return move(s, m.opOf) }

func (m *model) closePrecedence() {
	at := inverse(m.opOf)
	arcs := make([][2]int, len(m.p.Prec))
	for i, arc := range m.p.Prec {
		arcs[i] = [2]int{at[arc[0]], at[arc[1]]}
	}
	m.pred, m.succ = closure(m.n, arcs)
}

// closure returns all direct and indirect predecessors and successors of n operations.
func closure(n int, arcs [][2]int) (pred, succ []Set) {
	pred, succ = make([]Set, n), make([]Set, n)
	for _, arc := range arcs {
		pred[arc[1]] = pred[arc[1]].With(arc[0])
	}
	for k := range n { // Warshall: after round k, paths through 0 … k are in
		for i := range n {
			if pred[i].Has(k) {
				pred[i] |= pred[k]
			}
		}
	}
	for i := range n {
		for s := pred[i]; s != 0; s = s.rest() {
			succ[s.first()] = succ[s.first()].With(i)
		}
	}
	return pred, succ
}

// classOf returns the class of an alternative as a value. With a matrix the setup stands for the operation.
func (m *model) classOf(op int, a Alt) class {
	if m.p.Between != nil {
		return class{setup: op}
	}
	return class{setup: a.Setup, tool: a.Tool, machine: m.p.Setups[a.Setup].Machine}
}

func (m *model) compareClasses(a, b class) int {
	if m.p.Between != nil {
		return cmp.Compare(a.setup, b.setup)
	}
	s, t := m.p.Setups, m.p.Tools
	return cmp.Or(
		cmp.Compare(m.p.Machines[a.machine], m.p.Machines[b.machine]),
		cmp.Compare(s[a.setup].Name, s[b.setup].Name),
		cmp.Compare(t[a.tool].Name, t[b.tool].Name),
		cmp.Compare(a.setup, b.setup),
		cmp.Compare(a.tool, b.tool),
	)
}

func (m *model) makeClasses() {
	for i, op := range m.opOf {
		for _, a := range m.p.Ops[op].Alts {
			m.classes = append(m.classes, m.classOf(i, a))
		}
	}
	slices.SortFunc(m.classes, m.compareClasses)
	m.classes = slices.Compact(m.classes)
}

func (m *model) makeChoices() {
	at := inverse(m.opOf)
	m.choices = make([][]choice, m.n)
	m.least = make([]int32, m.n)
	for i, op := range m.opOf {
		for j, a := range m.p.Ops[op].Alts {
			k, _ := slices.BinarySearchFunc(m.classes, m.classOf(i, a), m.compareClasses)
			c := choice{class: k, own: int32(a.Own + a.Risk), alt: j}
			if m.p.Allowed != nil {
				for s := a.Mask; s != 0; s = s.rest() {
					c.mask = c.mask.With(at[s.first()])
					m.conditional = true
				}
			}
			m.choices[i] = append(m.choices[i], c)
		}
		slices.SortStableFunc(m.choices[i], func(a, b choice) int {
			return cmp.Or(cmp.Compare(a.class, b.class), cmp.Compare(a.own, b.own), cmp.Compare(a.mask, b.mask))
		})
		m.choices[i] = dropDominated(m.choices[i])
		m.least[i] = slices.MinFunc(m.choices[i], func(a, b choice) int { return cmp.Compare(a.own, b.own) }).own
		m.base += m.least[i]
		for k := range m.choices[i] {
			m.choices[i][k].excess = m.choices[i][k].own - m.least[i]
		}
	}
}

// dropDominated drops every choice for which another of its class costs no more and is always allowed. The choices of a class
// come cheapest first.
func dropDominated(choices []choice) []choice {
	kept := choices[:0]
	free := -1 // class for which an unconditional choice is kept
	for _, c := range choices {
		if c.class == free {
			continue
		}
		kept = append(kept, c)
		if c.mask == 0 {
			free = c.class
		}
	}
	return kept
}

func (m *model) makeCosts() {
	p, k := m.p, len(m.classes)
	m.entry = make([]int32, k)
	m.change = make([][]int32, k)
	for i, x := range m.classes {
		m.change[i] = make([]int32, k)
		if p.Between == nil && !p.FirstFree {
			m.entry[i] = int32(p.Setups[x.setup].Cost + p.Tools[x.tool].Cost)
		}
		for j, y := range m.classes {
			if i != j {
				m.change[i][j] = m.changeCost(x, y)
			}
		}
	}
	m.triangle = p.Between == nil
}

func (m *model) changeCost(x, y class) int32 {
	p := m.p
	if p.Between != nil {
		return int32(p.Between[m.opOf[x.setup]][m.opOf[y.setup]])
	}
	cost := 0
	if x.machine != y.machine {
		cost += p.MachineChange
	}
	if x.setup != y.setup {
		cost += p.Setups[y.setup].Cost
	}
	if x.machine != y.machine || x.tool != y.tool {
		cost += p.Tools[y.tool].Cost
	}
	return int32(cost)
}

// tabulate works out the conditions of all choices that hang on few operations.
func (m *model) tabulate() {
	for op := range m.choices {
		for k := range m.choices[op] {
			if c := &m.choices[op][k]; c.mask != 0 && c.mask.Len() <= maxHangs {
				c.when = tabulate(c.mask.Ops(), m.pred, func(done Set) bool { return m.verdicts.allowed(op, k, done) })
			}
		}
	}
}

// original returns the alternative of the caller's problem that a choice stands for.
func (m *model) original(op, choice int) int {
	alt := m.choices[op][choice].alt
	if m.altOf == nil {
		return alt
	}
	return m.altOf[m.opOf[op]][alt]
}

// step returns a step in the problem's terms.
func (m *model) step(op, choice int) Step {
	return Step{m.opOf[op], m.original(op, choice)}
}

// stepInto returns the cost of going from class from (none if negative: the start) to class to.
func (m *model) stepInto(from, to int) int32 {
	if from < 0 {
		return m.entry[to]
	}
	return m.change[from][to]
}

// available returns the operations not done whose predecessors are done.
func (m *model) available(done Set) Set {
	var ready Set
	for s := m.full &^ done; s != 0; s = s.rest() {
		if op := s.first(); m.pred[op]&^done == 0 {
			ready = ready.With(op)
		}
	}
	return ready
}
