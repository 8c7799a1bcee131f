package partspec_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
)

// flushed is how a base lies under a plate of 80 by 56 whose holes are at [8, 10] and [72, 30].
func flushed(t *testing.T, width, height float64, datum, places string) *partspec.Mating {
	t.Helper()
	text := fmt.Sprintf(`
part "plate" {
  material  = "brass"
  thickness = 4
  stock "sheet" {
    thickness = 4
  }
  outline "rectangle" {
    width  = 80
    height = 56
  }
  holes "screws" {
    at        = [[8, 10], [72, 30]]
    clearance = "M5"
  }
}
part "base" {
  material  = "brass"
  thickness = 8
  stock "sheet" {
    thickness = 8
  }
  outline "rectangle" {
    width  = %v
    height = %v
    datum  = %s
  }
  holes "screws" {
    at       = %s
    thread   = "M5"
    match    = part.plate.holes.screws
    register = "edges"
  }
}
`, width, height, datum, places)
	job, _, found := partspec.Parse([]partspec.Source{{Name: "flush.hcl", Text: []byte(text)}})
	require.False(t, found.HasErrors(), "%v", found)
	m := job.Part("base").Feature("screws").(*partspec.Holes).Mate
	require.NotNil(t, m)
	return m
}

// Two plates lie with their datum edges flush the one way that brings hole over hole, and shift by what the touches leave unseen: 0.02 at each, the turn over the
// longer stretch carried to the hole that lies farthest from the shorter one's ends.
func TestFlushEdges(t *testing.T) {
	for name, c := range map[string]struct {
		width, height float64
		datum, places string
		there         [2]string
		over          bool
		slack         float64
	}{
		"as drawn":    {90, 70, `["left", "bottom"]`, "[[8, 10], [72, 30]]", [2]string{"left", "bottom"}, false, math.Hypot(0.02, 0.02+0.04/80*46)},
		"turned over": {90, 70, `["right", "bottom"]`, "[[82, 10], [18, 30]]", [2]string{"left", "bottom"}, true, math.Hypot(0.02, 0.02+0.04/80*46)},
		"crossed":     {70, 90, `["left", "bottom"]`, "[[10, 8], [30, 72]]", [2]string{"bottom", "left"}, true, math.Hypot(0.02, 0.02+0.04/80*46)},
		"half round":  {90, 70, `["right", "top"]`, "[[82, 60], [18, 40]]", [2]string{"left", "bottom"}, false, math.Hypot(0.02, 0.02+0.04/80*46)},
		"short touch": {79, 38, `["left", "bottom"]`, "[[8, 10], [72, 30]]", [2]string{"left", "bottom"}, false, math.Hypot(0.02, 0.02+0.04/79*30)},
	} {
		t.Run(name, func(t *testing.T) {
			m := flushed(t, c.width, c.height, c.datum, c.places)
			require.NotNil(t, m.Flush)
			assert.Equal(t, c.there, m.Flush.There)
			assert.Equal(t, c.over, m.Flush.Over)
			assert.InDelta(t, c.slack, float64(m.Slack), 1e-9)
			assert.Equal(t, m.Slack, m.Shift(), "what edges are off by counts once")
		})
	}
}
