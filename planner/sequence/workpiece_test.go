package sequence

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// workpiece builds a problem of the kind that planning gives: chains of operations, each chain open to a few setups on one side or
// the other, most alternatives depending on what their setup rests on being there, or gone.
func workpiece(rng *rand.Rand, features, setups, links int) *Problem {
	p := &Problem{MachineChange: 50, Machines: []string{"machine 0", "machine 1", "machine 2"}}
	for i := range setups {
		p.Setups = append(p.Setups, Setup{fmt.Sprintf("setup %02d", i), min(2, rng.IntN(5)/2), 40 + rng.IntN(120)})
	}
	for i := range 14 {
		p.Tools = append(p.Tools, Tool{fmt.Sprintf("tool %02d", i), 5 + rng.IntN(25)})
	}
	var tails []int
	for f := range features {
		open := rng.Perm(setups)[:2+rng.IntN(4)]
		prev := -1
		for step := range 1 + rng.IntN(4) {
			op := Op{Name: fmt.Sprintf("f%02d-%d", f, step)}
			tool := rng.IntN(14)
			for _, h := range open {
				op.Alts = append(op.Alts, Alt{Setup: h, Tool: tool, Own: 10 + rng.IntN(30), Risk: rng.IntN(3) * 5})
			}
			p.Ops = append(p.Ops, op)
			if prev >= 0 {
				p.Prec = append(p.Prec, [2]int{prev, len(p.Ops) - 1})
			}
			prev = len(p.Ops) - 1
		}
		if len(tails) > 0 && rng.IntN(2) == 0 {
			p.Prec = append(p.Prec, [2]int{tails[rng.IntN(len(tails))], prev})
		}
		tails = append(tails, prev)
	}
	n := len(p.Ops)
	// A setup rests on something: it needs an operation done, or not done, or neither. An alternative may need more, or refuse
	// that two operations be both done.
	type cond struct{ needs, bars, never Set }
	rests := make([]cond, setups)
	for h := range rests {
		g := rng.IntN(n)
		switch rng.IntN(3) {
		case 0:
			rests[h].needs = SetOf(g)
		case 1:
			rests[h].bars = SetOf(g)
		}
	}
	conds := make([][]cond, n)
	for i := range p.Ops {
		for j, a := range p.Ops[i].Alts {
			c := rests[a.Setup]
			if c.needs.Has(i) {
				c.needs = 0
			}
			c.bars &^= SetOf(i)
			switch rng.IntN(6) {
			case 0:
				c.never = SetOf(rng.IntN(n), rng.IntN(n))
			case 1:
				c.needs |= SetOf(rng.IntN(n)) &^ SetOf(i)
			}
			p.Ops[i].Alts[j].Mask = c.needs | c.bars | c.never
			conds[i] = append(conds[i], c)
		}
	}
	p.Allowed = func(op, alt int, done Set) bool {
		c := conds[op][alt]
		return c.needs&^done == 0 && c.bars&done == 0 && (c.never == 0 || c.never&^done != 0)
	}
	for range links {
		a := rng.IntN(n)
		l := Link{A: a, B: (a + 1 + rng.IntN(n-1)) % n}
		l.Cross = func(x, y, _ int) bool { return (x+y)%3 == 0 }
		p.Links = append(p.Links, l)
	}
	return p
}

// Problems of the size that planning gives are solved exactly, within a budget that takes a fraction of a second.
func TestWorkpieces(t *testing.T) {
	const budget = 1_000_000
	proven := 0
	for seed := range uint64(30) {
		p := workpiece(rand.New(rand.NewPCG(seed, 77)), 7, 8, int(seed%3))
		res := solved(t, p, budget)
		if res.Proven {
			proven++
		}
	}
	assert.Equal(t, 30, proven)
}

func BenchmarkWorkpiece(b *testing.B) {
	for _, features := range []int{4, 6, 8} {
		p := workpiece(rand.New(rand.NewPCG(1, 77)), features, 8, 1)
		b.Run(fmt.Sprintf("%d operations", len(p.Ops)), func(b *testing.B) {
			for b.Loop() {
				if _, err := Solve(p, 0); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
