package planner_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// sameCost is what two costs in minutes may differ by and still be one: they are sums of tenths.
const sameCost = 0.01

// used is a tool of a plan: out of a set, the size that was taken.
type used struct {
	id   string
	size float64
}

func toolsOf(p plan.Part) []used {
	found := map[used]bool{}
	for _, m := range timeline(p) {
		if m.Tool.ID != "" {
			found[used{m.Tool.ID, m.Tool.SizeMM}] = true
		}
		for _, c := range m.Cuts {
			if c.ToolID != "" || c.ToolSizeMM > 0 {
				id := c.ToolID
				if id == "" {
					id = m.Tool.ID
				}
				found[used{id, c.ToolSizeMM}] = true
			}
		}
	}
	return slices.SortedFunc(maps.Keys(found), func(a, b used) int {
		if a.id != b.id {
			return strings.Compare(a.id, b.id)
		}
		return int((a.size - b.size) * 1000)
	})
}

// withoutTool is the workshop without a tool, or without one size of a set.
func withoutTool(job *partspec.Job, u used) *partspec.Job {
	return withShop(job, func(w *partspec.Workshop) {
		var left []partspec.Tool
		for _, t := range w.Tools {
			switch {
			case t.ID() != u.id:
				left = append(left, t)
			case len(t.Sizes) > 1:
				t.Sizes = slices.DeleteFunc(slices.Clone(t.Sizes), func(s units.Length) bool { return float64(s) == u.size })
				left = append(left, t)
			}
		}
		w.Tools = left
	})
}

func withoutHolding(job *partspec.Job, name string) *partspec.Job {
	return withShop(job, func(w *partspec.Workshop) {
		w.Holdings = slices.DeleteFunc(slices.Clone(w.Holdings), func(h partspec.Holding) bool { return h.Name == name })
	})
}

// Without a tool or a holding that its plan uses a part is planned another way, at no less cost, or refused with reasons.
func TestWhatIsTakenAwayIsMissed(t *testing.T) {
	jobs := exampleParts(t)
	for _, name := range slices.Sorted(maps.Keys(jobs)) {
		job := jobs[name]
		t.Run(name, func(t *testing.T) {
			full := planned(t, job)
			holdings := map[string]bool{}
			for _, s := range full.Setups {
				holdings[s.Holding] = s.MachineKind != string(partspec.Bench) // hands and the bench are always there
			}
			maps.DeleteFunc(holdings, func(_ string, listed bool) bool { return !listed })
			for _, h := range slices.Sorted(maps.Keys(holdings)) {
				t.Run("without "+h, func(t *testing.T) { noCheaper(t, full, withoutHolding(job, h)) })
			}
			for _, u := range toolsOf(full) {
				t.Run(fmt.Sprintf("without %s %v", u.id, u.size), func(t *testing.T) {
					p := noCheaper(t, full, withoutTool(job, u))
					assert.NotContains(t, toolsOf(p), u)
				})
			}
		})
	}
}

// noCheaper plans in the poorer workshop.
func noCheaper(t *testing.T, full plan.Part, poorer *partspec.Job) plan.Part {
	t.Helper()
	p := answered(t, poorer)
	require.Len(t, p.Parts, 1)
	part := p.Parts[0]
	if len(part.Refusals) > 0 {
		return part
	}
	assert.NotEqual(t, steps(full), steps(part), "nothing has changed")
	if full.Order.Proven {
		assert.GreaterOrEqual(t, part.Order.CostMinutes, full.Order.CostMinutes-sameCost)
	}
	return part
}

// steps is what is done with what, in order.
func steps(p plan.Part) []string {
	var list []string
	for _, m := range timeline(p) {
		list = append(list, fmt.Sprintf("%s | %s | %v", m.setup.ID, m.ID, m.Tool))
		for _, c := range m.Cuts {
			list = append(list, fmt.Sprintf("%s %v", c.ToolID, c.ToolSizeMM))
		}
	}
	return list
}
