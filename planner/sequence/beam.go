package sequence

import (
	"cmp"
	"slices"
)

// beam looks for a good order quickly: of all states with the same number of operations done it goes on from the most
// promising width ones only. What it finds becomes the incumbent of the search.
func (s *search) beam(width int) {
	b := &beam{search: s, layers: make([]map[state]int32, s.m.n+1)}
	b.keep(node{class: -1, parent: -1})
	for done := range s.m.n {
		for _, id := range b.widest(done, width) {
			b.expand(id)
		}
		b.layers[done] = nil
	}
	s.beamed += len(b.nodes)
}

type beam struct {
	*search
	nodes  []node
	layers []map[state]int32 // by number of operations done: node numbers
}

// widest returns the width most promising nodes of a layer.
func (b *beam) widest(done, width int) []int32 {
	ids := make([]int32, 0, len(b.layers[done]))
	for _, id := range b.layers[done] {
		ids = append(ids, id)
	}
	slices.SortFunc(ids, func(i, j int32) int {
		x, y := &b.nodes[i], &b.nodes[j]
		return cmp.Or(
			cmp.Compare(x.cost+x.rest, y.cost+y.rest),
			cmp.Compare(x.rest, y.rest),
			cmp.Compare(x.done, y.done),
			cmp.Compare(x.class, y.class),
			cmp.Compare(x.mem, y.mem),
		)
	})
	return ids[:min(width, len(ids))]
}

func (b *beam) expand(id int32) {
	n := b.nodes[id]
	st := n.state()
	b.m.moves(st, b.m.available(st.done), func(op, choice int) {
		b.stats.Generated++
		c := &b.m.choices[op][choice]
		cost := n.cost + b.m.stepInto(st.class, c.class) + c.excess
		if cost >= b.best || !b.m.verdicts.allowed(op, choice, st.done) {
			return
		}
		mem, ok := b.m.links.after(st.mem, st.class, c.class, op, st.done)
		if !ok {
			return
		}
		t := b.m.absorb(state{st.done.With(op), c.class, mem}, nil)
		b.keep(node{done: t.done, mem: t.mem, class: int16(t.class), cost: cost, parent: id, op: uint8(op), choice: uint8(choice)})
	})
}

// keep enters a state into its layer, if it is new or cheaper than before, and may still beat the incumbent.
func (b *beam) keep(n node) {
	layer := &b.layers[n.done.Len()]
	if *layer == nil {
		*layer = map[state]int32{}
	}
	id, seen := (*layer)[n.state()]
	switch {
	case !seen:
		n.rest = b.bound.rest(n.done, int(n.class), b.best-n.cost)
		id = int32(len(b.nodes))
	case b.nodes[id].cost <= n.cost:
		return
	default:
		n.rest = b.nodes[id].rest
	}
	if n.cost+n.rest >= b.best || n.rest >= deadEnd {
		return
	}
	if seen {
		b.nodes[id] = n
	} else {
		b.nodes = append(b.nodes, n)
		(*layer)[n.state()] = id
	}
	if n.done == b.m.full {
		b.best, b.incumbent = n.cost, b.order(id)
	}
}

func (b *beam) order(id int32) []Step {
	var chain []node
	for ; id >= 0; id = b.nodes[id].parent {
		chain = append(chain, b.nodes[id])
	}
	slices.Reverse(chain)
	return b.m.replay(chain)
}
