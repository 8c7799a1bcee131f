package sequence

// estimator bounds from below what a state still costs above the least own costs of its operations.
type estimator interface {
	rest(done Set, class int) int32
	entries() int // size of the tables behind it
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

func newProjections(m *model) *projections {
	p := &projections{m: m, pairOf: make([]int, len(m.classes))}
	p.setups = newSetupProjection(m)
	p.tools = newToolProjection(m, p.pairOf)
	return p
}

func (p *projections) rest(done Set, class int) int32 {
	if class < 0 || done == p.m.full {
		return 0
	}
	c := p.m.classes[class]
	return p.setups.from(done, c.setup) + p.tools.from(done, p.pairOf[class])
}

func (p *projections) entries() int { return p.setups.memo.n + p.tools.memo.n }

// reach returns done with everything added that the operations in able can do one after another.
func (m *model) reach(done, able Set) Set {
	for left := able &^ done; left != 0; left = left.rest() {
		if op := left.first(); m.pred[op]&^done == 0 {
			done = done.With(op)
		}
	}
	return done
}

// memo is a hash table from (set, small number) to a cost.
type memo struct {
	slots []memoSlot
	n     int
}

type memoSlot struct {
	done  Set
	key   int32
	value int32 // value + 1; 0: empty
}

func newMemo() memo { return memo{slots: make([]memoSlot, 1<<8)} }

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
	if t.n++; 2*t.n > len(t.slots) {
		old := t.slots
		t.slots = make([]memoSlot, 2*len(old))
		for _, s := range old {
			if s.value != 0 {
				*t.slot(s.done, s.key) = s
			}
		}
	}
}
