package replay

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// A vee of 60 degrees, 3 wide at its bottom and 3 deep, with its middle at 10: the flanks leave the bottom at 8.5 and 11.5.
const veeHCL = `
part "sheave" {
  material = "brass-free-cutting"
  length   = 20
  stock "bar" { diameter = 30 }
  spigot "rim" { diameter = 28 }
  groove "vee" {
    on           = "rim"
    at           = 6.768
    depth        = 3
    angle        = 60
    bottom_width = 3
  }
}
`

// veeSheave cuts it with a blade 2 wide: the middle, then each flank in two passes of the top slide. The slide's ways are worked out by hand: a pass that begins
// at radius r and goes in at 60 degrees to the axis reaches the bottom, 11, after (r-11)/sin 60.
func veeSheave(t *testing.T) *bench {
	t.Helper()
	b := newBench(t, veeHCL, -26, 21)
	b.hold("right", -23, -5, 15, 26, 2500, "stock", "")
	b.do("face.right", "face.right", plan.Face, knife, 0, 680, 0.1, 1)
	b.zero("cross", 30, false)
	b.zero("saddle", 20, false)
	b.cut("cut", b.at(15, 20), b.at(-0.2, 20), nil)
	b.do("rim/turn", "rim", plan.TurnFinish, knife, 0, 680, 0.1, 1)
	b.zero("cross", 30, false)
	b.zero("saddle", 20, false)
	b.turn("cut", 14, 21, -2, nil)
	b.do("vee/middle", "vee", plan.Groove, parting, 0, 300, 0.03, 0)
	b.zero("cross", 28, false)
	b.zero("saddle", 20, false)
	b.cut("plunge 1", b.at(14.2, 8.5), b.at(11, 8.5), nil)
	b.cut("plunge 2", b.at(14.2, 9.5), b.at(11, 9.5), nil)

	b.do("vee/left", "vee", plan.Groove, parting, 0, 300, 0.03, 0)
	b.op.TopSlideDeg = -120 // in, and away from the headstock
	b.zero("cross", 28, false)
	b.zero("saddle", 20, false)
	b.zero("top", 0, false)
	b.flank("pass 1", 14.99, 7, 150) // 1.5 along the axis, to the slot's wall
	b.flank("pass 2", 14.99, 6.2, 230)

	b.do("vee/right", "vee", plan.Groove, parting, 0, 300, 0.03, 0)
	b.op.TopSlideDeg = -60 // in, and towards the headstock; the blade's other corner cuts
	b.zero("cross", 28, false)
	b.zero("saddle", 20, false)
	b.zero("top", 0, false)
	b.flank("pass 1", 14.99, 11, 150)
	b.flank("pass 2", 14.99, 11.8, 230)

	b.do("part/part_off", "part", plan.PartOff, parting, 0, 300, 0.03, 0)
	b.zero("cross", 28, false)
	b.zero("saddle", 20, false)
	b.cut("part off", b.at(14.2, -2), b.at(-0.1, -2), nil)
	return b
}

// flank is a pass of the top slide from a radius and a place.
func (b *bench) flank(name string, r, z float64, top int64) {
	b.t.Helper()
	b.cut(name, append(b.at(r, z), plan.Reading{Dial: "top"}), append(b.at(r, z), plan.Reading{Dial: "top", Graduations: top}), nil)
}

func TestVeeIsProved(t *testing.T) {
	assert.Equal(t, 9, proves(t, veeSheave(t)).Cuts)
}

func TestVeeCorruptionsAreRefused(t *testing.T) {
	good := veeSheave(t)
	turned := func(id string, deg float64) func(*testing.T, *plan.Plan) {
		return change(id, func(o *plan.Operation) { o.TopSlideDeg = deg })
	}
	wound := func(id string, by int64) func(*testing.T, *plan.Plan) { // the last pass, and its line of the card, which is the last
		return change(id, func(o *plan.Operation) {
			o.Cuts[1].To[2].Graduations += by
			l := &o.Card[len(o.Card)-1]
			l.Total += by
			relabel(l)
		})
	}
	for _, c := range []corruption{
		{"a flank forgotten", drop("vee/left"), "most metal"},
		{"the other flank forgotten", drop("vee/right"), "most metal"},
		{"a flank too deep", shift("vee/left", 1, "cross", 30), "least metal"},
		{"the other flank too deep", shift("vee/right", 1, "cross", 30), "least metal"},
		{"a flank not deep enough", shift("vee/left", 1, "cross", -40), "most metal"},
		{"a flank too far along", shift("vee/left", 1, "saddle", 3), "least metal"},
		{"wound in too far", wound("vee/right", 25), "least metal"},
		{"wound in too little", wound("vee/right", -40), "most metal"},
		{"the slide nearer to square", turned("vee/left", -114), "least metal"},
		{"the slide farther from square", turned("vee/right", -54), "most metal"},
		{"the slide set to the wrong hand", turned("vee/left", -60), "least metal"},
		{"the slide not set over", turned("vee/right", 0), "most metal"},
		{"by the wrong corner of the blade", shift("vee/right", 1, "saddle", -20), "least metal"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}

// A knife's shank, 10 wide behind its point, does not go into a vee: cutting one flank it takes the other with it.
func TestNoKnifeGoesIntoAVee(t *testing.T) {
	b := veeSheave(t)
	c := corruption{"by a knife", change("vee/left", func(o *plan.Operation) {
		o.Tool.ID, o.DepthMM = knife, 10
	}), "least metal"}
	refuse(t, b, c)
}

// The sign and the size of the top slide's angle say where it goes, all the way round.
func TestTopSlideGoesWhereItsAngleSays(t *testing.T) {
	w := &walk{setup: plan.Setup{FreeEnd: "right"}}
	for _, deg := range []float64{-179, -120, -91, -60, -5, 0, 5, 45, 90, 135, 179} {
		m := motion{from: solid.Point{Z: 5, R: 9}, to: solid.Point{Z: 5, R: 9}}
		w.topSlide(&m, plan.Operation{TopSlideDeg: deg}, stand{top: 0}, stand{top: 2})
		rad := deg * math.Pi / 180
		require.InDelta(t, 5-2*math.Cos(rad), m.to.Z, 1e-12, "%g", deg)
		require.InDelta(t, 9+2*math.Sin(rad), m.to.R, 1e-12, "%g", deg)
		assert.Equal(t, math.Abs(deg) > 90, m.to.Z > 5, "beyond 90 it goes away from the headstock: %g", deg)
	}
}
