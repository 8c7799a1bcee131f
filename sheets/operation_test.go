package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
)

func TestTopSlidePastSquareIsSaidFromSquare(t *testing.T) {
	assert.Equal(t, "30° from the axis (30° 00')", setOver(30))
	assert.Equal(t, "-109° from the axis (-109° 00'), which is 19° past square", setOver(-109))
}

// Distances that are marked out have no pins to measure over: their cells stay empty.
func TestChordsWithoutPins(t *testing.T) {
	s := &sheet{part: &plan.Part{}}
	blocks := s.chords(plan.Operation{Feature: "ring", Chords: []plan.ChordCheck{{From: 1, To: 2, DistanceMM: 85, WithinMM: 0.4}}})
	require.Len(t, blocks, 1)
	row := blocks[0].(group).blocks[1].(table).rows[0]
	assert.Equal(t, []md{"**85**", "", "", "±0.4", ""}, row[3:])
}
