package sequence

// estimator bounds from below what a state still costs above the least own costs of its operations.
type estimator interface {
	rest(done Set, class int, limit int32) int32
	entries() int // size of the tables behind it
	spent() int   // nodes used up to fill them
}

// projections bounds the rest of a problem with setups and tools. The cost of a step is a sum: machine and setup on one side, tool
// on the other. Each side alone, with verdicts, links and extra own cost left out, is a smaller problem, solved exactly; the
// two answers may be added.
type projections struct {
	m      *model
	setups setupProjection
	tools  toolProjection
	pairOf []int // class -> (machine, tool)
}

// newProjections prepares the tables; each may take half of a budget.
func newProjections(m *model, budget int) *projections {
	p := &projections{m: m, pairOf: make([]int, len(m.classes))}
	p.setups = newSetupProjection(m, budget/2)
	p.tools = newToolProjection(m, p.pairOf, budget/2)
	return p
}

func (p *projections) rest(done Set, class int, limit int32) int32 {
	if class < 0 || done == p.m.full {
		return 0
	}
	c := p.m.classes[class]
	pair := p.pairOf[class]
	reached := p.m.reach(done, &p.tools.able[pair])
	simple := needed(p.tools.demands, reached)
	setups := p.setups.from(done, c.setup)
	if setups+simple >= limit {
		return setups + simple
	}
	return min(deadEnd, setups+p.tools.value(reached))
}

func (p *projections) entries() int { return p.setups.memo.n + p.tools.memo.n }

func (p *projections) spent() int { return p.setups.memo.spent() + p.tools.memo.spent() }

// deadEnd is the bound of a state from which the work cannot be finished. Two of it, and a cost, still fit.
const deadEnd = int32(1) << 29

// ability is what can be done under one label (a setup, or a machine with a tool). A relaxation runs ahead of the true search: it has
// always done at least as much. So of a condition only that may be used which stays true as more gets done.
type ability struct {
	ops    Set
	free   Set      // operations without a condition
	guards []guards // by operation; nil if there are none
}

// guards are the conditions of an operation under a label, one of which must hold.
type guards []guard

type guard struct {
	when   *condition
	rising uint64
}

func (g *guard) open(done Set) bool { return g.rising>>g.when.place(done)&1 != 0 }

func (a *ability) add(op int, when *condition) {
	a.ops = a.ops.With(op)
	if when == nil {
		a.free = a.free.With(op)
		return
	}
	if a.guards == nil {
		a.guards = make([]guards, MaxOps)
	}
	a.guards[op] = append(a.guards[op], guard{when, when.rising()})
}

func (a *ability) opens(op int, done Set) bool {
	if a.free.Has(op) {
		return true
	}
	for i := range a.guards[op] {
		if a.guards[op][i].open(done) {
			return true
		}
	}
	return false
}

// reach returns done with everything added that can be done one after another under one label.
func (m *model) reach(done Set, able *ability) Set {
	for again := true; again; {
		again = false
		for left := able.ops &^ done; left != 0; left = left.rest() {
			if op := left.first(); m.pred[op]&^done == 0 && able.opens(op, done) {
				done = done.With(op)
				again = able.free != able.ops // what is done may open a guard of an operation passed over
			}
		}
	}
	return done
}

// memo is a hash table from (set, small number) to a cost.
type memo struct {
	slots []memoSlot
	n     int
	ways  int // ways on that were tried for its entries
	most  int // nodes it may take
}

// waysPerNode is how many ways on, tried for the entries of a table, count as one node of a budget beside the entries themselves.
const waysPerNode = 32

func (t *memo) spent() int { return t.n + t.ways/waysPerNode }

// mostEntries is the most entries of one table: with more it would grow beyond 256 MiB.
const mostEntries = 11_000_000

// full reports that nothing more can be kept: the simple bound must do from now on.
func (t *memo) full() bool { return t.n >= mostEntries || t.spent() >= t.most }

type memoSlot struct {
	done  Set
	key   int32
	value int32 // value + 1; 0: empty
}

func newMemo(most int) memo { return memo{slots: make([]memoSlot, 1<<8), most: most} }

func (t *memo) slot(done Set, key int32) *memoSlot {
	mask := len(t.slots) - 1
	for i := int(mix(uint64(done), uint64(key))) & mask; ; i = (i + 1) & mask {
		s := &t.slots[i]
		if s.value == 0 || s.done == done && s.key == key {
			return s
		}
	}
}

func (t *memo) get(done Set, key int32) (int32, bool) {
	s := t.slot(done, key)
	return s.value - 1, s.value != 0
}

func (t *memo) put(done Set, key, value int32) {
	*t.slot(done, key) = memoSlot{done, key, value + 1}
	if t.n++; 3*t.n > 2*len(t.slots) {
		old := t.slots
		t.slots = make([]memoSlot, 2*len(old))
		for _, s := range old {
			if s.value != 0 {
				*t.slot(s.done, s.key) = s
			}
		}
	}
}
