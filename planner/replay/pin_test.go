package replay

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
)

// A pin with a knurled head, a cone, a relief and a thread: the marks and the top slide.
const pinHCL = `
part "pin" {
  material = "brass-free-cutting"
  length   = 40
  stock "bar" { diameter = 25 }
  spigot "head" {
    diameter = 24
    length   = 10
  }
  taper "cone" {
    large    = 20
    small    = 16
    length   = 10
    large_at = "left"
  }
  spigot "stem" { diameter = 10 }
  groove "relief" {
    on       = "stem"
    at       = 0
    width    = 3
    diameter = 8
  }
  thread "screw" {
    on     = "stem"
    size   = "M10"
    length = 17
  }
  knurl "hold" {
    on    = "head"
    pitch = 1
  }
  chamfer "lead" {
    edge = "stem.right"
    size = 1
  }
}
`

func pin(t *testing.T) *bench {
	t.Helper()
	b := newBench(t, pinHCL, -28, 41)
	b.hold("right", -24, -5, 12.5, 46, 2800, "stock", "")
	b.do("face.right", "face.right", plan.Face, knife, 0, 680, 0.1, 1)
	b.zero("cross", 25, false)
	b.zero("saddle", 40, false)
	b.cut("cut", b.at(12.5, 40), b.at(-0.2, 40), nil)

	b.do("head/turn", "head", plan.TurnFinish, knife, 0, 680, 0.1, 1)
	b.zero("cross", 25, false)
	b.zero("saddle", 40, false)
	b.turn("cut", 11.8, 41, -2, nil)

	b.do("cone/rough", "cone", plan.TurnRough, knife, 0, 680, 0.1, 1)
	b.zero("cross", 23.6, false)
	b.zero("saddle", 40, false)
	b.turn("rough 1", 10.8, 41, 10.2, nil)
	b.turn("rough 2", 10.2, 41, 10.2, nil)

	b.do("stem/rough", "stem", plan.TurnRough, knife, 0, 680, 0.1, 1)
	b.zero("cross", 20.4, false)
	b.zero("saddle", 40, false)
	for k, r := range []float64{9.2, 8.2, 7.2, 6.2, 5.2} {
		b.turn("rough "+number(k+1), r, 41, 20.2, nil)
	}
	b.do("stem/turn", "stem", plan.TurnFinish, knife, 0, 1000, 0.05, 0.4)
	b.zero("cross", 10.4, false)
	b.zero("saddle", 40, false)
	b.turn("finish", 4.95, 41, 20, nil)

	b.do("cone/taper", "cone", plan.TaperTurn, knife, 0, 680, 0.05, 2.5)
	b.op.TopSlideDeg = math.Atan2(2, 10) * 180 / math.Pi
	b.zero("cross", 20.4, false)
	b.zero("saddle", 40, false)
	b.zero("top", 0, false)
	top := func(n int64) plan.Reading { return plan.Reading{Dial: "top", Graduations: n} }
	b.cut("cone", append(b.at(7.77, 21), top(0)), append(b.at(7.77, 21), top(560)), nil)

	b.do("relief/groove", "relief", plan.Groove, "grooving/2 mm grooving tool", 0, 450, 0.03, 0)
	b.zero("cross", 9.9, false)
	b.zero("saddle", 40, false)
	b.cut("plunge 1", b.at(5, 20), b.at(4, 20), nil)
	b.cut("plunge 2", b.at(5, 21), b.at(4, 21), nil)

	b.do("lead/chamfer", "lead", plan.Chamfer, "chamfer/chamfer", 0, 450, 0, 0)
	b.zero("cross", 9.9, false)
	b.zero("saddle", 40, false)
	b.cut("chamfer", b.at(6, 40), b.at(3.95, 40), nil)

	b.do("screw/die", "screw", plan.Die, "dies/dies", 10, 0, 1.5, 0)
	b.do("hold/knurl", "hold", plan.Knurl, "knurl/knurl", 0, 130, 0, 0)

	b.do("part/part_off", "part", plan.PartOff, parting, 0, 300, 0.03, 0)
	b.zero("cross", 23.6, false)
	b.zero("saddle", 40, false)
	b.cut("part off", b.at(12, -2), b.at(-0.1, -2), nil)
	return b
}

func TestPinIsProved(t *testing.T) {
	proof := proves(t, pin(t))
	assert.Equal(t, 15, proof.Cuts)
}

func TestPinCorruptionsAreRefused(t *testing.T) {
	good := pin(t)
	for _, c := range []corruption{
		{"die before the relief", first("screw/die", 6), "run-out"},
		{"relief in one plunge, then sideways", change("relief/groove", func(o *plan.Operation) {
			o.Cuts[0].From[1] = o.Cuts[1].From[1]
			o.Cuts[0].From[0] = o.Cuts[0].To[0]
			o.Cuts[1], o.Cuts[0] = o.Cuts[0], o.Cuts[1]
		}), "depth of cut"},
		{"no die", drop("screw/die"), "finished part"},
		{"no knurl", drop("hold/knurl"), "finished part"},
		{"no cone", drop("cone/taper"), "most metal"},
		{"no relief", drop("relief/groove"), "most metal"},
		{"no chamfer", drop("lead/chamfer"), "most metal"},
		{"die before the stem is turned", first("screw/die", 3), "blank"},
		{"knurled before it is turned", first("hold/knurl", 1), "blank"},
		{"a die of another thread", change("screw/die", func(o *plan.Operation) { o.Tool.ID = "taps/taps" }), "tool"},
		{"another knurl", change("hold/knurl", func(o *plan.Operation) { o.Tool.ID = "files/files" }), "tool"},
		{"threaded twice", func(t *testing.T, p *plan.Plan) {
			s := &p.Parts[0].Setups[0]
			o := *op(t, p, "screw/die")
			o.ID = "screw/again"
			s.Operations = append(s.Operations[:9:9], append([]plan.Operation{o}, s.Operations[9:]...)...)
			renumber(p)
		}, "thread"},
		{"half a degree more of top slide", change("cone/taper", func(o *plan.Operation) { o.TopSlideDeg += 0.7 }), ""},
		{"the other way round", change("cone/taper", func(o *plan.Operation) { o.TopSlideDeg = -o.TopSlideDeg }), ""},
		{"top slide too far", change("cone/taper", func(o *plan.Operation) {
			o.Cuts[0].To[2].Graduations += 20
			o.Card[2].Total += 20
			o.Card[2].Marks += 20
			o.Card[2].Reading = "11.6 mm"
		}), ""},
		{"top slide not far enough", change("cone/taper", func(o *plan.Operation) {
			o.Cuts[0].To[2].Graduations -= 20
			o.Card[2].Total -= 20
			relabel(&o.Card[2])
		}), ""},
		{"no nought for the top slide", change("cone/taper", func(o *plan.Operation) { o.Zeros = o.Zeros[:2] }), "zero"},
		{"cone cut too deep with card", shift("cone/taper", 0, "cross", 15), "least metal"},
		{"another grooving tool", change("relief/groove", func(o *plan.Operation) { o.Tool.ID = "grooving/1 mm grooving tool" }), ""},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}
