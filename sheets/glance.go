package sheets

import (
	"strconv"

	"catchplate/planner/plan"
)

func itoa(n int) string { return strconv.Itoa(n) }

// glance is the order of work on one table: holdings with their setting-up time, and under each its operations.
func glance(s *sheet) []block {
	if len(s.part.Setups) == 0 {
		return nil
	}
	t := table{head: []md{"Done", "No.", "What", "Tool", "Time"}}
	for _, setup := range s.part.Setups {
		t.rows = append(t.rows, []md{tick, "", bold(say("Holding " + itoa(setup.Number) + ": " + setup.Title)), "set up", esc(minutes(setup.Minutes))})
		for _, op := range setup.Operations {
			t.rows = append(t.rows, []md{tick, esc(itoa(op.Number)), say(op.Title), say(op.Tool.Text), esc(minutes(op.Minutes))})
		}
	}
	out := []block{heading{2, "Order at a glance"}, t}
	out = append(out, para(esc("In all about "+minutes(s.part.Minutes)+". Times are reckoned for planning, not promised.")), para(oneWay))
	return []block{group{class: "glance", id: "order", blocks: out}}
}

// cautions are the warnings of the whole part; they always end with the same advice.
func cautions(s *sheet) []block {
	if len(s.part.Setups) == 0 {
		return nil
	}
	var items []md
	for _, c := range s.part.Cautions {
		items = append(items, caution(c))
	}
	items = append(items, "Defer to local codes and licensed practice.")
	return []block{group{class: "cautions", id: "cautions", blocks: []block{heading{2, "Cautions"}, quote{list{items: items}}}}}
}

func caution(c plan.Caution) md { return say(c.Text) + cite(c.Rule) }
