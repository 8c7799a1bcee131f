package planner_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// What holds thin plate in a vice, and a countersink beside its jaws, is held against the work by the replay as well.
func TestThinWorkSpoilt(t *testing.T) {
	for _, c := range []struct {
		name, file, clause string
		spoil              func(*plan.Setup)
	}{
		{"it would bow", "nameplate", "grip force", func(s *plan.Setup) { s.Grip.WorkingN = 4000 }},
		{"less than half in the jaws", "nameplate", "grip", func(s *plan.Setup) { s.Grip.ToZ = s.Grip.FromZ + 0.7 }},
		{"a drill fed so hard that it sags", "guide-strip", "bed", func(s *plan.Setup) { s.Operations[0].FeedMM = 9 }},
		{"a cone that sinks into the jaw", "guide-strip", "clearance", func(s *plan.Setup) {
			for i := range s.Operations {
				s.Operations[i].Tool.SizeMM = 20.5
			}
			s.Presses[0].YMM += 5
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := load(t, "testdata/shop/"+c.file+".hcl")
			p, failures := planner.Proved(job, planner.Options{})
			require.Empty(t, failures)
			for i := range p.Parts[0].Setups {
				if s := &p.Parts[0].Setups[i]; s.Grip.Kind == "vice" {
					c.spoil(s)
					break
				}
			}
			_, failures = replay.Prove(job, p)
			var clauses []string
			for _, f := range failures {
				clauses = append(clauses, f.Clause)
			}
			assert.Contains(t, clauses, c.clause, "%v", failures)
		})
	}
}
