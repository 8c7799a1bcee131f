package sequence

import (
	"encoding/binary"
	"iter"
)

// links keeps what a state must remember for links: for every operation that is done while a partner of it is not, whether
// its mounting is still open, and else in which setup it was done. What is remembered is a row of marks, one for each linked
// operation; rows are numbered as they turn up, so that a state holds one small number (a memory). Memory 0 is the empty row.
type links struct {
	m        *model
	ops      []int       // linked operations, rising
	slot     []int       // operation -> place in ops, or -1
	partners [][]partner // by slot
	tied     Set         // the linked operations

	rows  [][]byte          // memory -> row
	known map[string]uint32 // row -> memory
	row   []byte            // scratch
}

// partner is the other end of a link, with the setups in which it may be done once the earlier one's mounting is left.
type partner struct {
	op    int
	later [][]bool // setup of the earlier one -> setup of this one -> may it be; nil if the link demands one mounting
	any   []bool   // setup of the earlier one -> is there one in which it may be
}

// A mark is two bytes of a row.
const (
	markNone   = 0 // not done, or no partner left
	markOpen   = 1 // done in the present mounting
	markClosed = 2 // done in setup mark-markClosed, since left
)

func newLinks(m *model) links {
	l := links{m: m, slot: make([]int, m.n), known: map[string]uint32{}}
	at := inverse(m.opOf)
	for _, link := range m.p.Links {
		l.tied = l.tied.With(at[link.A]).With(at[link.B])
	}
	l.ops = l.tied.Ops()
	for i := range l.slot {
		l.slot[i] = -1
	}
	for i, op := range l.ops {
		l.slot[op] = i
	}
	l.partners = make([][]partner, len(l.ops))
	for _, link := range m.p.Links {
		l.tie(at[link.A], at[link.B], link)
		l.tie(at[link.B], at[link.A], link)
	}
	l.row = make([]byte, 2*len(l.ops))
	l.number() // the empty row is memory 0
	return l
}

// partnersOf returns the operations tied to op.
func (l *links) partnersOf(op int) Set {
	var s Set
	if slot := l.slot[op]; slot >= 0 {
		for _, pt := range l.partners[slot] {
			s = s.With(pt.op)
		}
	}
	return s
}

// tie notes that op has the partner later, and asks Cross once for every pair of setups.
func (l *links) tie(op, later int, link Link) {
	pt := partner{op: later}
	if link.Cross != nil {
		n := len(l.m.p.Setups)
		pt.later, pt.any = make([][]bool, n), make([]bool, n)
		for s := range l.setupsOf(op) {
			pt.later[s] = make([]bool, n)
			for t := range l.setupsOf(later) {
				pt.later[s][t] = link.Cross(s, t, l.m.opOf[op])
				pt.any[s] = pt.any[s] || pt.later[s][t]
			}
		}
	}
	l.partners[l.slot[op]] = append(l.partners[l.slot[op]], pt)
}

// setupsOf yields every setup that an operation has a choice in, once.
func (l *links) setupsOf(op int) iter.Seq[int] {
	return func(yield func(int) bool) {
		seen := make([]bool, len(l.m.p.Setups))
		for _, c := range l.m.choices[op] {
			s := l.m.classes[c.class].setup
			if !seen[s] && !yield(s) {
				return
			}
			seen[s] = true
		}
	}
}

func (l *links) mark(slot int) int { return int(binary.LittleEndian.Uint16(l.row[2*slot:])) }
func (l *links) setMark(slot, value int) {
	binary.LittleEndian.PutUint16(l.row[2*slot:], uint16(value))
}

// number returns the memory that stands for the scratch row.
func (l *links) number() uint32 {
	id, ok := l.known[string(l.row)]
	if !ok {
		id = uint32(len(l.rows))
		row := string(l.row)
		l.rows = append(l.rows, []byte(row))
		l.known[row] = id
	}
	return id
}

// after returns the memory after op is done in class to, coming from class from with memory mem and the operations in
// done done, and false if a link forbids it or could never be satisfied afterwards.
func (l *links) after(mem uint32, from, to, op int, done Set) (uint32, bool) {
	if len(l.ops) == 0 || mem == 0 && !l.tied.Has(op) {
		return 0, true
	}
	copy(l.row, l.rows[mem])
	setup := l.m.classes[to].setup
	if from >= 0 && l.m.classes[from].setup != setup && !l.leave(l.m.classes[from].setup, done) {
		return 0, false
	}
	if s := l.slot[op]; s >= 0 && !l.meet(s, op, setup, done) {
		return 0, false
	}
	return l.number(), true
}

// leave closes the present mounting: every open mark becomes the setup left. It is false if a partner can then never be done.
func (l *links) leave(setup int, done Set) bool {
	for s := range l.ops {
		if l.mark(s) != markOpen {
			continue
		}
		for _, pt := range l.partners[s] {
			if !done.Has(pt.op) && (pt.any == nil || !pt.any[setup]) {
				return false
			}
		}
		l.setMark(s, markClosed+setup)
	}
	return true
}

// meet does the linked operation op: it must agree with each partner done before, and is itself remembered while a partner is not done.
func (l *links) meet(slot, op, setup int, done Set) bool {
	waiting := false
	for _, pt := range l.partners[slot] {
		if !done.Has(pt.op) {
			waiting = true
			continue
		}
		if !l.agrees(l.slot[pt.op], op, setup) {
			return false
		}
	}
	if waiting {
		l.setMark(slot, markOpen)
	}
	for _, pt := range l.partners[slot] {
		l.forget(l.slot[pt.op], done.With(op))
	}
	return true
}

// mayBe reports whether the partner may be done in a setup, the earlier one having been done in another: below 0 where that is not remembered.
func (pt *partner) mayBe(earlier, setup int) bool {
	return pt.later != nil && earlier >= 0 && pt.later[earlier][setup]
}

// agrees reports whether op may be done in setup, given its partner at slot earlier. Two links may tie the same pair: each must agree.
func (l *links) agrees(earlier, op, setup int) bool {
	mark := l.mark(earlier)
	if mark == markOpen {
		return true
	}
	for _, pt := range l.partners[earlier] {
		if pt.op == op && !pt.mayBe(mark-markClosed, setup) {
			return false
		}
	}
	return true
}

// forget clears a mark that no partner waits for any more.
func (l *links) forget(slot int, done Set) {
	for _, pt := range l.partners[slot] {
		if !done.Has(pt.op) {
			return
		}
	}
	l.setMark(slot, markNone)
}
