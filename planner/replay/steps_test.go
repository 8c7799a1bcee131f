package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
)

// A cone drawn as a profile, stepped with a square blade and filed.
const kneeHCL = `
part "knee" {
  material = "brass-free-cutting"
  length   = 20
  stock "bar" { diameter = 22 }
  spigot "foot" {
    diameter = 20
    length   = 8
  }
  profile "slope" {
    finish_by = "file"
    zone      = [-0.05, 0.1]
    start { diameter = 20 }
    line {
      length   = 6
      diameter = 14
    }
  }
  spigot "neck" { diameter = 14 }
}
`

func knee(t *testing.T) *bench {
	t.Helper()
	b := newBench(t, kneeHCL, -26, 21)
	b.hold("right", -23, -5, 11, 26, 2500, "stock", "")
	b.do("face.right", "face.right", plan.Face, knife, 0, 680, 0.1, 1)
	b.zero("cross", 22, false)
	b.zero("saddle", 20, false)
	b.cut("cut", b.at(11, 20), b.at(-0.2, 20), nil)
	b.do("foot/turn", "foot", plan.TurnFinish, knife, 0, 680, 0.1, 1)
	b.zero("cross", 22, false)
	b.zero("saddle", 20, false)
	b.turn("cut", 10, 21, -2, nil)
	b.do("neck/turn", "neck", plan.TurnFinish, knife, 0, 680, 0.1, 1)
	b.zero("cross", 20, false)
	b.zero("saddle", 20, false)
	for k, r := range []float64{9, 8, 7} {
		b.turn("cut "+number(k+1), r, 21, 14, nil)
	}
	b.do("slope/steps", "slope", plan.Steps, "grooving/1 mm grooving tool", 0, 450, 0.03, 0)
	b.zero("cross", 20, false)
	b.zero("saddle", 20, false)
	// The blade's headstock corner goes from the neck to the foot and rises with the slope: 0.2 along, 0.1 across. Dials go one way only, so each
	// step begins outside and is plunged, from the shallowest.
	for k := 1; k <= 29; k++ {
		z := 8 + 0.2*float64(k)
		r := 10 - 0.1*float64(k)
		b.cut("step "+number(k), b.at(r, 15), b.at(r, z), nil)
	}
	b.do("slope/file", "slope", plan.FileProfile, "files/files", 0, 0, 0, 0.1)
	b.do("part/part_off", "part", plan.PartOff, parting, 0, 300, 0.03, 0)
	b.zero("cross", 20, false)
	b.zero("saddle", 20, false)
	b.cut("part off", b.at(10.2, -2), b.at(-0.1, -2), nil)
	return b
}

func TestKneeIsProved(t *testing.T) {
	assert.Equal(t, 35, proves(t, knee(t)).Cuts)
}

func TestKneeCorruptionsAreRefused(t *testing.T) {
	good := knee(t)
	for _, c := range []corruption{
		{"not filed", drop("slope/file"), "finished part"},
		{"not stepped", drop("slope/steps"), "file"},
		{"filed before it is stepped", swap("slope/steps", "slope/file"), "file"},
		{"a step forgotten", change("slope/steps", func(o *plan.Operation) {
			o.Cuts = append(o.Cuts[:14:14], o.Cuts[15:]...)
			o.Card = append(o.Card[:28:28], o.Card[30:]...)
			o.Passes--
		}), "file"},
		{"a step too deep", shift("slope/steps", 14, "cross", 6), "least metal"},
		{"a step too far along", shift("slope/steps", 14, "saddle", 2), "least metal"},
		{"more left than is filed", change("slope/file", func(o *plan.Operation) { o.DepthMM = 0.05 }), "file"},
		{"one dial turned round", func(t *testing.T, p *plan.Plan) {
			o := op(t, p, "slope/steps")
			o.Cuts[3], o.Cuts[20] = o.Cuts[20], o.Cuts[3]
		}, "one way"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}
