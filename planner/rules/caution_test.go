package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
	"catchplate/planner/rules"
)

// setup is a holding with one operation in it.
func setup(process plan.Process, changes ...func(*plan.Setup)) []plan.Setup {
	s := plan.Setup{HoldingKind: "soft_jaws", StickOutMM: 20, Grip: plan.Grip{Kind: "jaws", Surface: "body", RadiusMM: 10}, Operations: []plan.Operation{{Process: process}}}
	for _, f := range changes {
		f(&s)
	}
	return []plan.Setup{s}
}

// cautionCases has for each caution work that calls for it and work that does not.
func cautionCases() map[string]struct{ warns, silent []plan.Setup } {
	mandrel := func(s *plan.Setup) { s.HoldingKind, s.Grip.Kind = "stub_mandrel", "mandrel" }
	nothing := []plan.Setup{{Grip: plan.Grip{Kind: "jaws"}}}
	type both = struct{ warns, silent []plan.Setup }
	return map[string]both{
		"F-01":  {setup(plan.Face), nothing},
		"F-02":  {setup(plan.Face), setup(plan.Face, mandrel)},
		"F-03":  {setup(plan.Drill, func(s *plan.Setup) { s.HoldingKind = "faceplate" }), setup(plan.Drill)},
		"F-11":  {setup(plan.Drill, thick(2.9)), setup(plan.Drill, thick(3))},
		"F-18":  {setup(plan.MillSlot, func(s *plan.Setup) { s.MachineKind = plan.OnSlide }), setup(plan.MillSlot, func(s *plan.Setup) { s.MachineKind = "mill" })},
		"F-16":  {setup(plan.BoreHead, tool("boring_head/head")), setup(plan.BoreHead, tool("boring/bar"))},
		"F-05":  {setup(plan.PartOff), setup(plan.Groove)},
		"F-06":  {setup(plan.FileProfile), setup(plan.Steps)},
		"F-07":  {setup(plan.FileProfile), setup(plan.Steps)},
		"F-10":  {setup(plan.Face, func(s *plan.Setup) { s.StickOutMM = 61 }), setup(plan.Face, func(s *plan.Setup) { s.StickOutMM = 59 })},
		"F-13":  {setup(plan.Drill), setup(plan.BoreOut)},
		"F-13s": {setup(plan.SawHole), setup(plan.Drill)},
		"F-14":  {setup(plan.Face), nothing},
		"F-22":  {setup(plan.Face, func(s *plan.Setup) { s.HoldingKind = "glued_arbor" }), setup(plan.Face, mandrel)},
		"F-29":  {setup(plan.Ream), setup(plan.Chamfer)},
		"F-09":  {setup(plan.Face, func(s *plan.Setup) { s.Grip.Surface = "stock" }), setup(plan.Face)},
	}
}

// thick makes the work flat, and that thick.
func thick(mm float64) func(*plan.Setup) {
	return func(s *plan.Setup) { s.FlatBefore = &plan.Flat{BackZ: 0, FrontZ: mm} }
}

// tool gives the operation a tool.
func tool(id string) func(*plan.Setup) {
	return func(s *plan.Setup) { s.Operations[0].Tool.ID = id }
}

func warns(set rules.Set, id string, setups []plan.Setup) bool {
	for _, c := range set.Warn(setups) {
		if c.Rule == id {
			return c.Text != ""
		}
	}
	return false
}

func TestCautions(t *testing.T) {
	cases := cautionCases()
	for _, r := range rules.All().Cautions {
		t.Run(r.ID, func(t *testing.T) {
			c, ok := cases[r.ID]
			require.True(t, ok, "the rule has no case: %s", r.Title)
			assert.True(t, warns(rules.All(), r.ID, c.warns))
			assert.False(t, warns(rules.All(), r.ID, c.silent))
			assert.False(t, warns(rules.All().Without(r.ID), r.ID, c.warns), "left out")
		})
	}
	assert.Len(t, cases, len(rules.All().Cautions), "a case for a rule that is not there")
}
