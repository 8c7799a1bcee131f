package sequence

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plain solves a problem by filling the table of all its states, layer by layer: no bound, no absorption, no model. It reads
// the problem as it is written. A state is what is done, the last step's alternative, and for every linked operation done the setup of
// its mounting, marked if that mounting is still open. It returns false if there is no order.
func plain(p *Problem) (int, bool) {
	type state struct {
		done   Set
		last   Step
		linked string
	}
	linked := map[int]bool{}
	for _, l := range p.Links {
		linked[l.A], linked[l.B] = true, true
	}
	start := make([]mounting, len(p.Ops))
	held := map[string][]mounting{mountKey(start): start}
	layer := map[state]int{{last: Step{-1, -1}, linked: mountKey(start)}: 0}
	for range p.Ops {
		next := map[state]int{}
		for s, cost := range layer {
			for op := range p.Ops {
				for alt, a := range p.Ops[op].Alts {
					st := Step{op, alt}
					if checkStep(p, st, s.done) != nil {
						continue
					}
					more, left := firstCost(p, a), false
					if s.done != 0 {
						more = stepCost(p, s.last, st)
						left = p.Ops[s.last.Op].Alts[s.last.Alt].Setup != a.Setup
					}
					mounts := mountOne(held[s.linked], op, a.Setup, left, linked[op])
					if !linksHold(p, mounts, op) {
						continue
					}
					key := mountKey(mounts)
					held[key] = mounts
					t := state{s.done.With(op), st, key}
					if p.Between == nil {
						t.last = representative(p, st)
					}
					if old, seen := next[t]; !seen || cost+more+a.Own+a.Risk < old {
						next[t] = cost + more + a.Own + a.Risk
					}
				}
			}
		}
		layer = next
	}
	best, found := 0, false
	for _, cost := range layer {
		if !found || cost < best {
			best, found = cost, true
		}
	}
	return best, found
}

// mounting is where a linked operation was done: 0 is not done, and the setup is numbered from 1.
type mounting struct {
	setup int
	open  bool
}

func mountKey(mounts []mounting) string {
	key := make([]byte, len(mounts))
	for i, m := range mounts {
		key[i] = byte(2 * m.setup)
		if m.open {
			key[i]++
		}
	}
	return string(key)
}

func mountOne(before []mounting, op, setup int, left, linked bool) []mounting {
	mounts := append([]mounting(nil), before...)
	if left {
		for i := range mounts {
			mounts[i].open = false
		}
	}
	if linked {
		mounts[op] = mounting{setup + 1, true}
	}
	return mounts
}

func linksHold(p *Problem, mounts []mounting, op int) bool {
	for _, l := range p.Links {
		earlier := l.A + l.B - op
		if op != l.A && op != l.B || mounts[earlier].setup == 0 || mounts[earlier].open {
			continue
		}
		if l.Cross == nil || !l.Cross(mounts[earlier].setup-1, mounts[op].setup-1, earlier) {
			return false
		}
	}
	return true
}

// representative returns the first alternative of all with the setup and tool of the given one: they cost the same to leave.
func representative(p *Problem, st Step) Step {
	a := p.Ops[st.Op].Alts[st.Alt]
	for op := range p.Ops {
		for alt, b := range p.Ops[op].Alts {
			if a.Setup == b.Setup && a.Tool == b.Tool {
				return Step{op, alt}
			}
		}
	}
	return st
}

func TestPlainTable(t *testing.T) {
	shapes := []shape{
		{ops: 11, setups: 4, tools: 5, machines: 2, alts: 3, arcs: 0.15, conditional: 0.4, refusal: 0.3},
		{ops: 10, setups: 4, tools: 4, machines: 2, alts: 3, arcs: 0.15, conditional: 0.5, refusal: 0.3, links: 2},
		{ops: 9, setups: 3, tools: 3, machines: 2, alts: 3, arcs: 0.05, conditional: 0.6, refusal: 0.4, links: 3},
		{ops: 9, setups: 5, tools: 3, machines: 3, alts: 4, arcs: 0.1, conditional: 0.8, refusal: 0.6},
		{ops: 10, setups: 3, tools: 4, machines: 2, alts: 3, arcs: 0.1, links: 3},
		{ops: 11, setups: 2, tools: 6, machines: 1, alts: 2, arcs: 0.2, conditional: 0.9, refusal: 0.1, links: 1},
		{ops: 10, setups: 4, tools: 4, machines: 2, alts: 3, arcs: 0.1, conditional: 0.7, refusal: 0.6, links: 1, hangs: 14},
		{ops: 10, setups: 1, tools: 1, machines: 1, alts: 1, arcs: 0.1, matrix: true},
	}
	const each = 130
	found, refused := 0, 0
	for i, s := range shapes {
		for seed := range uint64(each) {
			p := randomProblem(rand.New(rand.NewPCG(uint64(i), 1000+seed)), s)
			want, possible := plain(p)
			res := solved(t, p, 0)
			require.Equal(t, possible, res.Blocked == nil, "shape %d seed %d", i, seed)
			require.True(t, res.Proven)
			if possible {
				found++
				assert.Equal(t, want, res.Cost, "shape %d seed %d", i, seed)
			} else {
				refused++
			}
		}
	}
	assert.Greater(t, found, 500, "too few of the problems can be solved to test anything")
	assert.Greater(t, refused, 20, "too few of the problems have no order to test anything")
}
