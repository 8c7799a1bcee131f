package replay_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// disc is the plan of a disc from sheet, whose rim is sawn and then turned on a mandrel in its bore.
func disc(t *testing.T, diameter string, sheet float64) (*partspec.Job, *plan.Plan) {
	t.Helper()
	text := fmt.Sprintf(`part "end" {
  material  = "aluminium-6082"
  thickness = 3
  stock "sheet" {
    thickness = 3
    width     = %g
    length    = %g
  }
  outline "disc" { diameter = "%s" }
  bore "spindle" {
    at       = ["0 ±0.2", "0 ±0.2"]
    diameter = "12 H7"
  }
}
`, sheet, sheet, diameter)
	job, _, diags := partspec.Parse([]partspec.Source{{Name: "end.hcl", Text: []byte(text)}})
	require.False(t, diags.HasErrors(), "%v", diags)
	p := planner.Plan(job, planner.Options{})
	require.Empty(t, p.Parts[0].Refusals)
	return job, p
}

// rimCuts are the cuts of the setting that turns the rim.
func rimCuts(t *testing.T, p *plan.Plan) []*plan.Cut {
	t.Helper()
	var cuts []*plan.Cut
	for i := range p.Parts[0].Setups {
		for k := range p.Parts[0].Setups[i].Operations {
			if o := &p.Parts[0].Setups[i].Operations[k]; o.Process == plan.TurnRough || o.Process == plan.TurnFinish {
				for c := range o.Cuts {
					cuts = append(cuts, &o.Cuts[c])
				}
			}
		}
	}
	require.NotEmpty(t, cuts)
	return cuts
}

// A sawn rim is cut all round and measured before anything is counted from it, and is finished by measuring however wide its limits are.
func TestASawnRimIsMeasuredBeforeItIsCounted(t *testing.T) {
	for _, c := range []struct {
		diameter string
		sheet    float64
		measured int // a blank hardly larger than the disc is measured once more, before its light cuts come as near as the saw is sure
	}{{"70 h8", 80, 2}, {"70 h8", 71, 3}, {"80 +0 -0.1", 90, 2}, {"60 ±0.07", 70, 2}} {
		t.Run(fmt.Sprint(c.diameter, " of ", c.sheet), func(t *testing.T) {
			job, good := disc(t, c.diameter, c.sheet)
			_, failures := replay.Prove(job, good)
			require.Empty(t, failures)
			cuts := rimCuts(t, good)
			require.NotNil(t, cuts[len(cuts)-1].ToMeasure)
			measured := 0
			for _, cut := range cuts {
				if cut.ToMeasure != nil {
					measured++
				}
			}
			assert.Equal(t, c.measured, measured)
			bad := copied(t, good) // counted from the saw
			for _, cut := range rimCuts(t, bad)[:len(cuts)-1] {
				cut.ToMeasure = nil
			}
			if _, failures := replay.Prove(job, bad); assert.NotEmpty(t, failures) {
				assert.Contains(t, []string{"least metal", "most metal"}, failures[0].Clause, "%v", failures)
			}
		})
	}
}
