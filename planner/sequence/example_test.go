package sequence_test

import (
	"fmt"

	"catchplate/planner/sequence"
)

// Operation c can be done in either setup. Done in the second it shares a mounting with a, which must wait for b.
func ExampleSolve() {
	p := &sequence.Problem{
		Machines: []string{"machine"},
		Setups:   []sequence.Setup{{Name: "first setup", Cost: 30}, {Name: "second setup", Cost: 50}},
		Tools:    []sequence.Tool{{Name: "first tool", Cost: 8}, {Name: "second tool", Cost: 10}},
		Ops: []sequence.Op{
			{Name: "a", Alts: []sequence.Alt{{Setup: 1, Tool: 0, Own: 12, Mask: sequence.SetOf(1)}}},
			{Name: "b", Alts: []sequence.Alt{{Setup: 0, Tool: 1, Own: 40}}},
			{Name: "c", Alts: []sequence.Alt{{Setup: 0, Tool: 0, Own: 12}, {Setup: 1, Tool: 0, Own: 9}}},
		},
		Allowed: func(op, alt int, done sequence.Set) bool { return done.Has(1) },
	}
	r, err := sequence.Solve(p, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range r.Order {
		op := p.Ops[s.Op]
		fmt.Printf("%s in the %s\n", op.Name, p.Setups[op.Alts[s.Alt].Setup].Name)
	}
	fmt.Println(r.Cost, r.Proven)
	// Output:
	// b in the first setup
	// a in the second setup
	// c in the second setup
	// 159 true
}
