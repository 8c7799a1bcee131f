package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
	"catchplate/sheets"
)

// Past its nodes the search gives the best order it knows: the plan holds, the bound is below that of a longer search, and the sheet says
// what is not proven. The same nodes give the same plan.
func TestSheetSaysWhatIsNotProven(t *testing.T) {
	job, _, found := partspec.Load([]string{"../../examples/tide-gauge"})
	require.False(t, found.HasErrors(), "%v", found)
	best, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	for _, nodes := range []int{1, 100} {
		p, failures := planner.Proved(job, planner.Options{Nodes: nodes})
		require.Empty(t, failures)
		again, _ := planner.Proved(job, planner.Options{Nodes: nodes})
		assert.Equal(t, p, again)
		files, err := sheets.Render(p, sheets.Options{})
		require.NoError(t, err)
		text := map[string]string{}
		for _, f := range files {
			text[f.Name] = string(f.Data)
		}
		open := 0
		for i, part := range p.Parts {
			o, known := part.Order, best.Parts[i].Order
			assert.LessOrEqual(t, o.BoundMinutes, known.CostMinutes, part.Name)
			assert.GreaterOrEqual(t, o.CostMinutes, known.BoundMinutes, part.Name)
			sentence := "it is proven that no order of these operations in these holdings costs less."
			if !o.Proven {
				assert.Less(t, o.BoundMinutes, o.CostMinutes, part.Name)
				sentence = "No order can cost less than " + units.Minutes(o.BoundMinutes).String() + "; that none lies between is not proven."
				open++
			}
			assert.Contains(t, text[part.Name+".md"], sentence, part.Name)
		}
		assert.Greater(t, open, 3, "with %d nodes", nodes)
	}
}
