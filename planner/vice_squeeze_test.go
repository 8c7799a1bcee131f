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

// What a vice does to a bore that is finished between its jaws is reckoned by the replay itself: a plan that belies it is refused.
func TestReplayReckonsTheSqueezeOfAVice(t *testing.T) {
	job := load(t, "testdata/vice_web.hcl")
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
		require.NotEmpty(t, failures, name)
		assert.True(t, strings.Contains(failures[0].String(), "distortion"), "%s: %v", name, failures[0])
	}
}
