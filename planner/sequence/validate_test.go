package sequence

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestValidate(t *testing.T) {
	require.NoError(t, three().Validate())
	for want, spoil := range map[string]func(p *Problem){
		"between 1 and 64":     func(p *Problem) { p.Ops = nil },
		"65 operations":        func(p *Problem) { p.Ops = make([]Op, 65) },
		"give it at least one": func(p *Problem) { p.Ops[1].Alts = nil },
		"at most 256":          func(p *Problem) { p.Ops[1].Alts = make([]Alt, 257) },
		"at most 4096 are taken": func(p *Problem) {
			p.Setups, p.Tools, p.Ops = make([]Setup, 64), make([]Tool, 256), make([]Op, 64)
			for i := range p.Ops {
				for j := range p.Tools {
					p.Ops[i].Alts = append(p.Ops[i].Alts, Alt{Setup: i, Tool: j})
				}
			}
		},
		"machine change is -1":           func(p *Problem) { p.MachineChange = -1 },
		"cost of setup 1 (far)":          func(p *Problem) { p.Setups[1].Cost = MaxCost + 1 },
		"machine of setup 0 (near)":      func(p *Problem) { p.Setups[0].Machine = 1 },
		"cost of tool 0":                 func(p *Problem) { p.Tools[0].Cost = -3 },
		"setup of operation 2 (c)":       func(p *Problem) { p.Ops[2].Alts[0].Setup = 2 },
		"tool of operation 2 (c)":        func(p *Problem) { p.Ops[2].Alts[0].Tool = -1 },
		"own cost of operation 0 (a)":    func(p *Problem) { p.Ops[0].Alts[0].Own = -1 },
		"risk of operation 0 (a)":        func(p *Problem) { p.Ops[0].Alts[1].Risk = -1 },
		"operations that do not exist":   func(p *Problem) { p.Ops[0].Alts[1].Mask = SetOf(3) },
		"second operation of arc 0":      func(p *Problem) { p.Prec = [][2]int{{0, 3}} },
		"goes in a circle":               func(p *Problem) { p.Prec = [][2]int{{0, 1}, {1, 2}, {2, 0}} },
		"first operation of link 0":      func(p *Problem) { p.Links = []Link{{A: -1}} },
		"ties operation 1 to itself":     func(p *Problem) { p.Links = []Link{{A: 1, B: 1}} },
		"the matrix of costs has 1 rows": func(p *Problem) { p.Between = [][]int{{0}} },
		"links need setups":              func(p *Problem) { p.Between = [][]int{}; p.Links = []Link{{A: 0, B: 1}} },
	} {
		p := three()
		spoil(p)
		_, err := Solve(p, 0)
		assert.ErrorContains(t, err, want)
	}
}

// The prices of an assignment prove it: they never exceed the costs, and their sum is the cost of the cheapest assignment.
func TestAssign(t *testing.T) {
	cost := [][]int64{{4, 1, 3}, {2, 0, 5}, {3, 2, 2}}
	rows, columns := assign(cost)
	sum := int64(0)
	for i := range cost {
		sum += rows[i] + columns[i]
		for j := range cost {
			assert.LessOrEqual(t, rows[i]+columns[j], cost[i][j])
		}
	}
	assert.Equal(t, int64(5), sum, "1 + 2 + 2")
}
