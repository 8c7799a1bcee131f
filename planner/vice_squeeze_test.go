package planner_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// What a vice does to a bore that is finished between its jaws, bored or reamed, is reckoned by the replay itself: a plan that belies it is refused.
func TestReplayReckonsTheSqueezeOfAVice(t *testing.T) {
	for _, part := range []string{"vice_web", "vice_ream"} {
		job := load(t, "testdata/"+part+".hcl")
		for name, lie := range map[string]func(*plan.Grip){
			"no error":      func(g *plan.Grip) { g.ErrorMM = 0 },
			"a third of it": func(g *plan.Grip) { g.ErrorMM /= 3 },
		} {
			p, failures := planner.Proved(job, planner.Options{})
			require.Empty(t, failures)
			told := false
			for i := range p.Parts[0].Setups {
				if s := &p.Parts[0].Setups[i]; s.Grip.Kind == "vice" && s.Grip.ErrorMM > 0 {
					lie(&s.Grip)
					told = true
				}
			}
			require.True(t, told, "no bore is finished in the vice: the test proves nothing")
			_, failures = replay.Prove(job, p)
			require.NotEmpty(t, failures, "%s, %s", part, name)
			assert.True(t, strings.Contains(failures[0].String(), "distortion"), "%s, %s: %v", part, name, failures[0])
		}
	}
}

// A reamed bore that the jaws squeeze by more than a third of its tolerance is refused by the replay too: the drawing made finer under the same plan.
func TestReplayRefusesAReamedBoreTooFineForTheVice(t *testing.T) {
	job := load(t, "testdata/vice_ream.hcl")
	p, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	job.Parts[0].Roundness = 0.002
	_, failures = replay.Prove(job, p)
	require.NotEmpty(t, failures)
	assert.Contains(t, failures[0].String(), "out of round")

	p, failures = planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	for _, s := range p.Parts[0].Setups {
		for _, op := range s.Operations {
			assert.False(t, op.Process == plan.Ream && s.Grip.Kind == "vice", "it is reamed in the vice all the same")
		}
	}
}

// What would want a firm grip after a bore is reamed comes before it: the vice is then slackened for the reamer.
func TestHeavyCutsComeBeforeTheReamedBore(t *testing.T) {
	p := planned(t, load(t, "testdata/shop/pawl.hcl"))
	for _, s := range p.Setups {
		if e := s.Grip.Eased; e != nil && e.Before == "bore.pivot/ream" {
			assert.Less(t, e.WorkingN, s.Grip.WorkingN)
			assert.Equal(t, "bore.pivot/ream", s.Operations[len(s.Operations)-1].ID)
			return
		}
	}
	assert.Fail(t, "no grip is eased before it is reamed")
}
