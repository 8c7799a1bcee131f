package planner_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// Journals at either end of a shaft that must be true to each other are finished between centres (TM 1-420 Lathes, 1940: work that must be turned end for end), each
// end faced and centred before; without centres to run on there is no plan.
func TestShaftIsFinishedBetweenCentres(t *testing.T) {
	job := load(t, "testdata/shop/drum_spindle.hcl")
	part := answered(t, job).Parts[0]
	require.Empty(t, part.Refusals)
	assert.Equal(t, "centres", holds(t, part, "spigot.lower/turn").Grip.Kind)
	assert.Equal(t, "centres", holds(t, part, "spigot.upper/turn").Grip.Kind)
	for _, end := range []string{"left", "right"} {
		assert.Less(t, holds(t, part, "centre."+end).Number, holds(t, part, "spigot.lower/turn").Number, end)
	}

	shop := *job.Workshop
	shop.Holdings = slices.DeleteFunc(slices.Clone(shop.Holdings), func(h partspec.Holding) bool { return h.Kind == partspec.BetweenCentres })
	without := *job
	without.Workshop = &shop
	refused, _ := planner.Proved(&without, planner.Options{})
	assert.NotEmpty(t, refused.Parts[0].Refusals, "the relation cannot be held in jaws that run out more")
}

// holds is the setting that an operation is done in.
func holds(t *testing.T, part plan.Part, id string) plan.Setup {
	t.Helper()
	for _, s := range part.Setups {
		for _, o := range s.Operations {
			if o.ID == id {
				return s
			}
		}
	}
	require.Failf(t, "no such operation", "%s is not in the plan", id)
	return plan.Setup{}
}
