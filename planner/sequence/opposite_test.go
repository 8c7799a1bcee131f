package sequence

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// opposed returns the problem with the pair's opposite order demanded.
func opposed(p *Problem, pair Neighbour) *Problem {
	q := *p
	q.Prec = append(append([][2]int(nil), p.Prec...), [2]int{pair.After, pair.Before})
	return &q
}

func TestNeighboursAreExact(t *testing.T) {
	shapes := []shape{
		{ops: 8, setups: 3, tools: 4, machines: 2, alts: 2, arcs: 0.2},
		{ops: 8, setups: 3, tools: 3, machines: 2, alts: 3, arcs: 0.2, conditional: 0.4, refusal: 0.4, links: 1},
	}
	arcs, impossible, compared := 0, 0, 0
	for i, s := range shapes {
		for seed := range uint64(20) {
			p := randomProblem(rand.New(rand.NewPCG(seed, uint64(i))), s)
			res := solved(t, p, 0)
			if res.Blocked != nil {
				continue
			}
			pairs, err := Neighbours(p, res)
			require.NoError(t, err)
			require.Len(t, pairs, s.ops-1)
			for k, pair := range pairs {
				assert.Equal(t, [2]int{res.Order[k].Op, res.Order[k+1].Op}, [2]int{pair.Before, pair.After})
				if pair.Arc >= 0 {
					assert.Equal(t, [2]int{pair.Before, pair.After}, p.Prec[pair.Arc])
					arcs++
					continue
				}
				want, possible := plain(opposed(p, pair))
				assert.True(t, pair.Exact)
				assert.Equal(t, possible, !pair.Impossible)
				if possible {
					assert.Equal(t, want, pair.Cost)
					compared++
				} else {
					impossible++
				}
			}
		}
	}
	assert.Positive(t, arcs)
	assert.Positive(t, impossible)
	assert.Greater(t, compared, 100)
}

// The bound that serves above the limit of the tables must hold below it too, where the truth is known.
func TestBoundedNeighbours(t *testing.T) {
	exact := 0
	for seed := range uint64(40) {
		p := randomProblem(rand.New(rand.NewPCG(seed, 7)), shape{ops: 8, setups: 3, tools: 4, machines: 2, alts: 3, arcs: 0.2, conditional: 0.3, refusal: 0.3, links: int(seed % 3)})
		res := solved(t, p, 0)
		if res.Blocked != nil {
			continue
		}
		want, err := Neighbours(p, res)
		require.NoError(t, err)
		got := make([]Neighbour, len(want))
		for k, pair := range want {
			got[k] = Neighbour{Before: pair.Before, After: pair.After, Arc: pair.Arc}
		}
		m := newModel(p, nil)
		m.boundOpposites(got, inverse(m.opOf), res.Bound)
		for k := range got {
			if got[k].Exact {
				exact++
				assert.Equal(t, want[k], got[k])
			} else if !want[k].Impossible {
				assert.LessOrEqual(t, got[k].Cost, want[k].Cost)
			}
		}
	}
	assert.Positive(t, exact)
}

func TestNeighboursOfABadOrder(t *testing.T) {
	p := randomProblem(rand.New(rand.NewPCG(1, 1)), shape{ops: 4, setups: 2, tools: 2, machines: 1, alts: 1})
	_, err := Neighbours(p, Result{Order: []Step{{0, 0}}})
	assert.Error(t, err)
}
