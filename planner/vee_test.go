package planner_test

import (
	"encoding/json"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// edgeJob is one of the parts with a vee or rounded edges, in the built-in workshop.
func edgeJob(t testing.TB, name string) *partspec.Job {
	t.Helper()
	return load(t, filepath.Join("testdata", "edges", name+".hcl"))
}

// featureOps lists the operations on a feature, in order.
func featureOps(p *plan.Plan, feature string) []plan.Operation {
	var ops []plan.Operation
	for _, s := range p.Parts[0].Setups {
		for _, op := range s.Operations {
			if op.Feature == feature {
				ops = append(ops, op)
			}
		}
	}
	return ops
}

func ids(ops []plan.Operation) []string {
	var list []string
	for _, op := range ops {
		list = append(list, op.ID)
	}
	return list
}

func TestVeeIsCutByTheTopSlide(t *testing.T) {
	ops := featureOps(answered(t, edgeJob(t, "sheave")), "belt")
	require.Len(t, ops, 3)
	assert.Equal(t, "groove.belt/middle", ops[0].ID, "the middle comes first")
	assert.ElementsMatch(t, []string{"groove.belt/flank_left", "groove.belt/flank_right"}, ids(ops[1:]))
	angles := map[string]float64{}
	for _, op := range ops {
		assert.LessOrEqual(t, width(t, op.Tool.ID), 2.2, "the blade goes into the bottom")
		angles[op.ID] = op.TopSlideDeg
	}
	// 38 degrees included: the flanks stand at 71 from the axis. Worked from the right, the left flank is cut going in and away from the headstock.
	assert.InDelta(t, -109, angles["groove.belt/flank_left"], 1e-9)
	assert.InDelta(t, -71, angles["groove.belt/flank_right"], 1e-9)
}

// width is the width of a tool of the built-in workshop.
func width(t *testing.T, id string) float64 {
	t.Helper()
	for _, tool := range edgeJob(t, "sheave").Workshop.Tools {
		if tool.ID() == id {
			return float64(tool.Width)
		}
	}
	require.Fail(t, "no tool", id)
	return 0
}

func TestVeeIsFormedWhereTheToolIsOwned(t *testing.T) {
	form := partspec.Tool{Kind: partspec.ChamferTool, Name: "38 degree form tool", Angle: 71 * units.Degree}
	job := withShop(edgeJob(t, "sheave"), func(w *partspec.Workshop) { w.Tools = append(w.Tools[:len(w.Tools):len(w.Tools)], form) })
	ops := featureOps(answered(t, job), "belt")
	assert.Equal(t, []string{"groove.belt/middle", "groove.belt/flanks"}, ids(ops))
	assert.Equal(t, form.ID(), ops[1].Tool.ID)
	assert.Zero(t, ops[1].TopSlideDeg)
}

func TestVeeTooNarrowForABladeIsRefused(t *testing.T) {
	job := withShop(edgeJob(t, "sheave"), func(w *partspec.Workshop) {
		var tools []partspec.Tool
		for _, tool := range w.Tools {
			if tool.Kind != partspec.Grooving && tool.Kind != partspec.Parting || tool.Width > 2.5 {
				tools = append(tools, tool)
			}
		}
		w.Tools = append(tools, partspec.Tool{Kind: partspec.Parting, Name: "wide parting tool", Width: 3, Reach: 25})
	})
	p := answered(t, job)
	require.Len(t, p.Parts[0].Refusals, 1)
	reason := p.Parts[0].Refusals[0].Reasons[0]
	assert.Contains(t, reason, "3 wide", "what is owned")
	assert.Contains(t, reason, "well under 2.2 wide that reaches 7", "the blade to add")
	assert.Contains(t, reason, "chamfer with angle = 71", "or the form tool")
	assert.Contains(t, reason, "knife", "and why no knife serves")
}

// Both edges of the knob's head are stepped and filed: the one that faces the stem before parting, the other in the second setting.
func TestRoundedEdgesAreSteppedAndFiled(t *testing.T) {
	p := answered(t, edgeJob(t, "knob"))
	require.Len(t, p.Parts[0].Setups, 2)
	for k, name := range []string{"under", "top"} {
		assert.Equal(t, []string{"fillet." + name + "/steps", "fillet." + name + "/file"}, ids(featureOps(p, name)))
		for _, op := range featureOps(p, name) {
			assert.Contains(t, ids(p.Parts[0].Setups[k].Operations), op.ID, "setting %d", k+1)
		}
	}
}

// Cuts of the planner's own plans, moved a little, are refused by the replay.
func TestSpoiltVeesAndEdgesAreRefused(t *testing.T) {
	for _, c := range []struct {
		part, op, dial string
		by             int64
	}{
		{"sheave", "groove.belt/flank_left", "cross", 30},
		{"sheave", "groove.belt/flank_right", "cross", 30},
		{"sheave", "groove.belt/flank_left", "saddle", 4},
		{"sheave", "groove.belt/middle", "cross", 30},
		{"knob", "fillet.top/steps", "cross", 6},
		{"knob", "fillet.under/steps", "saddle", 2},
	} {
		t.Run(c.op+" "+c.dial, func(t *testing.T) {
			job := edgeJob(t, c.part)
			p, failures := planner.Proved(job, planner.Options{})
			require.Empty(t, failures)
			spoilt := spoil(t, p, c.op, c.dial, c.by)
			_, failures = replay.Prove(job, spoilt)
			clauses := map[string]bool{}
			for _, f := range failures {
				clauses[f.Clause] = true
			}
			assert.True(t, clauses["least metal"], "%v", failures)
		})
	}
}

// spoil moves a dial of an operation deeper or along by some graduations in all its cuts.
func spoil(t *testing.T, p *plan.Plan, id, dial string, by int64) *plan.Plan {
	t.Helper()
	text, err := json.Marshal(p)
	require.NoError(t, err)
	var q plan.Plan
	require.NoError(t, json.Unmarshal(text, &q))
	found := false
	for i := range q.Parts[0].Setups {
		for k := range q.Parts[0].Setups[i].Operations {
			if op := &q.Parts[0].Setups[i].Operations[k]; op.ID == id {
				found = true
				for n := range op.Cuts {
					moveDial(op.Cuts[n].From, dial, by)
					moveDial(op.Cuts[n].To, dial, by)
				}
			}
		}
	}
	require.True(t, found, "no operation %s", id)
	return &q
}

func moveDial(list []plan.Reading, dial string, by int64) {
	for i := range list {
		if list[i].Dial == dial {
			list[i].Graduations += by
		}
	}
}
