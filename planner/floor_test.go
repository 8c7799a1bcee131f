package planner_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// A flat floor in solid metal is opened by a drill, and the cone of its point is faced away layer by layer from the middle outward, with a bar whose back clears the
// wall when its edge is at the middle: of the bars of 12 and 16 mm only the smaller one's does in a bore of 36.
func TestFlatFloorIsFacedInLayers(t *testing.T) {
	job := load(t, "testdata/shop/float_cup.hcl")
	part := answered(t, job).Parts[0]
	require.Empty(t, part.Refusals)
	var bore plan.Operation
	for _, s := range part.Setups {
		for _, o := range s.Operations {
			if o.ID == "bore.inside/bore" {
				bore = o
			}
		}
	}
	assert.Equal(t, "12 mm boring bar", bore.Tool.Text)
	layers := 0
	for _, c := range bore.Cuts {
		if strings.HasPrefix(c.Name, "layer") {
			layers++
		}
	}
	// The cone of a 25 mm drill is 25/2 / tan 59° = 7.5 mm high; a layer is at most 0.4 mm less the nose's 0.2.
	assert.GreaterOrEqual(t, layers, 36)

	for i, tool := range job.Workshop.Tools {
		if tool.Kind == partspec.Boring {
			job.Workshop.Tools[i].LeastBore = max(tool.LeastBore, 20)
		}
	}
	wide, _ := planner.Proved(job, planner.Options{})
	assert.NotEmpty(t, wide.Parts[0].Refusals, "no bar's back clears the wall at the middle")
}
