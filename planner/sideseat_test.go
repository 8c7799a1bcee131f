package planner_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// railPost is the shop's post with lines of its drawing put in the place of others.
func railPost(t *testing.T, oldNew ...string) *partspec.Job {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "shop", "rail-post.hcl"))
	require.NoError(t, err)
	for i := 0; i < len(oldNew); i += 2 {
		require.Contains(t, string(text), oldNew[i])
	}
	file := filepath.Join(t.TempDir(), "rail-post.hcl")
	require.NoError(t, os.WriteFile(file, []byte(strings.NewReplacer(oldNew...).Replace(string(text))), 0o644))
	return load(t, file)
}

// A seat across the side is as deep as drawn, never deeper, whatever its pipe and whichever way round it lies.
func TestASeatAcrossTheSideIsAsDeepAsDrawn(t *testing.T) {
	for _, c := range []struct {
		radius, depth, angle string
		deep                 float64
	}{{"8", "5", "0", 5}, {"8", "8", "90", 8}, {"20", "3", "225", 3}, {"12", `"2 +0.2 -0"`, "0", 2.1}} {
		job := railPost(t, "radius    = 8", "radius    = "+c.radius, "depth     = 5", "depth     = "+c.depth+"\n    angle     = "+c.angle,
			"diameter = 3.4", "diameter = 3.4\n    angle    = "+c.angle)
		p := planned(t, job)
		op := made(t, p, "seat.rail/steps", 1)[0].Operation
		deepest := 0.0
		for _, s := range op.Steps.Steps {
			deepest = math.Max(deepest, s.DepthMM)
		}
		const graduation = 0.05
		assert.InDelta(t, c.deep, deepest, graduation, "%v", c)
		assert.LessOrEqual(t, deepest, c.deep+1e-9, "%v", c)
		assert.True(t, op.Steps.ProvenFewest, "%v", c)
	}
}

// The screw's hole goes through the round before the seat takes that away, and a plan that has it the other way round is refuted.
func TestAHoleThroughASeatAcrossTheSideComesFirst(t *testing.T) {
	job := railPost(t)
	p := answered(t, job)
	order := timeline(p.Parts[0])
	hole, err := order.find("cross_hole.screw/drill")
	require.NoError(t, err)
	seat, err := order.find("seat.rail/steps")
	require.NoError(t, err)
	require.Less(t, hole[0].at, seat[0].at)

	for i := range p.Parts[0].Setups {
		ops := p.Parts[0].Setups[i].Operations
		for k := 0; k+1 < len(ops); k++ {
			if ops[k].ID == "cross_hole.screw/drill" && ops[k+1].ID == "seat.rail/steps" {
				table := slices.DeleteFunc(slices.Clone(ops[k].Zeros), func(z plan.Zero) bool { return z.Dial == "quill" })
				ops[k+1].Zeros = append(table, ops[k+1].Zeros...) // set by what comes first
				ops[k], ops[k+1] = ops[k+1], ops[k]
			}
		}
	}
	renumbered(&p.Parts[0])
	_, failures := replay.Prove(job, p)
	clauses := map[string]bool{}
	for _, f := range failures {
		clauses[f.Clause] = true
	}
	assert.True(t, clauses["entry"], "%v", failures)
}

// What cannot be cut across a side is refused by name.
func TestSeatsAcrossTheSideThatAreRefused(t *testing.T) {
	for name, c := range map[string]struct {
		job  *partspec.Job
		want string
	}{
		"may not be filed": {railPost(t, "    finish_by = \"file\"\n", ""), `finish_by = "file"`},
		"no cutters": {withShop(railPost(t), func(w *partspec.Workshop) {
			var kept []partspec.Tool
			for _, tool := range w.Tools {
				if tool.Kind != partspec.BallNose && tool.Kind != partspec.EndMill {
					kept = append(kept, tool)
				}
			}
			w.Tools = kept
		}), "no ball nose and no end mill"},
	} {
		p := answered(t, c.job).Parts[0]
		require.NotEmpty(t, p.Refusals, name)
		assert.Contains(t, strings.Join(p.Refusals[0].Reasons, " "), c.want, name)
	}
}

// A long post whose seat is stepped while it is still on its bar goes back into the chuck to be sawn off: it stands out farther than may turn, and does not turn.
func TestAPostIsSawnOffStandingStill(t *testing.T) {
	job := railPost(t, "brass", "aluminium", "length   = 70", "length   = 80", "diameter = 20", "diameter = 16", "  spigot \"foot\" {\n    diameter = 10\n    length   = 12\n  }\n", "",
		"diameter = 16", "diameter = 12", "at       = 14", "at       = 59.6", "at        = 14", "at        = 59.6", "\"right\"", "\"left\"", "radius    = 8", "radius    = 5", "depth     = 5", "depth     = 2.7")
	p := answered(t, job)
	saw := made(t, p.Parts[0], "saw_off", 1)[0].setup
	require.False(t, saw.Tailstock)
	assert.Greater(t, saw.StickOutMM, 5*16.0)
	assert.Len(t, saw.Operations, 1)

	for i := range p.Parts[0].Setups { // turned as far out with no centre, it is refuted
		p.Parts[0].Setups[i].Tailstock = false
	}
	_, failures := replay.Prove(job, p)
	assert.True(t, slices.ContainsFunc(failures, func(f replay.Failure) bool {
		return f.Clause == "stick-out" && strings.Contains(f.String(), "B-28")
	}), "%v", failures)
}
