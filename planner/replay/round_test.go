package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
)

// A pin with a rounded edge of radius 2 at its free end.
const roundHCL = `
part "pin" {
  material = "brass-free-cutting"
  length   = 20
  stock "bar" { diameter = 22 }
  spigot "body" { diameter = 20 }
  fillet "edge" {
    edge   = "body.right"
    radius = "2 +0.1 -0.1"
  }
}
`

// steppedPin cuts the edge with a square blade 1 wide. Its headstock corner stands on the circle about (18, 8), a hair outside; no two corners lie so far apart
// that more than 0.1 is left between them.
func steppedPin(t *testing.T) *bench {
	t.Helper()
	b := newBench(t, roundHCL, -26, 21)
	b.hold("right", -23, -5, 11, 26, 2500, "stock", "")
	b.do("face.right", "face.right", plan.Face, knife, 0, 680, 0.1, 1)
	b.zero("cross", 22, false)
	b.zero("saddle", 20, false)
	b.cut("cut", b.at(11, 20), b.at(-0.2, 20), nil)
	b.do("body/turn", "body", plan.TurnFinish, knife, 0, 680, 0.1, 1)
	b.zero("cross", 22, false)
	b.zero("saddle", 20, false)
	b.turn("cut", 10, 21, -2, nil)
	b.do("edge/steps", "edge", plan.Steps, "grooving/1 mm grooving tool", 0, 450, 0.03, 0)
	b.zero("cross", 20, false)
	b.zero("saddle", 20, false)
	for _, corner := range [][2]float64{{18.5, 9.94}, {18.8, 9.84}, {19.0, 9.74}, {19.1, 9.68}, {19.2, 9.6}, {19.3, 9.52}, {19.4, 9.43}, {19.5, 9.33}, {19.6, 9.2}, {19.7, 9.06}, {19.8, 8.88}, {19.9, 8.63}} {
		b.cut("step at "+mm(corner[0]), b.at(10.2, corner[0]), b.at(corner[1], corner[0]), nil)
	}
	b.do("edge/file", "edge", plan.FileProfile, "files/files", 0, 0, 0, 0.1)
	b.do("part/part_off", "part", plan.PartOff, parting, 0, 300, 0.03, 0)
	b.zero("cross", 20, false)
	b.zero("saddle", 20, false)
	b.cut("part off", b.at(10.2, -2), b.at(-0.1, -2), nil)
	return b
}

func TestRoundedEdgeIsProved(t *testing.T) {
	assert.Equal(t, 15, proves(t, steppedPin(t)).Cuts)
}

func TestRoundedEdgeCorruptionsAreRefused(t *testing.T) {
	good := steppedPin(t)
	without := func(step int) func(*testing.T, *plan.Plan) {
		return change("edge/steps", func(o *plan.Operation) {
			o.Cuts = append(o.Cuts[:step:step], o.Cuts[step+1:]...)
			o.Card = append(o.Card[:2*step:2*step], o.Card[2*step+2:]...)
			o.Passes--
		})
	}
	for _, c := range []corruption{
		{"not filed", drop("edge/file"), "finished part"},
		{"not stepped", drop("edge/steps"), "file"},
		{"neither", func(t *testing.T, p *plan.Plan) { drop("edge/steps")(t, p); drop("edge/file")(t, p) }, "most metal"},
		{"filed before it is stepped", swap("edge/steps", "edge/file"), "file"},
		{"the first step forgotten", without(0), "file"},
		{"the fifth step forgotten", without(4), "file"},
		{"the last step forgotten", without(11), "file"},
		{"a step a hair too deep", shift("edge/steps", 4, "cross", 2), "least metal"},
		{"the last step too deep", shift("edge/steps", 11, "cross", 6), "least metal"},
		{"a step too far along", shift("edge/steps", 4, "saddle", 1), "least metal"},
		{"more left than is filed", change("edge/file", func(o *plan.Operation) { o.DepthMM = 0.05 }), "file"},
		{"filed as another feature", change("edge/file", func(o *plan.Operation) { o.Feature = "body" }), "file"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}
