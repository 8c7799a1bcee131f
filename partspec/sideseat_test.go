package partspec

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A seat across the side is as wide along the part as a chord so deep in its pipe: 2 sqrt(d (2R - d)). Its place is counted from an end of what it is on, and lies over the middle of
// that where none is written.
func TestSeatsAcrossTheSide(t *testing.T) {
	text, err := os.ReadFile("testdata/good/seats.hcl")
	require.NoError(t, err)
	job, _, found := Parse([]Source{{"seats.hcl", text}})
	require.False(t, found.HasErrors(), "%v", found)
	part := job.Part("rail_post")
	rail, chain := part.Feature("rail").(*SideSeat), part.Feature("chain").(*SideSeat)

	assert.InDelta(t, 70-14, float64(rail.AxisZ), 1e-9)
	assert.InDelta(t, 70, float64(rail.ZFrom), 0)
	assert.InDelta(t, 2*math.Sqrt(5*11), float64(rail.Across), 1e-3)
	assert.InDelta(t, 56-math.Sqrt(55), float64(rail.Hollowed().Left), 1e-3)
	assert.InDelta(t, 4.9, float64(rail.Sunk.Low), 1e-9)
	assert.InDelta(t, 55.8, float64(rail.Z.Low), 1e-9, "14 ±0.2 from the right end")
	assert.Equal(t, "post", rail.Side)
	assert.Equal(t, EndInvalid, rail.On)

	assert.InDelta(t, 10*10/(8*2)+1, float64(chain.Radius.Value), 0.3, "c²/8s + s/2")
	assert.InDelta(t, 12+58.0/2, float64(chain.AxisZ), 1e-9)
}
