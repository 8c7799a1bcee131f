package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/sequence"
)

// explainedJobs are the jobs whose orders are explained here.
var explainedJobs = [][]string{
	{"../examples/tide-gauge"},
	{"testdata/worked/flanged-bush.hcl", "testdata/worked/workshop.hcl"},
	{"testdata/worked/pulley.hcl", "testdata/worked/workshop.hcl"},
	{"testdata/worked/vent-tube.hcl", "testdata/worked/workshop.hcl"},
}

// eachMade calls a check for every part of the jobs.
func eachMade(t *testing.T, check func(t *testing.T, job *partspec.Job, part *partspec.Part)) {
	for _, paths := range explainedJobs {
		job, _, found := partspec.Load(paths)
		require.False(t, found.HasErrors(), "%v", found)
		for _, part := range job.Parts {
			if !part.Bought {
				t.Run(part.Name, func(t *testing.T) { check(t, job, part) })
			}
		}
	}
}

// orderOf is the ordering of a part that must have a plan.
func orderOf(t *testing.T, job *partspec.Job, part *partspec.Part) *ordering {
	best, refused := bestAttempt(job, part, Options{})
	require.NotNil(t, best, "%v", refused)
	return best.order
}

// The order explained is the order planned, and each pair says what a search of its own, without tables and without the planner's, finds.
func TestExplainedPairsAgreeWithASearch(t *testing.T) {
	count := map[plan.Opposite]int{}
	eachMade(t, func(t *testing.T, job *partspec.Job, part *partspec.Part) {
		order, refused, err := ExplainOrder(job, part, Options{})
		require.NoError(t, err)
		require.Empty(t, refused)
		planned := planPart(job, part, Options{}).Order
		require.Len(t, order.Pairs, len(planned.Pairs))
		assert.Equal(t, planned.CostMinutes, order.CostMinutes)
		o := orderOf(t, job, part)
		for i, pair := range order.Pairs {
			count[pair.Opposite]++
			a, b := o.result.Order[i].Op, o.result.Order[i+1].Op
			assert.Equal(t, planned.Pairs[i].Before, pair.Before)
			assert.Equal(t, planned.Pairs[i].After, pair.After)
			assert.NotEmpty(t, pair.Text)
			if planned.Pairs[i].Rule != "" {
				assert.Equal(t, planned.Pairs[i].Rule, pair.Rule)
				assert.Equal(t, planned.Pairs[i].Text, pair.Text)
			}
			p := o.problem()
			p.Prec = append(p.Prec, [2]int{b, a})
			other, err := sequence.Solve(p, 0)
			switch pair.Opposite {
			case plan.Forbidden:
				assert.NotEmpty(t, pair.Rule)
				assert.ErrorContains(t, err, "circle")
			case plan.Impossible:
				require.NoError(t, err)
				assert.NotNil(t, other.Blocked, "%v", pair)
				assert.True(t, other.Proven)
			case plan.Exact:
				require.NoError(t, err)
				require.True(t, other.Proven)
				assert.Equal(t, minutes(other.Cost-o.result.Cost), pair.ExtraMinutes, "%v", pair)
			default:
				assert.Fail(t, "a pair that is not explained", "%v", pair)
			}
		}
	})
	for _, known := range []plan.Opposite{plan.Forbidden, plan.Impossible, plan.Exact} {
		assert.Positive(t, count[known], known)
	}
}

// The work about an offset axis is explained after that about the main one, as it is planned.
func TestEccentricOrderIsExplained(t *testing.T) {
	job, _, found := partspec.Load([]string{"testdata/rules/eccentric.hcl"})
	require.False(t, found.HasErrors(), "%v", found)
	part := job.Parts[0]
	planned := planPart(job, part, Options{}).Order
	order, refused, err := ExplainOrder(job, part, Options{})
	require.NoError(t, err)
	require.Empty(t, refused)
	require.Len(t, order.Pairs, len(planned.Pairs))
	joints := 0
	for i, pair := range order.Pairs {
		assert.Equal(t, planned.Pairs[i].Before, pair.Before)
		assert.Equal(t, planned.Pairs[i].After, pair.After)
		assert.NotEmpty(t, pair.Opposite)
		if pair.Rule == "A-06e" {
			joints++
			assert.Equal(t, plan.Forbidden, pair.Opposite)
		}
	}
	assert.Equal(t, 1, joints)
	assert.Equal(t, planned.CostMinutes, order.CostMinutes)
	assert.Equal(t, planned.Proven, order.Proven)
}

// A search that is given up before it finds an order does not say that there is none.
func TestGivenUpIsNotImpossible(t *testing.T) {
	job, _, found := partspec.Load(explainedJobs[1])
	require.False(t, found.HasErrors())
	o := orderOf(t, job, job.Parts[0])
	o.result.Blocked = &sequence.Blocked{}
	o.result.Proven = false
	assert.Contains(t, o.blocked()[0].Reasons[0], "there may yet be one")
	o.result.Proven = true
	assert.NotContains(t, o.blocked()[0].Reasons[0], "there may yet be one")
}

// What an order is said to be spent on adds up to its cost.
func TestSpendingAddsUp(t *testing.T) {
	eachMade(t, func(t *testing.T, job *partspec.Job, part *partspec.Part) {
		o := orderOf(t, job, part)
		s := spend(o.problem(), o.result.Order)
		assert.Equal(t, o.result.Cost, s[0]+s[1]+s[2])
	})
}

// A tool that moves to another machine is mounted anew, as the sequencer counts it.
func TestSpendingCountsAToolThatMoves(t *testing.T) {
	p := &sequence.Problem{
		Machines: []string{"mill", "drilling machine"}, MachineChange: machineChange,
		Setups: []sequence.Setup{{Name: "table", Machine: 0, Cost: 50}, {Name: "vice", Machine: 1, Cost: 30}},
		Tools:  []sequence.Tool{{Name: "5 mm drill", Cost: toolChange}},
		Ops:    []sequence.Op{{Name: "a", Alts: []sequence.Alt{{Setup: 0, Own: 7}}}, {Name: "b", Alts: []sequence.Alt{{Setup: 1, Own: 9, Risk: 1}}}},
	}
	order := []sequence.Step{{Op: 0}, {Op: 1}}
	s := spend(p, order)
	assert.Equal(t, spent{50 + machineChange + 30, 2 * toolChange, 17}, s)
	cost, err := sequence.Cost(p, order)
	require.NoError(t, err)
	assert.Equal(t, cost, s[0]+s[1]+s[2])
}

// A rule that is left out fixes nothing.
func TestLeftOutRuleExplainsNothing(t *testing.T) {
	cites := func(job *partspec.Job, part *partspec.Part, opt Options) bool {
		order, _, err := ExplainOrder(job, part, opt)
		require.NoError(t, err)
		for _, pair := range order.Pairs {
			if pair.Rule == "A-15" {
				return true
			}
		}
		return false
	}
	job, _, found := partspec.Load([]string{"../examples/tide-gauge"})
	require.False(t, found.HasErrors())
	without := rules.All().Without("A-15")
	assert.True(t, cites(job, job.Part("float_pulley"), Options{}))
	assert.False(t, cites(job, job.Part("float_pulley"), Options{Rules: &without}))
}

// What was forbidden for want of a common grip may serve another order.
func TestForbiddenChoicesComeBack(t *testing.T) {
	job, _, found := partspec.Load(explainedJobs[2])
	require.False(t, found.HasErrors())
	o := orderOf(t, job, job.Parts[0])
	all, forbidden := o.count(), 0
	for i, s := range o.result.Order {
		for o.result.Order[i].Alt > 0 {
			o.forbid(sequence.Step{Op: s.Op})
			o.result.Order[i].Alt--
			forbidden++
		}
	}
	require.Positive(t, forbidden)
	whole, steps := o.unforbidden()
	assert.Equal(t, all, whole.count())
	assert.Equal(t, all-forbidden, o.count())
	cost, err := sequence.Cost(whole.problem(), steps)
	require.NoError(t, err)
	assert.Equal(t, o.result.Cost, cost)
}

// Where the tables are too large, a search finds what they would have told.
func TestSearchTellsWhatTablesTell(t *testing.T) {
	eachMade(t, func(t *testing.T, job *partspec.Job, part *partspec.Part) {
		o := orderOf(t, job, part)
		steps := o.result.Order
		neighbours, err := sequence.Neighbours(o.problem(), o.result)
		require.NoError(t, err)
		for _, n := range neighbours {
			if n.Arc >= 0 {
				continue
			}
			require.True(t, n.Exact)
			known, cost, text := o.opposite(steps, n)
			n.Exact, n.Impossible, n.Cost = false, false, o.result.Bound
			again, sameCost, sameText := o.opposite(steps, n)
			assert.Equal(t, known, again)
			assert.Equal(t, cost, sameCost)
			assert.Equal(t, text, sameText)
		}
	})
}

func TestUnprovenOrderPromisesLittle(t *testing.T) {
	job, _, found := partspec.Load(explainedJobs[1])
	require.False(t, found.HasErrors())
	o := orderOf(t, job, job.Parts[0])
	o.result.Proven = false
	known, cost, text := o.opposite(o.result.Order, sequence.Neighbour{Before: 0, After: 1, Arc: -1, Cost: 42})
	assert.Equal(t, plan.AtLeast, known)
	assert.Equal(t, 42, cost)
	assert.Contains(t, text, "not known")
}

func TestDifference(t *testing.T) {
	assert.Equal(t, "no rule and no cost", difference(spent{1, 2, 3}, spent{1, 2, 3}))
	assert.Equal(t, "cost: the other way round, settings 6 min more, cutting 0.5 min less", difference(spent{0, 8, 15}, spent{60, 8, 10}))
}
