package planner_test

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
)

// A chain of drills runs at one feed and under the holding's caps: the last drill's line says the operation's own speed, and no smaller drill runs slower than a
// larger one.
func TestDrillsOfAChainAgreeWithTheirOperation(t *testing.T) {
	jobs := exampleParts(t)
	chains := 0
	for _, name := range slices.Sorted(maps.Keys(jobs)) {
		for _, s := range answered(t, jobs[name]).Parts[0].Setups {
			for _, o := range s.Operations {
				if o.Process != plan.Drill {
					continue
				}
				speeds := drillSpeeds(t, o)
				require.NotEmpty(t, speeds, "%s %s", name, o.ID)
				assert.Equal(t, o.RPM, speeds[len(speeds)-1], "%s %s", name, o.ID)
				assert.True(t, slices.IsSortedFunc(speeds, func(a, b float64) int { return int(b - a) }), "%s %s: %v", name, o.ID, speeds)
				if len(speeds) > 1 {
					chains++
				}
			}
		}
	}
	assert.GreaterOrEqual(t, chains, 3, "chains of more than one drill")
}

// drillSpeeds are the speeds that the lines of a card tell beside their drills.
func drillSpeeds(t *testing.T, o plan.Operation) []float64 {
	t.Helper()
	var speeds []float64
	for _, l := range o.Card {
		var rpm float64
		if n, _ := fmt.Sscanf(l.Note, "%f rev/min", &rpm); n == 1 {
			speeds = append(speeds, rpm)
		}
	}
	return speeds
}
