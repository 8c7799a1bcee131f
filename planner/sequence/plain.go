package sequence

import "slices"

// state is what the future depends on: what is done, the class of the last operation, and what links must remember.
type state struct {
	done  Set
	class int
	mem   uint32
}

type origin struct {
	cost   int32
	prev   state
	op     int
	choice int
}

// solvePlain fills the table of all states layer by layer: no bound, no dominance.
func solvePlain(m *model) Result {
	start := state{class: -1}
	reached := map[state]origin{start: {}}
	layer := []state{start}
	var res Result
	deepest := layer
	for len(layer) > 0 {
		deepest = layer
		var next []state
		for _, s := range layer {
			res.Stats.Expanded++
			m.successors(s, func(t state, o origin) {
				o.cost += reached[s].cost
				old, seen := reached[t]
				if !seen {
					next = append(next, t)
				}
				if !seen || o.cost < old.cost {
					reached[t] = o
				}
			})
		}
		layer = next
	}
	res.Stats.Stored = len(reached)
	res.Proven = true
	best := slices.MinFunc(deepest, func(a, b state) int { return int(reached[a].cost - reached[b].cost) })
	if best.done != m.full {
		res.Blocked = m.blocked(newRoam(m))
		return res
	}
	res.Cost = int(reached[best].cost)
	res.Bound = res.Cost
	for s := best; s.done != 0; s = reached[s].prev {
		o := reached[s]
		res.Order = append(res.Order, Step{m.opOf[o.op], m.choices[o.op][o.choice].alt})
	}
	slices.Reverse(res.Order)
	return res
}

// successors calls yield for every state one operation further on.
func (m *model) successors(s state, yield func(state, origin)) {
	for ready := m.available(s.done); ready != 0; ready = ready.rest() {
		op := ready.first()
		for k, c := range m.choices[op] {
			if !m.verdicts.allowed(op, k, s.done) {
				continue
			}
			mem, ok := m.links.after(s.mem, s.class, c.class, op, s.done)
			if !ok {
				continue
			}
			cost := m.stepInto(s.class, c.class) + c.own
			yield(state{s.done.With(op), c.class, mem}, origin{cost, s, op, k})
		}
	}
}
