package sequence

import "math/bits"

// state is what the future depends on: what is done, the class of the last operation (-1: none yet), and what links must remember.
type state struct {
	done  Set
	class int
	mem   uint32
}

// node is a state that the search keeps, with the cheapest way to it found so far.
type node struct {
	done   Set
	mem    uint32
	cost   int32 // cost so far, above model.base
	rest   int32 // lower bound of what is to come
	parent int32 // -1: the start
	class  int16 // -1: nothing mounted
	op     uint8 // the operation that led here; what was absorbed after it follows from the rules
	choice uint8
	status status
}

func (n *node) state() state { return state{n.done, int(n.class), n.mem} }

type status uint8

const (
	open    status = iota + 1 // in the table, to be expanded
	closed                    // expanded
	pending                   // a step whose verdict is not asked yet; not in the table
	checked                   // pending once; what it led to is kept apart, if it was allowed
)

// store holds nodes in pages that never move, and finds them by state.
type store struct {
	pages [][]node
	n     int
	slots []int32 // node number + 1, or 0; open addressing
	used  int
}

const (
	pageBits = 13
	pageSize = 1 << pageBits
)

func newStore() *store { return &store{slots: make([]int32, 1<<10)} }

func (s *store) at(i int32) *node { return &s.pages[i>>pageBits][i&(pageSize-1)] }

// add keeps a node without entering it in the table.
func (s *store) add(n node) int32 {
	if s.n>>pageBits == len(s.pages) {
		size := pageSize
		if s.n == 0 {
			size = 1 << 8 // small problems stay small: the first page grows
		}
		s.pages = append(s.pages, make([]node, 0, size))
	}
	page := &s.pages[s.n>>pageBits]
	*page = append(*page, n)
	s.n++
	return int32(s.n - 1)
}

// find returns the number of the node with the given state, or -1, and the slot where it is or belongs.
func (s *store) find(st state) (int32, int) {
	mask := len(s.slots) - 1
	for i := int(st.hash()) & mask; ; i = (i + 1) & mask {
		at := s.slots[i] - 1
		if at < 0 {
			return -1, i
		}
		if n := s.at(at); n.done == st.done && int(n.class) == st.class && n.mem == st.mem {
			return at, i
		}
	}
}

// enter puts node number i into the slot that find gave for its state.
func (s *store) enter(i int32, slot int) {
	s.slots[slot] = i + 1
	s.used++
	if 2*s.used > len(s.slots) {
		s.grow()
	}
}

func (s *store) grow() {
	old := s.slots
	s.slots = make([]int32, 2*len(old))
	for _, e := range old {
		if e != 0 {
			_, slot := s.find(s.at(e - 1).state())
			s.slots[slot] = e
		}
	}
}

func (st state) hash() uint64 {
	return mix(uint64(st.done), uint64(st.class)<<32|uint64(st.mem))
}

// mix spreads two words over one: a multiplication to 128 bits, folded.
func mix(a, b uint64) uint64 {
	hi, lo := bits.Mul64(a^0x9e3779b97f4a7c15, b^0xd1b54a32d192ed03)
	h := hi ^ lo
	hi, lo = bits.Mul64(h^a, 0xa0761d6478bd642f)
	return hi ^ lo
}
