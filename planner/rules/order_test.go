package rules_test

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// part is what the rules look features up in: a body with a bore, a thread, a groove and a knurl on it.
func part() *partspec.Part {
	return &partspec.Part{Features: []partspec.Feature{
		&partspec.Spigot{FeatureHead: partspec.FeatureHead{Name: "body"}},
		&partspec.Bore{FeatureHead: partspec.FeatureHead{Name: "main"}},
		&partspec.Thread{FeatureHead: partspec.FeatureHead{Name: "screw"}, On: "body"},
		&partspec.Groove{FeatureHead: partspec.FeatureHead{Name: "ring"}, On: "body"},
		&partspec.Knurl{FeatureHead: partspec.FeatureHead{Name: "hold"}, On: "grip"},
		&partspec.CrossHole{FeatureHead: partspec.FeatureHead{Name: "oil"}},
		&partspec.Holes{FeatureHead: partspec.FeatureHead{Name: "leaning"}, SquareTo: "pipe"},
		&partspec.Holes{FeatureHead: partspec.FeatureHead{Name: "spotted"}, Mate: &partspec.Mating{Register: "main"}},
		&partspec.Seat{FeatureHead: partspec.FeatureHead{Name: "pipe"}, On: partspec.Left},
	}}
}

// cut is an operation between two places; a turned or bored one reaches a radius there.
func cut(feature string, process plan.Process, z0, z1, radius float64) shape.Op {
	o := shape.Op{ID: feature + "/" + string(process), Feature: feature, Process: process, Stage: shape.Finishing, Z0: z0, Z1: z1}
	switch process {
	case plan.TurnRough, plan.Drill:
		o.Stage = shape.Roughing
	case plan.TurnFinish, plan.Ream, plan.BoreOut:
		o.Makes = []string{feature}
	}
	switch process {
	case plan.Drill, plan.Ream, plan.BoreOut, plan.Tap, plan.Recess:
		o.Inside, o.Inner = true, solid.Const(z0, z1, radius)
	case plan.TurnRough, plan.TurnFinish:
		o.Outer = solid.Const(z0, z1, radius)
	}
	return o
}

func face(end partspec.End) shape.Op {
	o := shape.Op{ID: "face." + end.String(), Feature: "face." + end.String(), Process: plan.Face, Stage: shape.Finishing, End: end, Keep: &shape.Stretch{Z1: 30}}
	if end == partspec.Right {
		o.Z0, o.Z1 = 30, 30
	}
	return o
}

// pairing is two operations, the first of which the rule puts before the second.
type pairing struct{ first, then shape.Op }

// A groove that the thread ends a little short of is its run-out, and comes first; one farther off than a pitch is nobody's.
func TestRunOutGrooveBeforeItsThread(t *testing.T) {
	p := part()
	for _, f := range p.Features {
		if f, ok := f.(*partspec.Thread); ok {
			f.Thread.Pitch = 1.5
		}
	}
	thread := cut("screw", plan.Thread, 8, 20, 0)
	for z, want := range map[float64]int{7.5: 1, 6: 0} {
		groove := cut("ring", plan.Groove, z-2, z, 0)
		arcs := rules.All().Arcs(rules.Work{Part: p, Ops: []shape.Op{groove, thread}, FromEnd: func(int, partspec.End) bool { return true }, Length: 30})
		assert.Len(t, arcs, want, "a groove that ends at %v", z)
	}
}

// orderCases has for each rule of order a pair that it binds and one that it leaves alone.
func orderCases() map[string]struct{ binds, leaves pairing } {
	rough, turn := cut("body", plan.TurnRough, 0, 20, 11), cut("body", plan.TurnFinish, 0, 20, 10)
	drill, bore, ream := cut("main", plan.Drill, 0, 30, 4), cut("main", plan.BoreOut, 0, 30, 4.9), cut("main", plan.Ream, 0, 30, 5)
	partOff := shape.Op{ID: "part_off", Feature: "part", Process: plan.PartOff, Stage: shape.Finishing, Z0: -2, Z1: 0}
	groove, chamfer := cut("ring", plan.Groove, 5, 7, 0), cut("edge", plan.Chamfer, 0, 1, 0)
	thread, knurl := cut("screw", plan.Thread, 0, 20, 0), cut("hold", plan.Knurl, 20, 30, 0)
	wide := cut("main", plan.BoreOut, 0, 30, 9.5)
	seat := cut("seat", plan.BoreOut, 22, 30, 8)
	file, steps := cut("crown", plan.FileProfile, 20, 30, 0), cut("crown", plan.Steps, 20, 30, 0)
	type both = struct{ binds, leaves pairing }
	cases := map[string]both{
		"A-01": {pairing{face(partspec.Right), turn}, pairing{face(partspec.Right), partOff}},
		"A-03": {pairing{rough, turn}, pairing{knurl, turn}},
		"B-41": {pairing{wide, turn}, pairing{bore, turn}},
		"A-04": {pairing{cut("end", plan.TurnRough, 20, 30, 6), turn}, pairing{cut("end", plan.TurnRough, 20, 30, 14), turn}},
		"A-12": {pairing{turn, groove}, pairing{turn, cut("far", plan.Groove, 24, 26, 0)}},
		"A-13": {pairing{groove, thread}, pairing{bore, thread}},
		"A-14": {pairing{knurl, turn}, pairing{knurl, rough}},
		"A-15": {pairing{rough, groove}, pairing{turn, groove}},
		"A-39": {pairing{steps, file}, pairing{steps, chamfer}},
		"A-17": {pairing{turn, partOff}, pairing{turn, groove}},
		"A-26": {pairing{drill, bore}, pairing{drill, turn}},
		"A-28": {pairing{bore, ream}, pairing{seat, ream}},
		"A-43": {pairing{turn, groove}, pairing{bore, groove}},
		"A-44": {pairing{drill, seat}, pairing{seat, drill}},
		"A-20": {pairing{partOff, face(partspec.Left)}, pairing{partOff, face(partspec.Right)}},
	}
	maps.Copy(cases, besideOrderCases())
	maps.Copy(cases, edgeOrderCases())
	return cases
}

// work is what the rules see of two operations: both can be done from either end.
func work(ops ...shape.Op) rules.Work {
	p := part()
	for _, o := range ops {
		if o.Flat != nil {
			p = plate()
		}
	}
	return rules.Work{Part: p, Ops: ops, Free: partspec.Right, Length: 30, FromEnd: func(int, partspec.End) bool { return true }}
}

// fires reports whether a rule puts the first of a pair before the second.
func fires(set rules.Set, id string, p pairing) bool {
	for _, a := range set.Arcs(work(p.first, p.then)) {
		if a.Rule == id && a.Before == 0 && a.After == 1 {
			return true
		}
	}
	return false
}

func TestRulesOfOrder(t *testing.T) {
	cases := orderCases()
	for _, r := range rules.All().Orders {
		t.Run(r.ID, func(t *testing.T) {
			c, ok := cases[r.ID]
			require.True(t, ok, "the rule has no case: %s", r.Title)
			assert.True(t, fires(rules.All(), r.ID, c.binds), "%s, %s", c.binds.first.ID, c.binds.then.ID)
			assert.False(t, fires(rules.All(), r.ID, c.leaves), "%s, %s", c.leaves.first.ID, c.leaves.then.ID)
			assert.False(t, fires(rules.All().Without(r.ID), r.ID, c.binds), "left out")
		})
	}
	assert.Len(t, cases, len(rules.All().Orders), "a case for a rule that is not there")
}
