package planner

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"catchplate/planner/plan"
	"catchplate/planner/process"
)

func lacking(tasks []process.Task) []plan.Refusal {
	var out []plan.Refusal
	for _, t := range tasks {
		if len(t.Ways) == 0 {
			out = append(out, plan.Refusal{Feature: t.Feature, What: t.ID, Reasons: t.Lacking, Remedies: []string{"add the tool that is wanting to the workshop, or change the feature"}})
		}
	}
	return out
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
