package process

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/numbers/steps"
)

// crown is a round of radius 20, 24 wide, on dials of 0.02.
func crown(t *testing.T) steps.Table {
	t.Helper()
	axis := steps.Axis{GraduationMM: 0.02, Reads: steps.ReadsTravel}
	table, err := steps.Fewest(steps.Request{Curve: steps.ConvexArc(20, 24), Cutter: steps.Cutter{Kind: steps.RoundNose, RadiusMM: 2}, Across: axis, Depth: axis, LeftoverMM: 0.03})
	require.NoError(t, err)
	return table
}

// Every cut is there once, each run goes one way and deeper, and no more than a few cuts lie between two places to stop.
func TestStepsAreCutRunByRun(t *testing.T) {
	table := crown(t)
	cuts := inOrder(table)
	require.Len(t, cuts, len(table.Cuts))
	seen, since, runs := map[int64]bool{}, 0, 0
	for i, c := range cuts {
		assert.False(t, seen[c.AcrossGrads])
		seen[c.AcrossGrads] = true
		if c.first {
			runs++
			assert.Zero(t, since, "a run begins at a place to stop")
		} else {
			assert.GreaterOrEqual(t, c.DepthGrads, cuts[i-1].DepthGrads)
		}
		if since++; c.resume {
			since = 0
		}
		assert.Less(t, since, 2*resumeEvery)
	}
	assert.Equal(t, len(table.Runs), runs)
	assert.Equal(t, "run 1, step 1", cuts[0].label)
	assert.True(t, cuts[len(cuts)-1].resume)
}

// exact is what float64 leaves of sums like these.
const exact = 1e-9

// The pieces as data lie on the curve they come from.
func TestPiecesLieOnTheirCurve(t *testing.T) {
	for _, c := range []struct {
		curve steps.Curve
		edge  float64
	}{{steps.ConvexArc(20, 24), 4}, {steps.ConcaveSeat(20, 24), -4}} { // 20 - sqrt(400 - 144)
		p := stepPiece(c.curve.Segments[0])
		assert.InDelta(t, c.edge, p.FromDepthMM, exact)
		assert.InDelta(t, c.edge, p.ToDepthMM, exact)
		assert.Equal(t, c.edge < 0, p.Hollow)
		assert.InDelta(t, 20, math.Hypot(p.ToAcrossMM-p.CentreAcrossMM, p.ToDepthMM-p.CentreDepthMM), exact)
	}
	cone := stepPiece(steps.Cone(10, 3).Segments[0])
	assert.Equal(t, 3.0, cone.ToDepthMM)
	assert.Zero(t, cone.RadiusMM)
}
