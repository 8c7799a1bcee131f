package planner

import (
	"sort"

	"catchplate/planner/plan"
	"catchplate/planner/rules"
)

// cited lists the heads of all rules that a plan names.
func cited(p *plan.Plan, set rules.Set) []plan.Rule {
	named := map[string]bool{}
	add := func(id string) {
		if id != "" {
			named[id] = true
		}
	}
	for _, part := range p.Parts {
		for _, s := range part.Setups {
			for _, r := range s.Why {
				add(r.Rule)
			}
			for _, o := range s.Operations {
				for _, r := range o.Why {
					add(r.Rule)
				}
			}
		}
		for _, c := range part.Cautions {
			add(c.Rule)
		}
		for _, r := range part.Rejected {
			add(r.Rule)
		}
		for _, pair := range part.Order.Pairs {
			add(pair.Rule)
		}
		for _, h := range part.MakeFirst {
			for _, id := range h.Rules {
				add(id)
			}
		}
	}
	heads := []plan.Rule{}
	for _, h := range set.Heads() {
		if named[h.ID] {
			heads = append(heads, h)
		}
	}
	sort.SliceStable(heads, func(i, j int) bool { return heads[i].ID < heads[j].ID })
	return heads
}
