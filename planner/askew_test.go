package planner_test

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

const slopeMill = "edge.slope/mill"

// A long slanting edge of thick plate is milled, the work turned round until it lies along the table; without table clamps it is filed as it was.
func TestSlantingEdgeIsMilled(t *testing.T) {
	job := shopPart(t, "gusset")
	good := answered(t, job)
	require.Empty(t, good.Parts[0].Refusals)
	s, o := operationOf(t, &good.Parts[0], slopeMill)
	assert.InDelta(t, -52.125, s.AskewDeg, 1e-4, "atan2(45, -35), as a direction below a right angle")
	assert.Equal(t, "right", s.FreeEnd, "its line is on the front")
	for _, c := range o.Cuts {
		require.NotNil(t, c.Along)
	}
	assert.Zero(t, last(o).Along.LeftMM)
	assert.Equal(t, []string{"edge.slope/mark", "edge.slope/saw", slopeMill}, keep(operationIDs(good), "edge.slope/mark", "edge.slope/saw", slopeMill))

	filed := answered(t, withoutHolding(job, "table_clamps"))
	assert.NotContains(t, operationIDs(filed), slopeMill)
}

// Work that is turned round otherwise than its edge lies, or milled otherwise than to its line, is refused.
func TestAskewCorruptions(t *testing.T) {
	job := shopPart(t, "gusset")
	text, err := json.Marshal(answered(t, job))
	require.NoError(t, err)
	for _, c := range []struct {
		name, op string
		spoil    func(*plan.Setup, *plan.Operation)
		clause   string
	}{
		{"a degree off", slopeMill, func(s *plan.Setup, _ *plan.Operation) { s.AskewDeg++ }, "pose"},
		{"the other way round", slopeMill, func(s *plan.Setup, _ *plan.Operation) { s.AskewDeg = -s.AskewDeg }, "pose"},
		{"not turned at all", slopeMill, func(s *plan.Setup, _ *plan.Operation) { s.AskewDeg = 0 }, "pose"},
		{"with the back up", slopeMill, func(s *plan.Setup, _ *plan.Operation) { s.FreeEnd = "left" }, "located"},
		{"on the drilling machine", slopeMill, func(s *plan.Setup, _ *plan.Operation) { s.Machine, s.MachineKind = "drill", "drill" }, "pose"},
		{"along another edge", slopeMill, func(_ *plan.Setup, o *plan.Operation) { last(o).Along.Edge = "right" }, "pose"},
		{"along no edge", slopeMill, func(_ *plan.Setup, o *plan.Operation) { last(o).Along.Edge = "rim" }, "edges"},
		{"left too thick", slopeMill, func(_ *plan.Setup, o *plan.Operation) { leave(o, 0.5) }, "most metal"},
		{"cut too far", slopeMill, func(_ *plan.Setup, o *plan.Operation) { leave(o, -0.5) }, "edges"},
		{"surer than a gauge", slopeMill, func(_ *plan.Setup, o *plan.Operation) { last(o).Along.WithinMM = 0.001 }, "edges"},
		{"as sure as a saw", slopeMill, func(_ *plan.Setup, o *plan.Operation) {
			for i := range o.Cuts {
				o.Cuts[i].Along.WithinMM = 0.8
			}
		}, "most metal"},
		{"not to the edge's end", slopeMill, func(_ *plan.Setup, o *plan.Operation) {
			for i := range o.Cuts {
				o.Cuts[i].Along.BeyondMM = -12
			}
		}, "edges"},
		{"a run into a clamp", slopeMill, func(_ *plan.Setup, o *plan.Operation) { last(o).Along.BeyondMM = 160 }, "clearance"},
		{"into a clamp", slopeMill, func(s *plan.Setup, _ *plan.Operation) { s.Clamps[0].XMM, s.Clamps[0].YMM = 92, 50 }, "clearance"},
		{"not deep enough", slopeMill, func(_ *plan.Setup, o *plan.Operation) { o.Cuts = o.Cuts[:len(o.Cuts)-1] }, "most metal"},
		{"with x read as well", slopeMill, func(_ *plan.Setup, o *plan.Operation) {
			o.Cuts[0].From = append(o.Cuts[0].From, plan.Reading{Dial: "x", Graduations: 10})
		}, "zero"},
		{"by a drill", slopeMill, func(_ *plan.Setup, o *plan.Operation) { o.Tool.ID = "drills" }, "tool"},
		{"without its line", "edge.slope/mark", func(_ *plan.Setup, o *plan.Operation) { o.Feature = "edge.top" }, "located"},
		{"without its saw cut", "edge.slope/saw", func(_ *plan.Setup, o *plan.Operation) { o.Process, o.Edges = plan.Deburr, nil }, "grip force"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			s, o := operationOf(t, &p.Parts[0], c.op)
			c.spoil(s, o)
			_, failures := replay.Prove(job, &p)
			assert.Contains(t, clauses(failures), c.clause, "%v", failures)
		})
	}
}

// A table that does not go past the whole edge is told of by the replay, and the plan then files it.
func TestSlantingEdgeBeyondTheTable(t *testing.T) {
	job := shopPart(t, "gusset")
	good := answered(t, job)
	short := withShop(job, func(w *partspec.Workshop) {
		w.Machines = slices.Clone(w.Machines)
		for i := range w.Machines {
			w.Machines[i].Dials = slices.Clone(w.Machines[i].Dials)
			for k := range w.Machines[i].Dials {
				if d := &w.Machines[i].Dials[k]; w.Machines[i].Kind == partspec.Mill && d.Name == "x" {
					d.Travel = 60
				}
			}
		}
	})
	_, failures := replay.Prove(short, good)
	assert.Contains(t, clauses(failures), "travel")
	assert.NotContains(t, operationIDs(answered(t, short)), slopeMill)
}

// leave leaves so much more on the edge in the passes that finish it.
func leave(o *plan.Operation, mm float64) {
	for i := range o.Cuts {
		if a := o.Cuts[i].Along; a.LeftMM == 0 {
			a.LeftMM += mm
		}
	}
}
