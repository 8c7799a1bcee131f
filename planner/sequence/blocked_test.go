package sequence

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// three returns a problem of three operations in two setups on one machine, each possible in either setup.
func three() *Problem {
	p := &Problem{
		Machines: []string{"machine"},
		Setups:   []Setup{{"near", 0, 10}, {"far", 0, 10}},
		Tools:    []Tool{{"tool", 1}},
	}
	for _, name := range []string{"a", "b", "c"} {
		p.Ops = append(p.Ops, Op{Name: name, Alts: []Alt{{Setup: 0}, {Setup: 1}}})
	}
	return p
}

func TestBlockedByVerdict(t *testing.T) {
	p := three()
	p.Prec = [][2]int{{1, 2}}
	for j := range p.Ops[1].Alts {
		p.Ops[1].Alts[j].Mask = SetOf(0)
	}
	p.Allowed = func(op, alt int, done Set) bool { return false }
	res := solved(t, p, 0)
	require.NotNil(t, res.Blocked)
	assert.True(t, res.Proven)
	assert.Equal(t, []int{1, 2}, res.Blocked.Never)
	assert.Equal(t, []Front{{Done: SetOf(0), Waiting: []Waiting{
		{Op: 1, Refused: []int{0, 1}},
		{Op: 2, Missing: SetOf(1)},
	}}}, res.Blocked.Fronts)
}

// a spoils b and b spoils a: each can be done, never both.
func TestBlockedByEachOther(t *testing.T) {
	p := three()
	for op, other := range []int{1, 0} {
		for j := range p.Ops[op].Alts {
			p.Ops[op].Alts[j].Mask = SetOf(other)
		}
	}
	p.Allowed = func(op, alt int, done Set) bool { return done == 0 }
	res := solved(t, p, 0)
	require.NotNil(t, res.Blocked)
	assert.True(t, res.Proven)
	assert.Empty(t, res.Blocked.Never)
	assert.Equal(t, []Front{
		{Done: SetOf(0, 2), Waiting: []Waiting{{Op: 1, Refused: []int{0, 1}}}},
		{Done: SetOf(1, 2), Waiting: []Waiting{{Op: 0, Refused: []int{0, 1}}}},
	}, res.Blocked.Fronts)
}

// a and c must share a mounting, but b lies between them and needs another setup.
func TestBlockedByLink(t *testing.T) {
	p := three()
	p.Prec = [][2]int{{0, 1}, {1, 2}}
	p.Ops[0].Alts = []Alt{{Setup: 0}}
	p.Ops[1].Alts = []Alt{{Setup: 1}}
	p.Ops[2].Alts = []Alt{{Setup: 0}, {Setup: 1}}
	p.Links = []Link{{A: 0, B: 2}}
	res := solved(t, p, 0)
	require.NotNil(t, res.Blocked)
	assert.True(t, res.Proven)
	assert.Equal(t, []int{1, 2}, res.Blocked.Never)
	assert.Equal(t, []Front{{Done: SetOf(0), Waiting: []Waiting{
		{Op: 1, Unlinked: []int{0}},
		{Op: 2, Missing: SetOf(1), Unlinked: []int{1}},
	}}}, res.Blocked.Fronts)

	p.Links[0].Cross = func(earlier, later, op int) bool { return earlier == 0 && later == 1 && op == 0 }
	res = solved(t, p, 0)
	require.Nil(t, res.Blocked)
	assert.Equal(t, []Step{{0, 0}, {1, 0}, {2, 1}}, res.Order)
}

// A setup that is left and taken again is another mounting.
func TestReturnIsANewMounting(t *testing.T) {
	p := three()
	p.Prec = [][2]int{{0, 1}, {1, 2}}
	p.Ops[0].Alts = []Alt{{Setup: 0}}
	p.Ops[1].Alts = []Alt{{Setup: 1}}
	p.Ops[2].Alts = []Alt{{Setup: 0}}
	res := solved(t, p, 0)
	assert.Equal(t, 10+1+10+10, res.Cost, "three mountings, one tool")
	p.Links = []Link{{A: 2, B: 0}}
	assert.NotNil(t, solved(t, p, 0).Blocked)
}
