package steps

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Over 5,000 random curves (20,000 with CATCHPLATE_SLOW set), cutters and dials: nothing past the curve and no more left than allowed (by the oracle's bounds and by the
// package's own exact check), one way within runs, the proof complete. One in four is searched for metal above the worst leftover that the table
// states, and its table of constant steps is held to the same promises.
func TestEveryTableKeepsItsPromises(t *testing.T) {
	shards, wanted := 4, 1250
	if os.Getenv("CATCHPLATE_SLOW") != "" {
		shards = 16
	}
	for shard := range shards {
		t.Run(fmt.Sprint(shard), func(t *testing.T) {
			t.Parallel()
			keepsPromises(t, newCases(uint64(shard)), wanted)
		})
	}
}

func keepsPromises(t *testing.T, c cases, wanted int) {
	solved, refused, unproven, searched := 0, 0, 0, 0
	for solved < wanted {
		require.Less(t, refused, 2*wanted, "too few random cases can be cut at all")
		r := c.request()
		table, err := Fewest(r)
		if err != nil {
			refused++
			continue
		}
		solved++
		promises(t, r, table)
		if solved%4 == 0 {
			require.NoError(t, leaves(r, table.Cuts, table.WorstLeftoverMM), "%+v", r)
			promisesOfConstantStep(t, r, table)
		}
		if !table.ProvenFewest {
			unproven++
		} else if len(table.WitnessAcrossMM) < len(table.Cuts) {
			searched++
		}
	}
	t.Logf("%d tables; %d requests refused; %d proved by search, %d not proved", solved, refused, searched, unproven)
	assert.Less(t, unproven, wanted/100)
}

func promises(t *testing.T, r Request, table Table) {
	t.Helper()
	require.NoError(t, table.Check(r), "%+v", r)
	for _, cut := range table.Cuts {
		require.Zero(t, passes(r, cut), "%+v\n%+v", r, cut)
	}
	require.LessOrEqual(t, table.WorstLeftoverMM, r.LeftoverMM+2*tieMM, "%+v", r)
	require.NoError(t, leaves(r, table.Cuts, r.LeftoverMM), "%+v", r)
}

func promisesOfConstantStep(t *testing.T, r Request, table Table) {
	t.Helper()
	c := table.ConstantStep
	if len(c.Cuts) == 0 {
		return
	}
	require.GreaterOrEqual(t, len(c.Cuts), len(table.Cuts), "%+v", r)
	require.NoError(t, leaves(r, c.Cuts, c.WorstLeftoverMM), "%+v", r)
	require.NoError(t, checkRuns(c.Cuts, c.Runs), "%+v", r)
	zone := -1
	for n, cut := range c.Cuts {
		require.Zero(t, passes(r, cut), "%+v\n%+v", r, cut)
		if zone+1 < len(c.Zones) && c.Zones[zone+1].First == n {
			zone++
			continue
		}
		step := cut.AcrossGrads - c.Cuts[n-1].AcrossGrads
		if c.Zones[zone].DepthLeads {
			step = max(cut.DepthGrads-c.Cuts[n-1].DepthGrads, c.Cuts[n-1].DepthGrads-cut.DepthGrads)
		}
		require.Equal(t, c.StepGrads, step, "%+v\ncut %d of the constant table", r, n+1)
	}
}
