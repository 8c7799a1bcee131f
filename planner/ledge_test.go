package planner_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// A bearing that reaches past the faceplate, in a shop without a mill and a four-jaw chuck, stands on an angle plate by its base; on a larger faceplate it is clamped,
// which is quicker; without either it is refused with the figures (rule B-10).
func TestBearingStandsOnAnAnglePlate(t *testing.T) {
	job := load(t, "testdata/rules/bearing.hcl")
	part := answered(t, job).Parts[0]
	require.Empty(t, part.Refusals)
	s := part.Setups[0]
	require.Equal(t, "angle_plate", s.HoldingKind)
	require.NotNil(t, s.Ledge)
	assert.Equal(t, "its bottom edge", s.Locates)
	assert.True(t, s.Ledge.Bar)
	assert.Positive(t, s.Balance.WeightKg)

	sized := func(mm units.Length) *partspec.Job {
		return withShop(job, func(w *partspec.Workshop) {
			w.Holdings = append([]partspec.Holding(nil), w.Holdings...)
			for i := range w.Holdings {
				if w.Holdings[i].Kind == partspec.Faceplate {
					w.Holdings[i].Diameter = mm
				}
			}
		})
	}
	larger := answered(t, sized(240)).Parts[0]
	require.Empty(t, larger.Refusals)
	assert.Equal(t, "faceplate", larger.Setups[0].HoldingKind)
	assert.Less(t, larger.Order.CostMinutes, part.Order.CostMinutes)
	without := answered(t, withoutHolding(job, s.Holding)).Parts[0]
	require.NotEmpty(t, without.Refusals, "nothing else holds it")
	assert.Contains(t, fmt.Sprint(without.Refusals), "the plate 55", "the faceplate's own figures")
}

// The comparison shows an angle plate with its figures, and what refuses it.
func TestAnglePlateIsCompared(t *testing.T) {
	job := load(t, "testdata/rules/bearing.hcl")
	surfaces, err := planner.Compare(job, job.Part("bearing"), "journal", plan.WhatIf{}, planner.Options{})
	require.NoError(t, err)
	passed, refused := 0, 0
	for _, o := range surfaces[len(surfaces)-1].Options {
		if o.Kind != "angle_plate" {
			continue
		}
		if o.Passes {
			passed++
			assert.Positive(t, o.CounterweightKg)
			assert.Greater(t, o.WorkingN, o.LeastN)
			assert.Positive(t, o.ErrorMM)
		} else {
			refused++
			assert.Equal(t, "B-10", o.Rule)
		}
	}
	assert.Positive(t, passed)
	assert.Positive(t, refused)
}
