package planner

import (
	"math/rand/v2"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/rules"
	"catchplate/planner/sequence"
	"catchplate/planner/shape"
)

// The search believes that a verdict depends only on the operations of its mask: at random moments that the order of work allows, the judge
// says the same of all that is done and of what the mask keeps of it.
func TestVerdictsDependOnTheirMasksOnly(t *testing.T) {
	job, _, found := partspec.Load([]string{filepath.Join("..", "examples", "tide-gauge")})
	require.False(t, found.HasErrors(), "%v", found)
	for _, part := range job.Parts {
		t.Run(part.Name, func(t *testing.T) {
			asked, open := 0, 0
			tried := map[shape.Placement]bool{}
			list, refused := tries(job, part, rules.All(), nil, false)
			require.Empty(t, refused)
			for _, a := range list {
				if tried[a.ctx.Place] {
					continue
				}
				tried[a.ctx.Place] = true
				a.shop = holding.New(a.ctx)
				o := orderWork(a.ctx, a.shop, usualNodes)
				if len(o.alts) == 0 {
					continue
				}
				p, rng := o.problem(), rand.New(rand.NewPCG(7, 11))
				for range 60 {
					q, n := sameVerdicts(t, o, p, moment(rng, p))
					asked, open = asked+q, open+n
				}
			}
			assert.Greater(t, asked, 40*len(list[0].shop.Tasks), "hardly anything was asked")
			assert.Positive(t, open, "nothing is ever allowed: the test proves nothing")
		})
	}
}

// moment draws a set of operations that is closed under what must come before.
func moment(rng *rand.Rand, p *sequence.Problem) sequence.Set {
	var done sequence.Set
	for range rng.IntN(len(p.Ops) + 1) {
		if op := rng.IntN(len(p.Ops)); mayCome(p, op, done) {
			done = done.With(op)
		}
	}
	return done
}

func mayCome(p *sequence.Problem, op int, done sequence.Set) bool {
	for _, arc := range p.Prec {
		if arc[1] == op && !done.Has(arc[0]) {
			return false
		}
	}
	return true
}

// sameVerdicts asks about every alternative that is next, and counts the questions and those allowed.
func sameVerdicts(t *testing.T, o *ordering, p *sequence.Problem, done sequence.Set) (asked, open int) {
	t.Helper()
	for op := range p.Ops {
		if done.Has(op) || !mayCome(p, op, done) {
			continue
		}
		for alt, a := range p.Ops[op].Alts {
			c := o.alts[op][alt]
			whole := o.waits(op, c, done.Has) < 0 && len(o.objections(op, c, done.Has)) == 0
			kept := done & a.Mask
			masked := o.waits(op, c, kept.Has) < 0 && len(o.objections(op, c, kept.Has)) == 0
			asked++
			if whole {
				open++
			}
			assert.Equal(t, whole, masked, "%s in %s: done %v", p.Ops[op].Name, o.mounts[c.mount].ID, done)
		}
	}
	return asked, open
}
