package sequence

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// brute tries every order with every choice of alternatives; links are looked at when an order is whole. It reads the
// problem as it is written, with the parts of Cost. It returns false if no order exists.
func brute(p *Problem) (int, bool) {
	best, found := 0, false
	order := make([]Step, 0, len(p.Ops))
	var try func(done Set, cost int)
	try = func(done Set, cost int) {
		if found && cost >= best {
			return
		}
		if len(order) == len(p.Ops) {
			if _, err := Cost(p, order); err == nil {
				best, found = cost, true
			}
			return
		}
		for op := range p.Ops {
			for alt, a := range p.Ops[op].Alts {
				st := Step{op, alt}
				if checkStep(p, st, done) != nil {
					continue
				}
				more := firstCost(p, a)
				if len(order) > 0 {
					more = stepCost(p, order[len(order)-1], st)
				}
				order = append(order, st)
				try(done.With(op), cost+a.Own+a.Risk+more)
				order = order[:len(order)-1]
			}
		}
	}
	try(0, 0)
	return best, found
}

// solved runs the search and checks everything that must hold of any result.
func solved(t *testing.T, p *Problem, budget int) Result {
	t.Helper()
	res, err := Solve(p, budget)
	require.NoError(t, err)
	if res.Blocked != nil {
		assert.Empty(t, res.Order)
		return res
	}
	cost, err := Cost(p, res.Order)
	require.NoError(t, err)
	assert.Equal(t, cost, res.Cost, "independent cost")
	assert.LessOrEqual(t, res.Bound, res.Cost)
	assert.Equal(t, res.Proven, res.Bound == res.Cost)
	return res
}

func TestBruteForce(t *testing.T) {
	shapes := []shape{
		{ops: 8, setups: 3, tools: 4, machines: 2, alts: 2, arcs: 0.3},
		{ops: 7, setups: 4, tools: 3, machines: 2, alts: 3, arcs: 0.2},
		{ops: 6, setups: 3, tools: 3, machines: 3, alts: 2, arcs: 0.1},
		{ops: 7, setups: 3, tools: 3, machines: 2, alts: 2, arcs: 0.2, conditional: 0.5, refusal: 0.5},
		{ops: 7, setups: 3, tools: 3, machines: 2, alts: 2, arcs: 0.2, links: 2},
		{ops: 6, setups: 3, tools: 2, machines: 2, alts: 3, arcs: 0.2, conditional: 0.5, refusal: 0.6, links: 3},
		{ops: 7, setups: 1, tools: 1, machines: 1, alts: 1, arcs: 0.2, matrix: true},
		{ops: 1, setups: 1, tools: 1, machines: 1, alts: 3},
	}
	const each = 100
	found := 0
	for i, s := range shapes {
		for seed := range uint64(each) {
			t.Run(fmt.Sprintf("shape %d seed %d", i, seed), func(t *testing.T) {
				p := randomProblem(rand.New(rand.NewPCG(uint64(i), seed)), s)
				want, possible := brute(p)
				res := solved(t, p, 0)
				require.Equal(t, possible, res.Blocked == nil)
				if possible {
					found++
					assert.True(t, res.Proven)
					assert.Equal(t, want, res.Cost)
				}
			})
		}
	}
	assert.Greater(t, found, 550, "too few of the problems can be solved to test anything")
}
