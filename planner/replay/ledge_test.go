package replay_test

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// onLedge is the planner's plan of a bearing that stands on an angle plate.
func onLedge(t testing.TB) (*partspec.Job, *plan.Plan) {
	t.Helper()
	const name = "../testdata/rules/bearing.hcl"
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	job, _, diags := partspec.Parse([]partspec.Source{{Name: name, Text: text}})
	require.False(t, diags.HasErrors(), "%v", diags)
	p := planner.Plan(job, planner.Options{})
	require.Empty(t, p.Parts[0].Refusals)
	require.NotNil(t, p.Parts[0].Setups[0].Ledge)
	return job, p
}

// Whatever of an angle plate is told wrongly is caught.
func TestCorruptionsOfALedgeAreRefused(t *testing.T) {
	job, good := onLedge(t)
	_, failures := replay.Prove(job, good)
	require.Empty(t, failures)
	for _, c := range []struct {
		name   string
		spoil  func(*plan.Setup)
		clause string
	}{
		{"no ledge", func(s *plan.Setup) { s.Ledge = nil }, "grip"},
		{"a ledge below the work", func(s *plan.Setup) { s.Ledge.Y0, s.Ledge.Y1 = -1, -1 }, "grip"},
		{"a ledge in the work", func(s *plan.Setup) { s.Ledge.Y0, s.Ledge.Y1 = 1, 1 }, "grip"},
		{"a slanting ledge", func(s *plan.Setup) { s.Ledge.Y1 = 0.1 }, "grip"},
		{"a wider ledge than is owned", func(s *plan.Setup) { s.Ledge.X0 -= 5 }, "grip"},
		{"a longer ledge than is owned", func(s *plan.Setup) { s.Ledge.ReachMM = 80 }, "grip"},
		{"a shorter leg than is owned", func(s *plan.Setup) { s.Ledge.LegMM = 20 }, "grip"},
		{"a faceplate that is not owned", func(s *plan.Setup) { s.Ledge.Faceplate = "other" }, "holding"},
		{"the other way up", func(s *plan.Setup) { l := s.Ledge; l.X0, l.X1 = l.X1, l.X0 }, "grip"},
		{"one strap", func(s *plan.Setup) { s.Ledge.Straps = s.Ledge.Straps[:1] }, "grip"},
		{"a toe on air", func(s *plan.Setup) { s.Ledge.Straps[0].YMM = 50 }, "clamps"},
		{"a toe past the corner", func(s *plan.Setup) { s.Ledge.Straps[0].XMM = 2 }, "clamps"},
		{"a strap over the bore", func(s *plan.Setup) { s.Ledge.Straps[0].XMM = 42 }, "clamps"},
		{"both straps on one side", func(s *plan.Setup) { s.Ledge.Straps[0].XMM = 70 }, "clamps"},
		{"a strap along the bore", func(s *plan.Setup) { s.Ledge.Straps[0].AngleDeg = 90 }, "clamps"},
		{"a stud in the work", func(s *plan.Setup) { s.Ledge.Straps[1].StudMM = 3 }, "clamps"},
		{"a stud past the ledge", func(s *plan.Setup) { s.Ledge.Straps[1].StudMM = 30 }, "clamps"},
		{"a wider toe than is owned", func(s *plan.Setup) { s.Ledge.Straps[1].ToeMM, s.Ledge.Straps[1].XMM = 14, 80 }, "clamps"},
		{"straps hardly tightened", func(s *plan.Setup) {
			for i := range s.Ledge.Straps {
				s.Ledge.Straps[i].ForceN = 100
			}
			s.Grip.WorkingN = 200
		}, "grip force"},
		{"straps tightened beyond what they give", func(s *plan.Setup) { s.Ledge.Straps[0].ForceN = 9000 }, "grip force"},
		{"a grip that the straps do not give", func(s *plan.Setup) { s.Grip.WorkingN = 12000 }, "grip force"},
		{"a bore that is said to stay round", func(s *plan.Setup) { s.Grip.ErrorMM = 0.0005 }, "distortion"},
		{"off its ledge", func(s *plan.Setup) { s.Bed.HeightMM, s.Bed.GapMM = 40, 40 }, "grip"},
		{"a stop clearer than it is thick", func(s *plan.Setup) { s.Bed.GapMM = 20 }, "bed"},
		{"a place found too surely", func(s *plan.Setup) { s.LocateMM = 0.02 }, "located"},
		{"truer than a faceplate", func(s *plan.Setup) { s.RunOutMM = 0 }, "run-out"},
		{"no counterweight", func(s *plan.Setup) { s.Balance.WeightKg = 0 }, "balance"},
		{"a counterweight on the heavy side", func(s *plan.Setup) { s.Balance.AngleDeg += 180 }, "balance"},
		{"the angle plate not weighed", func(s *plan.Setup) { s.Balance.MassKg = 0.95 }, "balance"},
		{"straps that press along the spindle", func(s *plan.Setup) { s.Grip.Kind = "clamps" }, "grip"},
	} {
		t.Run(c.name, func(t *testing.T) {
			bad := copied(t, good)
			c.spoil(&bad.Parts[0].Setups[0])
			_, failures := replay.Prove(job, bad)
			require.NotEmpty(t, failures)
			var clauses []string
			for _, f := range failures {
				clauses = append(clauses, f.Clause)
			}
			assert.Contains(t, clauses, c.clause, "%v", failures)
		})
	}
}

// harmlessLedge are the changes of a ledge's figures that may pass, each with its reason; every other one must be refused.
var harmlessLedge = map[string]string{
	"straps.toe_mm less":  "a narrower toe on the same metal",
	"straps.stud_mm more": "a stud farther out, its strap still on the ledge",
	"straps.x_mm more":    "a toe slid along its edge towards the bore",
	"straps.x_mm less":    "a toe slid along its edge towards the bore",
	"straps.stud_mm less": "a stud nearer to the work that still clears it",
	"straps.force_n less": "a strap less tight than the cut would stand",
}

// Every figure of a ledge is changed, one at a time and both ways.
func TestEveryFigureOfALedgeIsProvedOrHarmless(t *testing.T) {
	job, good := onLedge(t)
	text, err := json.Marshal(good.Parts[0].Setups[0].Ledge)
	require.NoError(t, err)
	tried := 0
	for _, path := range figuresOf(t, text) {
		for _, kind := range []string{"more", "less"} {
			var tree any
			require.NoError(t, json.Unmarshal(text, &tree))
			changeAt(tree, path, map[string]float64{"more": 3, "less": -3}[kind])
			changed, err := json.Marshal(tree)
			require.NoError(t, err)
			bad := copied(t, good)
			bad.Parts[0].Setups[0].Ledge = &plan.Ledge{}
			require.NoError(t, json.Unmarshal(changed, bad.Parts[0].Setups[0].Ledge))
			tried++
			if _, failures := replay.Prove(job, bad); len(failures) == 0 {
				name := strings.ReplaceAll(strings.ReplaceAll(strings.Join(path, "."), "straps.0.", "straps."), "straps.1.", "straps.") + " " + kind
				_, ok := harmlessLedge[name]
				assert.True(t, ok, "%s: nothing was refused", name)
			}
		}
	}
	assert.Greater(t, tried, 30)
}

// figuresOf are the paths of all numbers and flags of a JSON value.
func figuresOf(t *testing.T, text []byte) [][]string {
	t.Helper()
	var tree any
	require.NoError(t, json.Unmarshal(text, &tree))
	var list [][]string
	var walk func(v any, path []string)
	walk = func(v any, path []string) {
		switch v := v.(type) {
		case map[string]any:
			for _, k := range slices.Sorted(maps.Keys(v)) {
				walk(v[k], append(slices.Clone(path), k))
			}
		case []any:
			for i, child := range v {
				walk(child, append(slices.Clone(path), strconv.Itoa(i)))
			}
		case float64, bool:
			list = append(list, path)
		}
	}
	walk(tree, nil)
	return list
}

// changeAt adds to the number at a path, or turns the flag there.
func changeAt(v any, path []string, by float64) {
	set := func(old any) any {
		if flag, ok := old.(bool); ok {
			return !flag
		}
		return old.(float64) + by
	}
	switch v := v.(type) {
	case map[string]any:
		if len(path) == 1 {
			v[path[0]] = set(v[path[0]])
			return
		}
		changeAt(v[path[0]], path[1:], by)
	case []any:
		i, _ := strconv.Atoi(path[0])
		if len(path) == 1 {
			v[i] = set(v[i])
			return
		}
		changeAt(v[i], path[1:], by)
	}
}
