package sequence

import (
	"fmt"
	"math/rand/v2"
)

// shape says what a random problem may hold.
type shape struct {
	ops, setups, tools, machines, alts int
	arcs                               float64 // share of the pairs tied by precedence
	conditional                        float64 // share of the alternatives with a mask
	refusal                            float64 // share of the masked states that are refused
	links                              int
	hangs                              int // most operations of a mask; 3 if 0
	matrix                             bool
}

// randomProblem builds a problem whose operations are listed in no particular order. Allowed is a pure function of its arguments.
func randomProblem(rng *rand.Rand, s shape) *Problem {
	p := &Problem{FirstFree: rng.IntN(4) == 0, MachineChange: rng.IntN(60)}
	for i := range s.machines {
		p.Machines = append(p.Machines, fmt.Sprintf("machine %d", i))
	}
	for i := range s.setups {
		p.Setups = append(p.Setups, Setup{fmt.Sprintf("setup %d", i), rng.IntN(s.machines), rng.IntN(80)})
	}
	for i := range s.tools {
		p.Tools = append(p.Tools, Tool{fmt.Sprintf("tool %d", i), rng.IntN(40)})
	}
	for i := range s.ops {
		op := Op{Name: fmt.Sprintf("op %02d", i)}
		alts := 1 + rng.IntN(s.alts)
		if s.matrix {
			alts = 1
		}
		for range alts {
			op.Alts = append(op.Alts, randomAlt(rng, s))
		}
		p.Ops = append(p.Ops, op)
	}
	place := rng.Perm(s.ops)
	for i := range s.ops {
		for j := range i {
			if rng.Float64() < s.arcs {
				p.Prec = append(p.Prec, [2]int{place[j], place[i]})
			}
		}
	}
	if s.conditional > 0 {
		p.Allowed = randomVerdict(rng.Uint64(), s.refusal)
	}
	for range s.links {
		p.Links = append(p.Links, randomLink(rng, s))
	}
	if s.matrix {
		p.Between = randomMatrix(rng, s.ops)
	}
	return p
}

func randomAlt(rng *rand.Rand, s shape) Alt {
	if s.matrix {
		return Alt{Own: rng.IntN(10)}
	}
	a := Alt{Setup: rng.IntN(s.setups), Tool: rng.IntN(s.tools), Own: 5 * rng.IntN(8), Risk: rng.IntN(2) * rng.IntN(20)}
	if rng.Float64() < s.conditional {
		for range 1 + rng.IntN(max(3, s.hangs)) {
			a.Mask = a.Mask.With(rng.IntN(s.ops))
		}
	}
	return a
}

// randomVerdict refuses about the given share of all (operation, alternative, state).
func randomVerdict(seed uint64, refusal float64) func(op, alt int, done Set) bool {
	return func(op, alt int, done Set) bool {
		h := seed ^ uint64(done)*0x9e3779b97f4a7c15 ^ uint64(op*1009+alt)*0xbf58476d1ce4e5b9
		h ^= h >> 31
		h *= 0x94d049bb133111eb
		h ^= h >> 29
		return float64(h%1000) >= 1000*refusal
	}
}

func randomLink(rng *rand.Rand, s shape) Link {
	l := Link{A: rng.IntN(s.ops)}
	l.B = (l.A + 1 + rng.IntN(s.ops-1)) % s.ops
	if seed := rng.Uint64(); rng.IntN(2) == 0 {
		l.Cross = func(earlier, later, op int) bool {
			return (seed>>(uint(earlier*7+later*3+op)%61))&1 == 0
		}
	}
	return l
}

func randomMatrix(rng *rand.Rand, n int) [][]int {
	rows := make([][]int, n)
	for i := range rows {
		for range n {
			rows[i] = append(rows[i], rng.IntN(100))
		}
	}
	return rows
}
