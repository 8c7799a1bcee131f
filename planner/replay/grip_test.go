package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// What is cut across the round is lost to a grip wherever it lies in it; three jaws of a lathe go past one narrow flat, if nothing else is cut there.
func TestWhatIsCutAcrossIsLostToAGrip(t *testing.T) {
	head := func(name string) partspec.FeatureHead { return partspec.FeatureHead{Name: name} }
	flat := func(name string, count int, left, right float64) partspec.Feature {
		return &partspec.Flat{FeatureHead: head(name), Distance: sized(9, 0), Count: count, Span: partspec.Span{Left: lengthOf(left), Right: lengthOf(right)}}
	}
	slot := func(name string, left, right float64) partspec.Feature {
		return &partspec.Slot{FeatureHead: head(name), Span: partspec.Span{Left: lengthOf(left), Right: lengthOf(right)}}
	}
	jaws := plan.Setup{Grip: plan.Grip{Kind: "jaws", Jaws: 3, RadiusMM: 10, JawWidthMM: 4}}
	four, upright := jaws, jaws
	four.Grip.Jaws = 4
	upright.MachineKind = string(partspec.Mill)
	uncut := flat("uncut", 1, 0, 10)
	for _, c := range []struct {
		name     string
		setup    plan.Setup
		features []partspec.Feature
		lost     float64
	}{
		{"nothing is cut", jaws, nil, 0},
		{"one flat, between two jaws", jaws, []partspec.Feature{flat("a", 1, 2, 6)}, 0},
		{"one flat, four jaws", four, []partspec.Feature{flat("a", 1, 2, 6)}, 4},
		{"one flat, in a chuck on the mill", upright, []partspec.Feature{flat("a", 1, 2, 6)}, 4},
		{"two flats alike", jaws, []partspec.Feature{flat("a", 2, 2, 6)}, 4},
		{"two flats alike, one elsewhere that the jaws would go past", jaws, []partspec.Feature{flat("a", 2, 2, 6), flat("b", 1, 12, 20)}, 4},
		{"a slot, one flat elsewhere", jaws, []partspec.Feature{slot("a", 2, 6), flat("b", 1, 12, 20)}, 4},
		{"two flats one after the other", jaws, []partspec.Feature{flat("a", 1, 1, 3), flat("b", 1, 5, 9)}, 6},
		{"two that overlap", jaws, []partspec.Feature{slot("a", 5, 9), flat("b", 1, 1, 7)}, 8},
		{"partly out of the grip", jaws, []partspec.Feature{slot("a", -5, 3)}, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := &walk{setup: c.setup, part: &partspec.Part{Features: append(c.features, uncut)}}
			for _, f := range c.features {
				w.milled = append(w.milled, aside{feature: f.Head().Name})
			}
			assert.InDelta(t, c.lost, w.cutAcross(0, 10), 1e-9)
		})
	}
}
