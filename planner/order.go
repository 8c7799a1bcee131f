package planner

import (
	"math"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/sequence"
	"catchplate/planner/shape"
)

// ordering is the work of one attempt as a problem for the sequencer, and its answer.
type ordering struct {
	ctx    *process.Context
	shop   *holding.Shop
	mounts []holding.Mount
	alts   [][]choice // by task
	arcs   []rules.Arc
	light  bool // some wall is thin enough to ask for lighter cuts
	nodes  int  // what one search may spend
	result sequence.Result
	cost   int

	refusals []plan.Refusal
}

// Costs in tenths of a minute beside the holdings' own. Ours, no source: the sheet says that the order rests on them.
const (
	tenths        = 10
	toolChange    = 8
	machineChange = 20
)

func orderWork(ctx *process.Context, shop *holding.Shop, nodes int) *ordering {
	o := &ordering{ctx: ctx, shop: shop, mounts: shop.Mounts(), nodes: nodes}
	if o.refusals = append(lacking(ctx.Part, shop.Tasks), o.untrue()...); o.refusals != nil {
		return o
	}
	o.arcs = ctx.Rules.Arcs(o.work())
	if o.refusals = o.circle(); o.refusals != nil {
		return o
	}
	o.light = o.thin() || ctx.Part.Flat()
	o.choices()
	if o.refusals = o.unheld(); o.refusals == nil {
		o.solve()
	}
	return o
}

// solve finds the cheapest order whose stays also have one grip that serves them. The bound is that of the first search, which knows nothing of companions.
func (o *ordering) solve() {
	for try := 0; ; try++ {
		result, err := sequence.Solve(o.problem(), o.nodes)
		if err != nil {
			o.refusals = []plan.Refusal{{What: "ordering", Reasons: []string{err.Error()}, Remedies: []string{"draw the part with fewer features"}}}
			return
		}
		if try > 0 {
			result.Bound = o.result.Bound
			result.Proven = result.Proven && result.Cost == result.Bound
		}
		o.result, o.cost = result, result.Cost
		if result.Blocked != nil {
			o.refusals = o.blocked()
			return
		}
		step, spoiled, crowded := o.crowded(result.Order)
		if !crowded {
			return
		}
		if try == mostTries {
			o.refusals = []plan.Refusal{{Feature: o.shop.Tasks[step.Op].Feature, What: o.shop.Tasks[step.Op].ID, Reasons: []string{"no one grip serves all operations of a setting: what holds the heaviest cut spoils the thinnest wall"}, Remedies: []string{"lighter cuts, thicker stock, or a holding that does not squeeze"}}}
			return
		}
		o.relieve(step, spoiled)
	}
}

// mostTries bounds the searches made anew for want of a common grip.
const mostTries = 12

// work is what the rules of order see.
func (o *ordering) work() rules.Work {
	ops := make([]shape.Op, len(o.shop.Tasks))
	for i, t := range o.shop.Tasks {
		ops[i] = t.Op
	}
	return rules.Work{Part: o.ctx.Part, Ops: ops, Free: o.ctx.Place.Free, Length: o.ctx.Length, FromEnd: func(op int, end partspec.End) bool {
		for _, w := range o.shop.Tasks[op].Ways {
			if w.Ordinary && w.End == end {
				return true
			}
		}
		return false
	}}
}

func (o *ordering) problem() *sequence.Problem {
	p := &sequence.Problem{MachineChange: machineChange}
	used, index := o.usedMounts()
	machines := map[partspec.MachineKind]int{}
	for _, k := range used {
		m := o.mounts[k]
		if _, ok := machines[m.Machine]; !ok {
			machines[m.Machine] = len(p.Machines)
			p.Machines = append(p.Machines, o.ctx.MachineFor(m.Machine).Name)
		}
		p.Setups = append(p.Setups, sequence.Setup{Name: m.ID, Machine: machines[m.Machine], Cost: int(math.Round(m.Minutes*tenths)) + o.settingPrice()})
	}
	tools := map[string]int{}
	for i, t := range o.shop.Tasks {
		op := sequence.Op{Name: t.ID, Rank: i}
		for _, c := range o.alts[i] {
			id := c.way.Tool.ID()
			if _, ok := tools[id]; !ok {
				tools[id] = len(p.Tools)
				p.Tools = append(p.Tools, sequence.Tool{Name: id, Cost: toolChange})
			}
			op.Alts = append(op.Alts, sequence.Alt{Setup: index[c.mount], Tool: tools[id], Own: c.own(), Mask: o.mask(i, c)})
		}
		p.Ops = append(p.Ops, op)
	}
	for _, a := range o.arcs {
		if a.End == partspec.EndInvalid {
			p.Prec = append(p.Prec, [2]int{a.Before, a.After})
		}
	}
	p.Prec = unique(p.Prec)
	p.Links = o.links(used)
	p.Allowed = func(op, alt int, done sequence.Set) bool { return o.allowed(op, o.alts[op][alt], done.Has) }
	return p
}

// settingPrice is what every setting is charged above its minutes, for the truth that is lost with it (rule A-46).
func (o *ordering) settingPrice() int {
	if o.ctx.Rules.Has("A-46") {
		return 5 * tenths
	}
	return 0
}

// usedMounts keeps the mounts that some task could use, and where each then stands.
func (o *ordering) usedMounts() (used []int, index map[int]int) {
	index = map[int]int{}
	for _, alts := range o.alts {
		for _, c := range alts {
			index[c.mount] = 0
		}
	}
	for k := range index {
		used = append(used, k)
	}
	sort.Ints(used)
	for i, k := range used {
		index[k] = i
	}
	return used, index
}

func unique(arcs [][2]int) [][2]int {
	seen := map[[2]int]bool{}
	var out [][2]int
	for _, a := range arcs {
		if !seen[a] {
			seen[a] = true
			out = append(out, a)
		}
	}
	return out
}

// mask is the tasks on which a choice's verdict depends.
func (o *ordering) mask(task int, c choice) sequence.Set {
	s := sequence.SetOf(o.shop.Mask(o.mounts[c.mount], task, *c.way, c.facts.Tender)...)
	for _, a := range o.arcs {
		if a.After == task && a.End == o.mounts[c.mount].Free {
			s = s.With(a.Before)
		}
	}
	return s
}

// allowed asks whether a choice is open once some tasks are done.
func (o *ordering) allowed(task int, c choice, done func(int) bool) bool {
	return o.waits(task, c, done) < 0 && o.shop.Allows(o.mounts[c.mount], task, *c.way, c.light, *c.facts, done)
}

// waits gives an arc that binds this choice and is not satisfied, or -1.
func (o *ordering) waits(task int, c choice, done func(int) bool) int {
	for i, a := range o.arcs {
		if a.After == task && a.End == o.mounts[c.mount].Free && !done(a.Before) {
			return i
		}
	}
	return -1
}

func (o *ordering) objections(task int, c choice, done func(int) bool) []rules.Verdict {
	v, _ := o.shop.Judge(o.mounts[c.mount], task, *c.way, c.light, *c.facts, done)
	return v
}
