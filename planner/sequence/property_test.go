package sequence

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sizeable is a problem too large for brute force, with everything in it.
var sizeable = shape{ops: 16, setups: 5, tools: 6, machines: 2, alts: 3, arcs: 0.2, conditional: 0.3, refusal: 0.3, links: 1}

func eachSizeable(t *testing.T, check func(t *testing.T, rng *rand.Rand, p *Problem, res Result)) {
	for seed := range uint64(25) {
		t.Run(fmt.Sprint("seed ", seed), func(t *testing.T) {
			rng := rand.New(rand.NewPCG(seed, 99))
			p := randomProblem(rng, sizeable)
			check(t, rng, p, solved(t, p, 0))
		})
	}
}

func TestOneMoreArcIsNeverCheaper(t *testing.T) {
	eachSizeable(t, func(t *testing.T, rng *rand.Rand, p *Problem, res Result) {
		if res.Blocked != nil {
			return
		}
		a, b := rng.IntN(len(p.Ops)), rng.IntN(len(p.Ops))
		p.Prec = append(p.Prec, [2]int{a, b})
		if p.Validate() != nil { // a circle
			return
		}
		more := solved(t, p, 0)
		if more.Blocked == nil {
			assert.GreaterOrEqual(t, more.Cost, res.Cost)
		}
	})
}

func TestOneMoreAlternativeIsNeverDearer(t *testing.T) {
	eachSizeable(t, func(t *testing.T, rng *rand.Rand, p *Problem, res Result) {
		op := rng.IntN(len(p.Ops))
		p.Ops[op].Alts = append(p.Ops[op].Alts, randomAlt(rng, sizeable))
		more := solved(t, p, 0)
		if res.Blocked == nil {
			require.Nil(t, more.Blocked)
			assert.LessOrEqual(t, more.Cost, res.Cost)
		}
	})
}

func TestScaledCostsScaleTheAnswer(t *testing.T) {
	const factor = 7
	eachSizeable(t, func(t *testing.T, _ *rand.Rand, p *Problem, res Result) {
		p.MachineChange *= factor
		for i := range p.Setups {
			p.Setups[i].Cost *= factor
		}
		for i := range p.Tools {
			p.Tools[i].Cost *= factor
		}
		for i := range p.Ops {
			for j := range p.Ops[i].Alts {
				p.Ops[i].Alts[j].Own *= factor
				p.Ops[i].Alts[j].Risk *= factor
			}
		}
		scaled := solved(t, p, 0)
		assert.Equal(t, factor*res.Cost, scaled.Cost)
		assert.Equal(t, res.Order, scaled.Order)
	})
}

// The way the input is listed changes nothing: the same names come out in the same order.
func TestShuffledInputGivesTheSamePlan(t *testing.T) {
	eachSizeable(t, func(t *testing.T, rng *rand.Rand, p *Problem, res Result) {
		q, opAt := shuffled(rng, p)
		again := solved(t, q, 0)
		require.Equal(t, res.Blocked == nil, again.Blocked == nil)
		assert.Equal(t, res.Stats, again.Stats)
		var names, others []string
		for k := range res.Order {
			a, b := res.Order[k], again.Order[k]
			names = append(names, describe(p, a))
			others = append(others, describe(q, b))
		}
		assert.Equal(t, names, others)
		assert.NotEqual(t, opAt, slices.Sorted(slices.Values(opAt)), "nothing was shuffled")
	})
}

func describe(p *Problem, s Step) string {
	op, alt := p.Ops[s.Op], p.Ops[s.Op].Alts[s.Alt]
	return fmt.Sprintf("%s in %s with %s for %d", op.Name, p.Setups[alt.Setup].Name, p.Tools[alt.Tool].Name, alt.Own+alt.Risk)
}

// shuffled lists everything in another order. opAt says where each operation went.
func shuffled(rng *rand.Rand, p *Problem) (*Problem, []int) {
	q := *p
	opAt, setupAt, toolAt := rng.Perm(len(p.Ops)), rng.Perm(len(p.Setups)), rng.Perm(len(p.Tools))
	from := make([]int, len(p.Ops))
	altFrom := make([][]int, len(p.Ops))
	q.Ops, q.Setups, q.Tools = make([]Op, len(p.Ops)), make([]Setup, len(p.Setups)), make([]Tool, len(p.Tools))
	for i, s := range p.Setups {
		q.Setups[setupAt[i]] = s
	}
	for i, t := range p.Tools {
		q.Tools[toolAt[i]] = t
	}
	move := func(s Set, at []int) Set {
		var t Set
		for _, op := range s.Ops() {
			t = t.With(at[op])
		}
		return t
	}
	for i, op := range p.Ops {
		from[opAt[i]] = i
		altFrom[i] = rng.Perm(len(op.Alts))
		moved := Op{Name: op.Name}
		for _, j := range altFrom[i] {
			a := op.Alts[j]
			moved.Alts = append(moved.Alts, Alt{setupAt[a.Setup], toolAt[a.Tool], a.Own, a.Risk, move(a.Mask, opAt)})
		}
		q.Ops[opAt[i]] = moved
	}
	q.Prec = nil
	for _, i := range rng.Perm(len(p.Prec)) {
		q.Prec = append(q.Prec, [2]int{opAt[p.Prec[i][0]], opAt[p.Prec[i][1]]})
	}
	q.Allowed = func(op, alt int, done Set) bool {
		i := from[op]
		return p.Allowed(i, altFrom[i][alt], move(done, from))
	}
	setupFrom := make([]int, len(setupAt))
	for i, at := range setupAt {
		setupFrom[at] = i
	}
	q.Links = nil
	for _, l := range p.Links {
		moved := Link{A: opAt[l.B], B: opAt[l.A]}
		if l.Cross != nil {
			moved.Cross = func(earlier, later, op int) bool { return l.Cross(setupFrom[earlier], setupFrom[later], from[op]) }
		}
		q.Links = append(q.Links, moved)
	}
	return &q, opAt
}

// A small budget gives an order that holds, a bound that holds, and the same of both every time.
func TestBudget(t *testing.T) {
	gaps := 0
	for seed := range uint64(10) {
		p := randomProblem(rand.New(rand.NewPCG(seed, 5)), shape{ops: 30, setups: 8, tools: 9, machines: 2, alts: 3, arcs: 0.3})
		best := solved(t, p, 0)
		require.True(t, best.Proven)
		few := solved(t, p, 60)
		require.Nil(t, few.Blocked)
		assert.LessOrEqual(t, few.Bound, best.Cost)
		assert.GreaterOrEqual(t, few.Cost, best.Cost)
		assert.Equal(t, few, solved(t, p, 60))
		if !few.Proven {
			gaps++
		}
	}
	assert.Positive(t, gaps, "the budget was never spent")
}

// Past its budget too, the answer does not hang on how the input is listed.
func TestShuffledInputPastTheBudget(t *testing.T) {
	gaps := 0
	for seed := range uint64(20) {
		rng := rand.New(rand.NewPCG(seed, 13))
		p := randomProblem(rng, shape{ops: 24, setups: 7, tools: 9, machines: 2, alts: 3, arcs: 0.15, conditional: float64(seed%2) * 0.2, refusal: 0.2, links: int(seed % 3)})
		few := solved(t, p, 400)
		q, _ := shuffled(rng, p)
		again := solved(t, q, 400)
		assert.Equal(t, few.Stats, again.Stats)
		require.Len(t, again.Order, len(few.Order))
		for k := range few.Order {
			assert.Equal(t, describe(p, few.Order[k]), describe(q, again.Order[k]))
		}
		assert.Equal(t, [2]int{few.Cost, few.Bound}, [2]int{again.Cost, again.Bound})
		if !few.Proven {
			gaps++
		}
	}
	assert.Greater(t, gaps, 5, "the budget was hardly ever spent")
}

// A budget bounds the work whatever the shape of the problem: many alternatives, no precedence, all costs alike, a matrix.
func TestBudgetBoundsTheWork(t *testing.T) {
	const budget = 200_000
	for name, s := range map[string]shape{
		"many alternatives": {ops: 60, setups: 20, tools: 40, machines: 3, alts: 60, arcs: 0.03},
		"no precedence":     {ops: 64, setups: 10, tools: 20, machines: 3, alts: 2},
		"many setups":       {ops: 60, setups: 60, tools: 60, machines: 3, alts: 3, arcs: 0.02},
		"verdicts":          {ops: 60, setups: 12, tools: 20, machines: 3, alts: 3, arcs: 0.03, conditional: 0.5, refusal: 0.1, links: 1},
		"wide masks":        {ops: 60, setups: 12, tools: 20, machines: 3, alts: 3, arcs: 0.03, conditional: 0.5, refusal: 0.01, hangs: 30},
		"matrix":            {ops: 64, setups: 1, tools: 1, machines: 1, alts: 1, arcs: 0.02, matrix: true},
	} {
		t.Run(name, func(t *testing.T) {
			res := solved(t, randomProblem(rand.New(rand.NewPCG(3, 17)), s), budget)
			assert.Nil(t, res.Blocked)
			const beams = 3 // a beam is not stopped half-way, but its width is what the budget can afford
			assert.Less(t, res.Stats.Stored+res.Stats.Projected, beams*budget)
			assert.Less(t, res.Stats.Generated, beams*madePerNode*budget)
		})
	}
}

// The bound never exceeds what the rest of an order truly costs: the cheapest order through each state of an optimal order shows it.
func TestBoundHoldsAlongTheBestOrder(t *testing.T) {
	for seed := range uint64(60) {
		s := shape{ops: 14, setups: 4, tools: 6, machines: 2, alts: 3, arcs: 0.15, matrix: seed%3 == 0}
		p := randomProblem(rand.New(rand.NewPCG(seed, 11)), s)
		res := solved(t, p, 0)
		m := newModel(p, nil)
		bound := newEstimator(m, DefaultBudget)
		at := inverse(m.opOf)
		st, spent := state{class: -1}, int32(0)
		for _, step := range res.Order {
			op := at[step.Op]
			k := slices.IndexFunc(m.choices[op], func(c choice) bool { return c.alt == step.Alt })
			require.GreaterOrEqual(t, k, 0)
			c := m.choices[op][k]
			spent += m.stepInto(st.class, c.class) + c.excess
			st = state{st.done.With(op), c.class, 0}
			assert.LessOrEqual(t, m.base+spent+bound.rest(st.done, st.class, noCost), int32(res.Cost))
		}
		assert.Equal(t, int32(res.Cost), m.base+spent)
	}
}
