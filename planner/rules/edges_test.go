package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

// Edges of the plate, in the outline's order.
const (
	bottomEdge = iota
	rightEdge
	topEdge
	leftEdge
)

// plate is a flat part of 60 by 44: a bore of 40 whose web is 4 at the right edge and 16 at the left, and a pattern of holes.
func plate() *partspec.Part {
	size := func(v units.Length) partspec.Size { return partspec.Size{Dimension: units.Dimension{Value: v}} }
	return &partspec.Part{
		Outline: &partspec.Outline{Kind: "rectangle", Datum: []string{"left", "bottom"}, Edges: []partspec.OutlineEdge{
			{Name: "bottom", X1: 60}, {Name: "right", X0: 60, X1: 60, Y1: 44}, {Name: "top", X0: 60, Y0: 44, Y1: 44}, {Name: "left", Y0: 44}}},
		Features: []partspec.Feature{
			&partspec.Bore{FeatureHead: partspec.FeatureHead{Name: "dial"}, Diameter: size(40)},
			&partspec.Holes{FeatureHead: partspec.FeatureHead{Name: "hood"}, Diameter: size(4)},
			&partspec.Seat{FeatureHead: partspec.FeatureHead{Name: "cradle"}, On: partspec.Left},
		},
	}
}

// onEdge is an operation on an edge of the plate.
func onEdge(process plan.Process, stage shape.Stage, edge int) shape.Op {
	return shape.Op{ID: "edge/" + string(process), Feature: "edge.top", Process: process, Stage: stage, Z1: 4, Flat: &shape.FlatCut{Edges: []shape.EdgeCut{{Edge: edge}}}}
}

// inPlate is an operation on the plate's bore, or on a hole at (x, 22).
func inPlate(feature string, process plan.Process, stage shape.Stage, x, radius, depth float64) shape.Op {
	return shape.Op{ID: feature + "/" + string(process), Feature: feature, Process: process, Stage: stage, Z1: 4, Depth: depth, Spots: []shape.Spot{{X: x, Y: 22, Radius: radius}}, Flat: &shape.FlatCut{}}
}

// edgeOrderCases are the cases of rules about edges and faces of flat parts.
func edgeOrderCases() map[string]struct{ binds, leaves pairing } {
	milled := func(edge int) shape.Op { return onEdge(plan.MillEdge, shape.Finishing, edge) }
	sawn := onEdge(plan.Saw, shape.Roughing, topEdge)
	filed := onEdge(plan.FileEdge, shape.Finishing, topEdge)
	drill := inPlate("hood", plan.Drill, shape.Finishing, 8, 2, 2)
	near := inPlate("hood", plan.Drill, shape.Finishing, 56, 2, 2)
	rough := inPlate("dial", plan.BoreHead, shape.Roughing, 36, 19.7, 5)
	finish := inPlate("dial", plan.BoreHead, shape.Finishing, 36, 20, 0.3)
	millFace := shape.Op{ID: "face.right/mill", Feature: "face.right", Process: plan.MillFace, Stage: shape.Finishing, End: partspec.Right, Flat: &shape.FlatCut{}}
	deburr := shape.Op{ID: "edges/deburr", Feature: "part", Process: plan.Deburr, Flat: &shape.FlatCut{}}
	cradle := shape.Op{ID: "cradle/steps", Feature: "cradle", Process: plan.SeatSteps, Stage: shape.Finishing, End: partspec.Left, Z1: 2, Flat: &shape.FlatCut{Seats: []shape.Trough{{Feature: "cradle"}}}}
	return map[string]struct{ binds, leaves pairing }{
		"A-37f": {pairing{milled(topEdge), cradle}, pairing{inPlate("hood", plan.Tap, shape.Finishing, 30, 2, 0), cradle}},
		"A-43f": {pairing{millFace, milled(leftEdge)}, pairing{millFace, sawn}},
		"A-41":  {pairing{milled(leftEdge), drill}, pairing{milled(rightEdge), drill}},
		"A-40":  {pairing{sawn, filed}, pairing{sawn, milled(leftEdge)}},
		"A-34":  {pairing{near, milled(rightEdge)}, pairing{near, milled(topEdge)}},
		"A-34b": {pairing{milled(rightEdge), finish}, pairing{milled(rightEdge), rough}},
		"A-36s": {pairing{drill, rough}, pairing{rough, drill}},
		"A-18":  {pairing{filed, deburr}, pairing{deburr, filed}},
	}
}

// A hole saw goes round the hole of its pilot, and a boring head cleans up what it has left, whichever of the two brings the bore to size.
func TestHoleSawBetweenDrillAndHead(t *testing.T) {
	pilot, saw := inPlate("dial", plan.Drill, shape.Roughing, 36, 3.2, 3.2), inPlate("dial", plan.SawHole, shape.Roughing, 36, 18, 15)
	rough, finish := inPlate("dial", plan.BoreHead, shape.Roughing, 36, 19.7, 1.7), inPlate("dial", plan.BoreHead, shape.Finishing, 36, 20, 0.3)
	other := inPlate("hood", plan.Drill, shape.Roughing, 8, 3.2, 3.2)
	ops := []shape.Op{finish, rough, saw, pilot, other}
	before := map[[2]int]bool{}
	for _, a := range rules.All().Arcs(rules.Work{Part: plate(), Ops: ops, FromEnd: func(int, partspec.End) bool { return true }, Length: 30}) {
		if a.Rule == "A-26" {
			before[[2]int{a.Before, a.After}] = true
		}
	}
	assert.Equal(t, map[[2]int]bool{{3, 2}: true, {3, 1}: true, {3, 0}: true, {2, 1}: true, {2, 0}: true, {1, 0}: true}, before)
}
