package planner

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

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
	result sequence.Result
	cost   int

	refusals []plan.Refusal
}

// choice is one way of a task in one mount.
type choice struct {
	way   process.Way
	mount int
	light float64 // part of the ordinary depth of a pass
	facts rules.Case
}

// Costs in tenths of a minute beside the holdings' own. Ours, no source: the sheet says that the order rests on them.
const (
	tenths        = 10
	toolChange    = 8
	machineChange = 20
)

func orderWork(ctx *process.Context, shop *holding.Shop, desperate bool) *ordering {
	o := &ordering{ctx: ctx, shop: shop, mounts: shop.Mounts(desperate)}
	if o.refusals = lacking(shop.Tasks); o.refusals != nil {
		return o
	}
	o.arcs = ctx.Rules.Arcs(o.work())
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
		result, err := sequence.Solve(o.problem(), orderBudget)
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
		step, crowded := o.crowded(result.Order)
		if !crowded {
			return
		}
		if try == mostTries {
			o.refusals = []plan.Refusal{{Feature: o.shop.Tasks[step.Op].Feature, What: o.shop.Tasks[step.Op].ID, Reasons: []string{"no one grip serves all operations of a setting: what holds the heaviest cut spoils the thinnest wall"}, Remedies: []string{"lighter cuts, thicker stock, or a holding that does not squeeze"}}}
			return
		}
		o.forbid(step)
	}
}

// mostTries bounds the searches made anew for want of a common grip.
const mostTries = 12

// orderBudget bounds the search in states, so that the answer is the same on every machine.
const orderBudget = 400_000

func lacking(tasks []process.Task) []plan.Refusal {
	var out []plan.Refusal
	for _, t := range tasks {
		if len(t.Ways) == 0 {
			out = append(out, plan.Refusal{Feature: t.Feature, What: t.ID, Reasons: t.Lacking, Remedies: []string{"add the tool that is wanting to the workshop, or change the feature"}})
		}
	}
	return out
}

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

// unheld lists the tasks that no mount serves at any moment.
func (o *ordering) unheld() []plan.Refusal {
	var out []plan.Refusal
	for i, t := range o.shop.Tasks {
		if len(o.alts[i]) == 0 {
			why := o.whyNever(i)
			out = append(out, plan.Refusal{Feature: t.Feature, What: t.ID, Reasons: why, Remedies: remediesFor(why)})
		}
	}
	return out
}

// remediesFor are what helps when no holding passes: where a place could not be kept, first of all more room for it.
func remediesFor(why []string) []string {
	if slices.ContainsFunc(why, func(w string) bool { return strings.Contains(w, "(C-24)") }) {
		return append([]string{"wider limits for its place: position = 0.3, or coordinates with limits of their own such as \"20 ±0.2\""}, remedies[:2]...)
	}
	return remedies
}

// remedies are what helps when no holding passes.
var remedies = []string{"a holding that leaves the surface open and does not crush or lose it", "stock that can be held by its waste", "a tailstock, or lighter cuts"}

// lights are the depths of a pass, as parts of the ordinary one, that are tried where a holding or a wall wants light cuts.
var lights = []float64{1, 0.5, 0.25, 0.1}

func lightest() float64 { return lights[len(lights)-1] }

// choices lists, for every task, its ways in every mount that could ever serve.
func (o *ordering) choices() {
	o.alts = make([][]choice, len(o.shop.Tasks))
	for i, t := range o.shop.Tasks {
		for _, w := range o.ways(t) {
			for k, m := range o.mounts {
				if m.Suits(w) {
					o.alts[i] = append(o.alts[i], o.grades(i, w, k)...)
				}
			}
		}
	}
}

// ways are those of a task that are tried. On a mill the cutter that is quickest on firm work need not be so on work that wants light cuts: all are tried.
func (o *ordering) ways(t process.Task) []process.Way {
	if o.ctx.Part.Flat() {
		return t.Ways
	}
	return quickest(t.Ways)
}

// mostWays bounds the tools that are tried for a task from one end: the quickest ones, which the dearer can beat only by a tool change.
const mostWays = 3

// quickest keeps, for each end, the quickest ways; ordinary ways are never pushed out by others.
func quickest(ways []process.Way) []process.Way {
	sorted := append([]process.Way(nil), ways...)
	sort.SliceStable(sorted, func(i, j int) bool {
		if sorted[i].Ordinary != sorted[j].Ordinary {
			return sorted[i].Ordinary
		}
		return sorted[i].Minutes < sorted[j].Minutes
	})
	count := map[partspec.End]int{}
	var kept []process.Way
	for _, w := range sorted {
		if count[w.End] < mostWays {
			count[w.End]++
			kept = append(kept, w)
		}
	}
	return kept
}

// grades gives the depths of pass to try for a way in a mount. Objections that no moment of the work can lift drop the pair.
func (o *ordering) grades(task int, w process.Way, mount int) []choice {
	m := o.mounts[mount]
	if !o.ctx.Rules.Allows(o.shop.Facts(m, task, w, lightest())) {
		return nil // what the lightest cuts cannot do none can
	}
	var out []choice
	for _, light := range lights {
		facts := o.shop.Facts(m, task, w, light)
		if !o.ctx.Rules.Allows(facts) {
			continue
		}
		out = append(out, choice{way: w, mount: mount, light: light, facts: facts})
		if m.Inside || m.Glue != holding.NoGlue || !o.light || w.ForceN == 0 || w.SureN >= w.ForceN {
			break
		}
	}
	return out
}

// thin reports whether any wall of the part is thin enough to ask for lighter cuts (rule B-24).
func (o *ordering) thin() bool { return o.ctx.Split && o.shop.Hollow() && o.ctx.Rules.Has("B-24") }

// own is a choice's cost in tenths of a minute: lighter passes are more passes.
func (c choice) own() int {
	return max(1, int(math.Round(c.way.Minutes*(1+lightShare*(1/c.light-1))*tenths)))
}

// lightShare is the part of an operation's time that grows with the number of passes.
const lightShare = 0.7

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
	s := sequence.SetOf(o.shop.Mask(o.mounts[c.mount], task, c.way, c.facts.Tender)...)
	for _, a := range o.arcs {
		if a.After == task && a.End == o.mounts[c.mount].Free {
			s = s.With(a.Before)
		}
	}
	return s
}

// allowed asks whether a choice is open once some tasks are done.
func (o *ordering) allowed(task int, c choice, done func(int) bool) bool {
	return o.waits(task, c, done) < 0 && o.shop.Allows(o.mounts[c.mount], task, c.way, c.light, c.facts, done)
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
	v, _ := o.shop.Judge(o.mounts[c.mount], task, c.way, c.light, c.facts, done)
	return v
}

// links ties the tasks whose surfaces a relation binds (rules ).
func (o *ordering) links(used []int) []sequence.Link {
	if !o.ctx.Rules.Has("A-06") {
		return nil
	}
	var links []sequence.Link
	for _, r := range o.ctx.Part.Relations {
		a, b := o.maker(r.Of), o.maker(r.To)
		if a < 0 || b < 0 || a == b {
			continue
		}
		within, wide := float64(r.Within), 0.0
		if r.Kind == partspec.Square || r.Kind == partspec.Parallel {
			wide = o.widest(a, b)
		}
		links = append(links, sequence.Link{A: a, B: b, Cross: func(first, later, earlier int) bool {
			m, before := o.mounts[used[later]], o.mounts[used[first]]
			if !o.ctx.Rules.Has("A-07") {
				return false
			}
			if truth, face := o.shop.FaceTruth(m, wide); face != "" && r.Kind == partspec.Parallel && o.shop.Tasks[earlier].MakesSurface(face) {
				return truth <= within/2 // it sits on the earlier face itself
			}
			if m.RunOut*m.Tilt(wide) > within/2 {
				return false
			}
			return m.Between && before.Between || o.shop.Tasks[earlier].MakesSurface(m.Surface)
		}})
	}
	for _, f := range o.ctx.Part.Features {
		g, ok := f.(*partspec.Groove)
		if !ok {
			continue
		}
		a, b := o.maker(partspec.Surface{Feature: g.Name}), o.maker(partspec.Surface{Feature: g.On})
		if a < 0 || b < 0 {
			continue
		}
		links = append(links, sequence.Link{A: a, B: b, Cross: func(_, later, earlier int) bool {
			return o.shop.Tasks[earlier].MakesSurface(o.mounts[used[later]].Surface)
		}})
	}
	return links
}

// widest is the diameter of the wider of two tasks' plane faces, as far as the part goes.
func (o *ordering) widest(a, b int) float64 {
	wide := 0.0
	for _, i := range []int{a, b} {
		if t := o.shop.Tasks[i]; t.Process == plan.Face {
			wide = max(wide, 2*o.shop.Rim(t.End))
		}
	}
	return wide
}

// maker is the task that brings a surface to size, or -1.
func (o *ordering) maker(s partspec.Surface) int {
	for i, t := range o.shop.Tasks {
		if t.Stage == shape.Finishing && t.MakesSurface(s.String()) {
			return i
		}
	}
	return -1
}

// blocked turns the furthest state of a search that failed into refusals.
func (o *ordering) blocked() []plan.Refusal {
	var out []plan.Refusal
	if len(o.result.Blocked.Fronts) == 0 {
		return []plan.Refusal{{What: "the order of work", Reasons: []string{"no order satisfies every rule and holding at once"}, Remedies: []string{"add a holding, or loosen a relation"}}}
	}
	front := o.result.Blocked.Fronts[0]
	for _, w := range front.Waiting {
		if w.Missing != 0 {
			continue
		}
		t := o.shop.Tasks[w.Op]
		r := plan.Refusal{Feature: t.Feature, What: t.ID, Remedies: remedies}
		seen := map[string]bool{}
		for _, waiting := range []bool{false, true} { // what only waits for something else is told when nothing worse stands in the way
			for _, alt := range w.Refused {
				c := o.alts[w.Op][alt]
				if (o.waits(w.Op, c, front.Done.Has) >= 0) != waiting || waiting && len(r.Reasons) > 0 {
					continue
				}
				for _, why := range o.reasons(w.Op, c, front.Done.Has) {
					if !seen[why] {
						seen[why] = true
						r.Reasons = append(r.Reasons, why)
					}
				}
			}
		}
		for _, alt := range w.Unlinked {
			why := fmt.Sprintf("%s: a relation asks for the same setting as its partner", o.mounts[o.alts[w.Op][alt].mount].ID)
			if !seen[why] {
				seen[why] = true
				r.Reasons = append(r.Reasons, why)
			}
		}
		if len(o.alts[w.Op]) == 0 {
			r.Reasons = append(r.Reasons, o.whyNever(w.Op)...)
		}
		r.Reasons = few(r.Reasons)
		out = append(out, r)
	}
	return out
}

func (o *ordering) reasons(task int, c choice, done func(int) bool) []string {
	if i := o.waits(task, c, done); i >= 0 {
		return []string{fmt.Sprintf("%s: %s must come first (%s)", o.mounts[c.mount].ID, o.shop.Tasks[o.arcs[i].Before].ID, o.arcs[i].Rule)}
	}
	var out []string
	for _, v := range o.objections(task, c, done) {
		out = append(out, fmt.Sprintf("%s: %s (%s)", o.mounts[c.mount].ID, v.Reason, v.Rule))
	}
	return out
}

// mostReasons bounds what a refusal tells of holdings that fail.
const mostReasons = 10

// whyNever tells why no mount ever serves a task, those that come nearest first.
func (o *ordering) whyNever(task int) []string {
	type near struct {
		text  string
		count int
	}
	var found []near
	for _, w := range o.shop.Tasks[task].Ways {
		for _, m := range o.mounts {
			if !m.Suits(w) {
				continue
			}
			v := o.ctx.Rules.Judge(o.shop.Facts(m, task, w, lightest()))
			for _, x := range v {
				found = append(found, near{fmt.Sprintf("%s: %s (%s)", m.ID, x.Reason, x.Rule), len(v)})
			}
		}
	}
	sort.SliceStable(found, func(i, j int) bool {
		if found[i].count != found[j].count {
			return found[i].count < found[j].count
		}
		return found[i].text < found[j].text
	})
	var out []string
	for _, f := range found {
		out = append(out, f.text)
	}
	return few(unrepeated(out))
}

// few cuts a list of reasons short.
func few(reasons []string) []string {
	if len(reasons) <= mostReasons {
		return reasons
	}
	return append(reasons[:mostReasons:mostReasons], fmt.Sprintf("and %d more, no nearer", len(reasons)-mostReasons))
}

func unrepeated(list []string) []string {
	seen := map[string]bool{}
	var out []string
	for _, s := range list {
		if !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}

// reached is how many operations the work got through before nothing could follow.
func (o *ordering) reached() int {
	if o.result.Blocked == nil || len(o.result.Blocked.Fronts) == 0 {
		return 0
	}
	return o.result.Blocked.Fronts[0].Done.Len()
}

// refusals picks the failed attempt that got furthest.
func refusals(failed []*attempt) []plan.Refusal {
	var best []plan.Refusal
	furthest := -1
	for _, a := range failed {
		far := a.order.reached()
		if far > furthest || far == furthest && len(a.order.refusals) < len(best) {
			best, furthest = a.order.refusals, far
		}
	}
	return best
}
