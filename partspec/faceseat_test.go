package partspec

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// seatsOf are the seats of the good file, by part.
func seatsOf(t *testing.T) map[string]*Seat {
	t.Helper()
	text, err := os.ReadFile("testdata/good/seats.hcl")
	require.NoError(t, err)
	job, _, found := Parse([]Source{{"seats.hcl", text}})
	require.False(t, found.HasErrors(), "%v", found)
	seats := map[string]*Seat{}
	for _, p := range job.Parts {
		for _, f := range p.Features {
			if s, ok := f.(*Seat); ok {
				seats[p.Name] = s
			}
		}
	}
	return seats
}

// A seat in a face takes its radius from its pipe, or from chord and rise: R = c²/8s + s/2 = 16²/32 + 2 = 10. A pipe at 270 degrees lies along Y.
func TestSeatsInFaces(t *testing.T) {
	seats := seatsOf(t)
	block, cradle := seats["saddle_block"], seats["cradle"]
	assert.InDelta(t, 45, float64(block.Radius.Value), 1e-9, "half of the pipe")
	assert.InDelta(t, 20, float64(block.Middle.Value), 0, "over the middle")
	assert.InDelta(t, 40, float64(block.Across), 0, "over all of the face")
	assert.InDelta(t, 45-math.Sqrt(45*45-20*20), float64(block.Depth), 1e-6)
	assert.False(t, block.AlongY())

	assert.InDelta(t, 10, float64(cradle.Radius.Value), 1e-9)
	assert.True(t, cradle.AlongY())
	assert.Equal(t, Right, cradle.On)
	assert.InDelta(t, 32.5, float64(cradle.Middle.Value), 0)
	assert.InDelta(t, 10-math.Sqrt(100-49), float64(cradle.Depth), 1e-6)
	assert.InDelta(t, 20-(10-math.Sqrt(51))+10, float64(cradle.AxisZ), 1e-6, "the pipe lies before the front")
	assert.InDelta(t, 5, math.Abs(cradle.Beside(27.5, 3)), 1e-9)
	assert.InDelta(t, 12, math.Abs(block.Beside(8, 8)), 1e-9)
}
