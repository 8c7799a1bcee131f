package tables

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPlaceErrorsComeFromTheTable(t *testing.T) {
	for p, want := range map[Placing]float64{ByDrill: 0.08, ByPunch: 0.2, ByEdge: 0.02, ByTool: 0.05, ByClocking: 0.01, BySlide: 0.03} {
		assert.InDelta(t, want, float64(PlaceError(p)), 1e-9, string(p))
	}
	row, _ := FindProcess(string(ByPunch))
	assert.LessOrEqual(t, PlaceError(ByPunch)+PlaceError(ByDrill), row.RunOut.High, "mark and drill together are no worse than the row says")
	assert.Panics(t, func() { PlaceError("guess") })
}
