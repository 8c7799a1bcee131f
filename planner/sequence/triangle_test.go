package sequence

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What model.triangle says of costs without a matrix, tried on every three classes of random problems.
func TestDetoursAreNeverCheaper(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for range 50 {
		p := &Problem{MachineChange: r.Intn(30)}
		for m := range 1 + r.Intn(3) {
			p.Machines = append(p.Machines, string(rune('a'+m)))
		}
		for s := range 1 + r.Intn(5) {
			p.Setups = append(p.Setups, Setup{Name: string(rune('a' + s)), Machine: r.Intn(len(p.Machines)), Cost: r.Intn(40)})
		}
		for k := range 1 + r.Intn(4) {
			p.Tools = append(p.Tools, Tool{Name: string(rune('a' + k)), Cost: r.Intn(20)})
		}
		op := Op{Name: "op"}
		for s := range p.Setups {
			for k := range p.Tools {
				op.Alts = append(op.Alts, Alt{Setup: s, Tool: k})
			}
		}
		p.Ops = []Op{op}
		m := newModel(p, nil)
		assert.True(t, m.triangle)
		assert.True(t, obeysTriangle(m.change), "%+v", p)
	}
}

func obeysTriangle(change [][]int32) bool {
	for i := range change {
		for j := range change {
			for k := range change {
				if change[i][k] > change[i][j]+change[j][k] {
					return false
				}
			}
		}
	}
	return true
}
