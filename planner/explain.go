package planner

import (
	"fmt"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/sequence"
)

// ExplainOrder orders one part anew, as Plan does, and tells of each pair of neighbours what fixes that they stand so and what the cheapest
// order with the two the other way round would cost more. The other orders leave the stock lying as it is and the holes made by the same tools.
// A part without a plan has refusals instead. It takes a search for each pair, half a minute for thirty operations, which is why a plan does without.
func ExplainOrder(job *partspec.Job, part *partspec.Part, opt Options) (plan.Order, []plan.Refusal, error) {
	best, refused := bestAttempt(job, part, opt)
	if best == nil {
		return plan.Order{}, refused, nil
	}
	axes, refused := aboutAxes(job, part, opt)
	if refused != nil {
		return plan.Order{}, refused, nil
	}
	order, err := best.order.explained()
	for before := best.order; err == nil && len(axes) > 0; axes = axes[1:] {
		after := axes[0].order
		var added plan.Order
		added, err = after.explained()
		follow(&order, added, plan.Pair{Before: before.last(), After: after.first(), Opposite: plan.Forbidden})
		before = after
	}
	return order, nil, err
}

// first and last are the operations that an order begins and ends with.
func (o *ordering) first() string { return o.shop.Tasks[o.result.Order[0].Op].ID }
func (o *ordering) last() string {
	return o.shop.Tasks[o.result.Order[len(o.result.Order)-1].Op].ID
}

// explained is the order that was found, with what is known of its pairs.
func (o *ordering) explained() (plan.Order, error) {
	whole, steps := o.unforbidden()
	neighbours, err := sequence.Neighbours(whole.problem(), sequence.Result{Order: steps, Bound: o.result.Bound})
	if err != nil {
		return plan.Order{}, fmt.Errorf("explaining the order of %s: %w", o.ctx.Part.Name, err)
	}
	out := o.summary()
	var done sequence.Set
	for i, n := range neighbours {
		out.Pairs = append(out.Pairs, whole.pair(steps, i, n, done))
		done = done.With(n.Before)
	}
	return out, nil
}

// summary is what the order costs, without its pairs.
func (o *ordering) summary() plan.Order {
	r, anew := o.result, o.dialsAnew() // the search knows nothing of these: its bound stands, its proof does not
	return plan.Order{CostMinutes: minutes(r.Cost + anew*dialsMinutes*tenths), BoundMinutes: minutes(r.Bound), Proven: r.Proven && anew == 0, States: r.Stats.Stored}
}

func minutes(cost int) float64 { return float64(cost) / tenths }

// unforbidden takes back what was forbidden for want of a common grip, and gives the steps found in the whole lists of choices: another order may
// use those choices in other company. The result stays that of the order found.
func (o *ordering) unforbidden() (*ordering, []sequence.Step) {
	whole := *o
	whole.arcs = slices.DeleteFunc(slices.Clone(o.arcs), func(a rules.Arc) bool { return a.Rule == easeRule })
	whole.choices()
	steps := slices.Clone(o.result.Order)
	for i, s := range steps {
		steps[i].Alt = slices.IndexFunc(whole.alts[s.Op], o.alts[s.Op][s.Alt].same)
	}
	return &whole, steps
}

// same reports whether two choices of one task are alike in all that an order is judged by.
func (c choice) same(d choice) bool {
	return c.mount == d.mount && c.light == d.light && c.way.Tool.ID() == d.way.Tool.ID() && c.own() == d.own()
}

// pair words what is known of the neighbours at places i and i+1; done are the operations before them.
func (o *ordering) pair(steps []sequence.Step, i int, n sequence.Neighbour, done sequence.Set) plan.Pair {
	p := plan.Pair{Before: o.shop.Tasks[n.Before].ID, After: o.shop.Tasks[n.After].ID}
	if n.Arc >= 0 {
		arc, _ := o.arcBetween(n.Before, n.After, partspec.EndInvalid)
		p.Rule, p.Text, p.Opposite = arc.Rule, o.title(arc.Rule), plan.Forbidden
		return p
	}
	cost := 0
	if p.Opposite, cost, p.Text = o.opposite(steps, n); p.Opposite != plan.Impossible {
		p.ExtraMinutes = minutes(cost - o.result.Cost)
	}
	if rule, why := o.swapped(steps[i], steps[i+1], done); rule != "" {
		p.Rule, p.Text = rule, why
	}
	return p
}

// opposite tells what the cheapest order with a pair the other way round costs, and on what it spends more. Where the tables were too large, and
// the order itself is proven, a search of the same size is made for the pair; it also finds whether one grip serves each stay, which the tables
// know nothing of.
func (o *ordering) opposite(steps []sequence.Step, n sequence.Neighbour) (known plan.Opposite, cost int, text string) {
	if !n.Exact && !o.result.Proven {
		return plan.AtLeast, n.Cost, "no rule; whether the other way round costs more is not known"
	}
	q := o.opposed(n)
	if n.Impossible || q.result.Blocked != nil && q.result.Proven && q.count() == o.count() {
		return plan.Impossible, 0, q.stuck()
	}
	least := max(n.Cost, q.result.Bound)
	switch {
	case q.refusals != nil:
		return plan.AtLeast, least, "no rule; no order is known the other way round"
	case q.cost > least:
		return plan.AtLeast, least, fmt.Sprintf("no rule; the other way round an order is known for %s min more", units.Decimal(minutes(q.cost-o.result.Cost), 1))
	}
	return plan.Exact, least, difference(spend(o.problem(), steps), spend(q.problem(), q.result.Order))
}

// opposed is the ordering with a pair of neighbours demanded the other way round, and its answer.
func (o *ordering) opposed(n sequence.Neighbour) *ordering {
	q := *o
	q.alts = slices.Clone(o.alts)
	q.arcs = append(slices.Clone(o.arcs), rules.Arc{Before: n.After, After: n.Before})
	q.solve()
	return &q
}

// count counts the choices that are not forbidden.
func (o *ordering) count() int {
	sum := 0
	for _, list := range o.alts {
		sum += len(list)
	}
	return sum
}

// stuck says where the work cannot go on.
func (o *ordering) stuck() string {
	for _, r := range o.refusals {
		if len(r.Reasons) > 0 {
			return fmt.Sprintf("the other way round nothing serves %s: %s", r.What, r.Reasons[0])
		}
	}
	return "the other way round no order satisfies every rule and holding at once"
}

// swapped gives the rule that refuses to let just these two change places, each held and cut as it is, and its reason; or nothing.
func (o *ordering) swapped(a, b sequence.Step, done sequence.Set) (rule, why string) {
	if rule, why = o.objection(b, done); rule == "" {
		rule, why = o.objection(a, done.With(b.Op))
	}
	return rule, why
}

// objection is the first thing that speaks against a step once some operations are done.
func (o *ordering) objection(s sequence.Step, done sequence.Set) (rule, why string) {
	c := o.alts[s.Op][s.Alt]
	if i := o.waits(s.Op, c, done.Has); i >= 0 {
		return o.arcs[i].Rule, o.title(o.arcs[i].Rule)
	}
	if v := o.objections(s.Op, c, done.Has); len(v) > 0 {
		return v[0].Rule, fmt.Sprintf("changed over, %s cannot be done in %s: %s", o.shop.Tasks[s.Op].ID, o.mounts[c.mount].ID, v[0].Reason)
	}
	return "", ""
}

// spent is what an order costs, by what it is spent on.
type spent [3]int

var spentOn = [3]string{"settings", "tool changes", "cutting"}

func spend(p *sequence.Problem, order []sequence.Step) spent {
	var s spent
	setup, tool := -1, -1
	for _, step := range order {
		alt := p.Ops[step.Op].Alts[step.Alt]
		otherMachine := setup >= 0 && p.Setups[setup].Machine != p.Setups[alt.Setup].Machine
		if otherMachine {
			s[0] += p.MachineChange
		}
		if alt.Setup != setup {
			s[0] += p.Setups[alt.Setup].Cost
		}
		if otherMachine || alt.Tool != tool { // a tool stays where it is only on the same machine
			s[1] += p.Tools[alt.Tool].Cost
		}
		s[2] += alt.Own + alt.Risk
		setup, tool = alt.Setup, alt.Tool
	}
	return s
}

// difference words what another order spends more or less.
func difference(ours, others spent) string {
	var list []string
	for i, what := range spentOn {
		switch more := minutes(others[i] - ours[i]); {
		case more > 0:
			list = append(list, fmt.Sprintf("%s %s min more", what, units.Decimal(more, 1)))
		case more < 0:
			list = append(list, fmt.Sprintf("%s %s min less", what, units.Decimal(-more, 1)))
		}
	}
	if list == nil {
		return "no rule and no cost"
	}
	return "cost: the other way round, " + strings.Join(list, ", ")
}

// arcBetween is the arc that puts one task before another when the later one is done with an end free.
func (o *ordering) arcBetween(before, after int, free partspec.End) (rules.Arc, bool) {
	i := slices.IndexFunc(o.arcs, func(a rules.Arc) bool {
		return a.Before == before && a.After == after && (a.End == partspec.EndInvalid || a.End == free)
	})
	if i < 0 {
		return rules.Arc{}, false
	}
	return o.arcs[i], true
}

// title is the title of a rule.
func (o *ordering) title(rule string) string {
	head, _ := o.ctx.Rules.Head(rule)
	return head.Title
}
