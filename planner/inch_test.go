package planner_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// metalSlack is what a place may be off for the noise of sums.
const metalSlack = 1e-6

// The gland nut is drawn in inches and made on metric dials: sizes stand in both units, and a dial leaves metal on, never takes too much.
func TestInchDrawingOnMetricDials(t *testing.T) {
	job := load(t, filepath.Join(examples, "gland-nut.hcl"), filepath.Join(examples, "workshop.hcl"))
	nut := job.Part("gland_nut")
	p := planned(t, job)
	require.True(t, p.DrawnInInch)
	both := 0
	for _, m := range timeline(p) {
		for _, l := range m.Card {
			assert.NotContains(t, l.Reading, "in", "%s: the dial is metric", m.ID)
			if !strings.ContainsAny(l.Makes, "0123456789") {
				continue // words: "past the middle"
			}
			assert.Contains(t, l.Makes, "in", "%s: %s", m.ID, l.Label)
			assert.Contains(t, l.Makes, "mm", "%s: %s", m.ID, l.Label)
			both++
		}
	}
	assert.Greater(t, both, 5, "hardly any line tells what it makes")

	// Recomputed from the counts: the places that the hollow reaches, against what is drawn.
	drawn := map[string]partspec.Size{}
	for _, f := range nut.Features {
		switch f := f.(type) {
		case *partspec.Bore:
			drawn[f.Name] = f.Diameter
		case *partspec.Recess:
			drawn[f.Name] = f.Diameter
		}
	}
	checked := 0
	for _, m := range timeline(p) {
		size, ok := drawn[m.Feature]
		if !ok || m.Process != plan.BoreOut && m.Process != plan.Recess {
			continue
		}
		for _, c := range m.Cuts {
			d, ok := diameterOf(m.Operation, c)
			if !ok || c.ToMeasure != nil {
				continue
			}
			checked++
			assert.LessOrEqual(t, d, float64(size.High)+metalSlack, "%s, %s: metal is not left on", m.ID, c.Name)
			assert.LessOrEqual(t, d, float64(size.Mid())+metalSlack, "%s, %s: rounded away from the metal", m.ID, c.Name)
		}
	}
	assert.Greater(t, checked, 5, "hardly any cut was recomputed")
}

// crossStep is a graduation of the example's cross slide, on diameter.
const crossStep = 0.02

// diameterOf is where a cut's cross slide ends, from the counts and the zero alone: the dial reads diameters.
func diameterOf(o plan.Operation, c plan.Cut) (float64, bool) {
	for _, r := range c.To {
		if r.Dial != "cross" {
			continue
		}
		for _, z := range o.Zeros {
			if z.Dial == "cross" && z.Outward {
				return z.ReferenceMM + float64(r.Graduations)*crossStep, true
			}
			if z.Dial == "cross" {
				return z.ReferenceMM - float64(r.Graduations)*crossStep, true
			}
		}
	}
	return 0, false
}

// Faces of the gland nut leave metal on too: no saddle count passes the end that is drawn.
func TestInchFacesLeaveMetalOn(t *testing.T) {
	job := load(t, filepath.Join(examples, "gland-nut.hcl"), filepath.Join(examples, "workshop.hcl"))
	length := float64(job.Part("gland_nut").Length.Low)
	checked := 0
	for _, m := range timeline(planned(t, job)) {
		if !strings.HasPrefix(m.Feature, "face.") {
			continue
		}
		for _, c := range m.Cuts {
			for _, r := range c.To {
				for _, z := range m.Zeros {
					if r.Dial != "saddle" || z.Dial != "saddle" || c.ToMeasure != nil {
						continue
					}
					checked++
					const saddleStep = 0.1
					if at := z.ReferenceMM - float64(r.Graduations)*saddleStep; m.setup.FreeEnd == "right" {
						assert.GreaterOrEqual(t, at, length-metalSlack, "%s, %s", m.ID, c.Name)
					}
				}
			}
		}
	}
	assert.Positive(t, checked)
}
