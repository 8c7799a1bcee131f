package replay_test

import (
	"encoding/json"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// planned is the plan that the planner makes of the cover plate among the examples.
func planned(t testing.TB) (*partspec.Job, *plan.Plan) {
	t.Helper()
	var sources []partspec.Source
	for _, name := range []string{"workshop.hcl", "cover.hcl"} {
		text, err := os.ReadFile("../../examples/tide-gauge/" + name)
		require.NoError(t, err)
		sources = append(sources, partspec.Source{Name: name, Text: text})
	}
	job, _, diags := partspec.Parse(sources)
	require.False(t, diags.HasErrors(), "%v", diags)
	p := planner.Plan(job, planner.Options{})
	require.Empty(t, p.Parts[0].Refusals)
	return job, p
}

// copied is a plan of its own.
func copied(t *testing.T, p *plan.Plan) *plan.Plan {
	t.Helper()
	text, err := json.Marshal(p)
	require.NoError(t, err)
	var q plan.Plan
	require.NoError(t, json.Unmarshal(text, &q))
	return &q
}

// Without any one operation, but breaking edges and drawing lines, the cover's plan is refused.
func TestEveryOperationOfTheCoverIsNeeded(t *testing.T) {
	job, p := planned(t)
	_, failures := replay.Prove(job, p)
	require.Empty(t, failures)
	for i, s := range p.Parts[0].Setups {
		for k, o := range s.Operations {
			if o.Process == plan.Deburr || o.Process == plan.MarkOut && len(o.Cuts) == 0 {
				continue
			}
			q := copied(t, p)
			ops := &q.Parts[0].Setups[i].Operations
			*ops = slices.Delete(*ops, k, k+1)
			_, failures := replay.Prove(job, q)
			assert.NotEmpty(t, failures, o.ID)
		}
	}
}

// What holds the cover matters: clamps in a tool's way or off the metal, no counterweight, nothing below, a place found too surely.
func TestHoldingsOfTheCoverAreProved(t *testing.T) {
	job, p := planned(t)
	for name, spoil := range map[string]func(*plan.Setup) bool{
		"a clamp over the middle of the bore": func(s *plan.Setup) bool {
			if s.HoldingKind != "faceplate" {
				return false
			}
			s.Clamps[0].XMM, s.Clamps[0].YMM = s.CentreX, s.CentreY
			return true
		},
		"no counterweight, and no less shaking told": func(s *plan.Setup) bool {
			if s.Balance == nil {
				return false
			}
			s.Balance.WeightKg, s.Balance.LeftOverKgMM = 0, 0.1
			return true
		},
		"clamps off the work": func(s *plan.Setup) bool {
			for i := range s.Clamps {
				s.Clamps[i].XMM += 200
			}
			return len(s.Clamps) > 0
		},
		"clamps slack": func(s *plan.Setup) bool {
			for i := range s.Clamps {
				s.Clamps[i].ForceN = 1
			}
			return len(s.Clamps) > 0
		},
		"turned over": func(s *plan.Setup) bool {
			if s.MachineKind != "mill" {
				return false
			}
			s.FreeEnd = map[string]string{"left": "right", "right": "left"}[s.FreeEnd]
			return true
		},
		"found without error": func(s *plan.Setup) bool {
			was := s.LocateMM
			s.LocateMM = 0
			return was > 0
		},
	} {
		for i := range p.Parts[0].Setups {
			q := copied(t, p)
			if !spoil(&q.Parts[0].Setups[i]) {
				continue
			}
			_, failures := replay.Prove(job, q)
			assert.NotEmpty(t, failures, "%s, setup %d", name, i+1)
		}
	}
}

func BenchmarkProveCover(b *testing.B) {
	job, p := planned(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, failures := replay.Prove(job, p); len(failures) > 0 {
			b.Fatal(failures)
		}
	}
}
