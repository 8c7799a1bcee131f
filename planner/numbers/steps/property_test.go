package steps

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Over random curves, cutters and dials: nothing past the curve and no more left than allowed (by the oracle's bounds and by the
// package's own exact check), one way within runs, the proof complete, no table made by equal steps shorter.
func TestEveryTableKeepsItsPromises(t *testing.T) {
	const wanted = 5000
	c := newCases(1)
	solved, refused, unproven, searched := 0, 0, 0, 0
	for tried := 0; solved < wanted; tried++ {
		require.Less(t, tried, 6*wanted, "too few random cases can be cut at all")
		r := c.request()
		table, err := Fewest(r)
		if err != nil {
			refused++
			continue
		}
		solved++
		require.NoError(t, table.Check(r), "%+v", r)
		for _, cut := range table.Cuts {
			require.Zero(t, passes(r, cut), "%+v\n%+v", r, cut)
		}
		require.NoError(t, leaves(r, table.Cuts, max(r.LeftoverMM, table.WorstLeftoverMM)), "%+v", r)
		require.LessOrEqual(t, table.WorstLeftoverMM, r.LeftoverMM+2*tieMM, "%+v", r)
		if !table.ProvenFewest {
			unproven++
		} else if len(table.WitnessAcrossMM) < len(table.Cuts) {
			searched++
		}
		if n := len(table.ConstantStep.Cuts); n > 0 {
			require.GreaterOrEqual(t, n, len(table.Cuts), "%+v", r)
			require.NoError(t, leaves(r, table.ConstantStep.Cuts, r.LeftoverMM+2*tieMM), "%+v", r)
		}
	}
	t.Logf("%d tables; %d requests refused; %d proved by search, %d not proved", solved, refused, searched, unproven)
	assert.Less(t, unproven, wanted/100)
}
