package steps

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// seat is the house figure: a seat of radius 45, 40 wide, cut with a round nose of radius 2 on 0.02 dials whose zero is on the
// centre line, leaving 0.05.
func seat() Request {
	dial := Axis{GraduationMM: 0.02, Reads: ReadsTravel}
	return Request{Curve: ConcaveSeat(45, 40), Cutter: Cutter{Kind: RoundNose, RadiusMM: 2}, Across: dial, Depth: dial, LeftoverMM: 0.05}
}

func TestSeatOf45NeedsFortyNineCuts(t *testing.T) {
	r := seat()
	table, err := Fewest(r)
	require.NoError(t, err)
	assert.Len(t, table.Cuts, 49)
	assert.True(t, table.ProvenFewest)
	assert.Len(t, table.WitnessAcrossMM, 49)
	assert.True(t, table.Mirrored)
	assert.LessOrEqual(t, table.WorstLeftoverMM, r.LeftoverMM)
	assert.Equal(t, 57, table.EqualStepsCount)
	assert.Equal(t, int64(34), table.ConstantStep.StepGrads)
	assert.NoError(t, table.Check(r))
	for n, c := range table.Cuts {
		twin := table.Cuts[len(table.Cuts)-1-n]
		assert.Equal(t, -c.AcrossGrads, twin.AcrossGrads)
		assert.Equal(t, c.DepthGrads, twin.DepthGrads)
	}
}
