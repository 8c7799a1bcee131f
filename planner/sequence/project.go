package sequence

import "slices"

// setupProjection is the problem with tools left out: what do the mountings and changes of machine still to come cost?
// The answer hangs on what is done, with all done that the present setup can do, and on the present machine: what may be
// mounted next then costs the same from every setup of that machine.
type setupProjection struct {
	m       *model
	able    []ability // by setup
	demands []demand
	cost    []int32
	machine []int
	onlyOn  []Set // machine -> operations that no other machine can do
	memo    memo
}

func newSetupProjection(m *model, entries int) setupProjection {
	p := setupProjection{m: m, memo: newMemo(entries)}
	for _, s := range m.p.Setups {
		p.cost = append(p.cost, int32(s.Cost))
		p.machine = append(p.machine, s.Machine)
	}
	able, only := labels(m, len(p.cost), func(class int) int { return m.classes[class].setup })
	p.able, p.demands = able, demanded(only, p.cost)
	_, p.onlyOn = labels(m, len(m.p.Machines), func(class int) int { return m.classes[class].machine })
	return p
}

// labels returns, for each of n labels of classes, which operations can be done under it, and which under no other.
func labels(m *model, n int, of func(class int) int) (able []ability, only []Set) {
	able, only = make([]ability, n), make([]Set, n)
	for op, choices := range m.choices {
		first := of(choices[0].class)
		single := true
		for _, c := range choices {
			l := of(c.class)
			able[l].add(op, c.when)
			single = single && l == first
		}
		if single {
			only[first] = only[first].With(op)
		}
	}
	return able, only
}

func (p *setupProjection) from(done Set, setup int) int32 {
	return p.value(p.m.reach(done, &p.able[setup]), p.machine[setup])
}

// entry is a way on from a state of a projection.
type entry struct {
	done  Set
	label int
	cost  int32
	least int32 // cost and a simple bound of what follows
}

func (p *setupProjection) value(done Set, machine int) int32 {
	if done == p.m.full {
		return 0
	}
	if v, ok := p.memo.get(done, int32(machine)); ok {
		return v
	}
	if p.memo.full() {
		return p.simple(done, machine)
	}
	var buf [32]entry
	entries := buf[:0]
	ready := p.m.available(done)
	for s := range p.able {
		able := &p.able[s]
		if able.ops&ready == 0 {
			continue
		}
		p.memo.ways++
		e := entry{done: p.m.reach(done, able), label: s, cost: p.cost[s]}
		if e.done == done {
			continue
		}
		if p.machine[s] != machine {
			e.cost += int32(p.m.p.MachineChange)
		}
		e.least = e.cost + p.simple(e.done, p.machine[s])
		entries = append(entries, e)
	}
	slices.SortFunc(entries, func(a, b entry) int { return int(a.least - b.least) })
	best := deadEnd
	for _, e := range entries {
		if e.least >= best {
			break
		}
		best = min(best, e.cost+p.value(e.done, p.machine[e.label]))
	}
	p.memo.put(done, int32(machine), best)
	return best
}

// simple is a bound that needs no table: every setup, and every other machine, that alone can do some operation left.
func (p *setupProjection) simple(done Set, machine int) int32 {
	n := 0
	for k, ops := range p.onlyOn {
		if k != machine && ops&^done != 0 {
			n++
		}
	}
	return int32(n*p.m.p.MachineChange) + needed(p.demands, done)
}

// demand is what must be paid once if one of the operations is left: they can be done under one label only, which costs so much.
type demand struct {
	ops  Set
	cost int32
}

// demanded lists the demands of labels that are alone with some operation.
func demanded(only []Set, cost []int32) []demand {
	var list []demand
	for l, ops := range only {
		if ops != 0 && cost[l] != 0 {
			list = append(list, demand{ops, cost[l]})
		}
	}
	return list
}

// needed is the simple bound: the sum of the demands of what is left.
func needed(demands []demand, done Set) int32 {
	sum := int32(0)
	for _, d := range demands {
		if d.ops&^done != 0 {
			sum += d.cost
		}
	}
	return sum
}

// toolProjection is the problem with setups left out: what do the tools still to be mounted cost? A label is a pair of machine
// and tool. The answer hangs on what is done only, with all done that the present pair can do: any other pair costs its tool.
type toolProjection struct {
	m       *model
	able    []ability // by pair
	only    []Set     // pair -> operations that no other pair can do
	demands []demand
	cost    []int32
	memo    memo
}

func newToolProjection(m *model, pairOf []int, entries int) toolProjection {
	type pair struct{ machine, tool int }
	number := map[pair]int{}
	p := toolProjection{m: m, memo: newMemo(entries)}
	for i, c := range m.classes {
		k, ok := number[pair{c.machine, c.tool}]
		if !ok {
			k = len(p.cost)
			number[pair{c.machine, c.tool}] = k
			p.cost = append(p.cost, int32(m.p.Tools[c.tool].Cost))
		}
		pairOf[i] = k
	}
	p.able, p.only = labels(m, len(p.cost), func(class int) int { return pairOf[class] })
	p.demands = demanded(p.only, p.cost)
	return p
}

func (p *toolProjection) value(done Set) int32 {
	if done == p.m.full {
		return 0
	}
	if v, ok := p.memo.get(done, 0); ok {
		return v
	}
	if p.memo.full() {
		return needed(p.demands, done)
	}
	var buf [64]entry
	entries := buf[:0]
	ready := p.m.available(done)
	best := deadEnd
	for l := range p.able {
		able := &p.able[l]
		if able.ops&ready == 0 {
			continue
		}
		p.memo.ways++
		e := entry{done: p.m.reach(done, able), label: l, cost: p.cost[l]}
		if e.done == done {
			continue
		}
		if p.only[l]&ready&e.done != 0 && able.ops&^e.done == 0 {
			// The pair must come, and coming now it does all it ever can: nothing is lost by taking it at once.
			best = e.cost + p.value(e.done)
			p.memo.put(done, 0, best)
			return best
		}
		entries = append(entries, e)
	}
	entries = undominated(entries)
	for i := range entries {
		entries[i].least = entries[i].cost + needed(p.demands, entries[i].done)
	}
	slices.SortFunc(entries, func(a, b entry) int { return int(a.least - b.least) })
	for _, e := range entries {
		if e.least >= best {
			break
		}
		best = min(best, e.cost+p.value(e.done))
	}
	p.memo.put(done, 0, best)
	return best
}

// mostCompared is the most entries that are compared each with each: with more that takes longer than it saves.
const mostCompared = 64

// undominated drops every entry that does no more than another and costs no less.
func undominated(entries []entry) []entry {
	if len(entries) > mostCompared {
		return entries
	}
	kept := entries[:0]
	for i, e := range entries {
		dominated := false
		for j, o := range entries {
			if i == j || e.done&^o.done != 0 || o.cost > e.cost {
				continue
			}
			if e.done != o.done || o.cost < e.cost || j < i {
				dominated = true
				break
			}
		}
		if !dominated {
			kept = append(kept, e)
		}
	}
	return kept
}
