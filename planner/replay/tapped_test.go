package replay

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// screwRing is four blind M3 holes in the right end of the bush, countersunk.
func screwRing(t *testing.T) *partspec.Holes {
	t.Helper()
	m3, err := tables.FindThread("M3")
	require.NoError(t, err)
	return ringHoles(partspec.Holes{Make: partspec.TappedHole, Diameter: partspec.Size{Low: 2.459, High: 2.599, Dimension: sized(2.5, 0).Dimension}, From: partspec.Right, Depth: sized(7.5, 0.2),
		Thread: &partspec.Thread{Thread: m3, Length: sized(5, 0.2)}, Sink: &partspec.Sink{Diameter: sized(3.6, 0.3), Angle: 90}}, 15, 4, 0.3)
}

// between puts what build adds between the operations of the bush's first setup and its parting off, which then has a setup of its own.
func between(t *testing.T, build func(*bench)) *bench {
	t.Helper()
	b := bush(t)
	b.withMill()
	old := b.part.Setups
	first := old[0]
	first.StickOutMM = 27
	last := first
	last.StickOutMM = 26
	first.Operations, last.Operations = slices.Clone(old[0].Operations[:7]), slices.Clone(old[0].Operations[7:])
	last.Number = 2
	b.part.Setups = []plan.Setup{first}
	build(b)
	b.part.Setups = append(b.part.Setups, last, old[1])
	p := &plan.Plan{Parts: []plan.Part{*b.part}}
	for i := range b.part.Setups {
		b.part.Setups[i].Number = i + 1
	}
	renumber(p)
	return b
}

// onBar begins a setup with the bar upright in the chuck on a machine.
func (b *bench) onBar(machine, kind string) {
	b.hold("right", -26, -6, 15, 26, 2500, "stock", "")
	b.setup.Machine, b.setup.MachineKind, b.setup.LocateMM = machine, kind, 0.01
}

// atBench begins a setup at the bench, the right end up.
func (b *bench) atBench() {
	b.hold("right", 0, 0, 0, 0, 0, "part", "")
	b.setup.Machine, b.setup.MachineKind, b.setup.Holding, b.setup.HoldingKind = "bench", "bench", "bench", "bench"
	b.setup.Grip = plan.Grip{Kind: "bench", Surface: "part"}
}

// fourPlaces are the places of the screws.
func fourPlaces() (list [][2]float64) {
	for i := range 4 {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i))
		list = append(list, [2]float64{math.Round(15*cos) / 2, math.Round(15*sin) / 2})
	}
	return list
}

// every takes a tool down the four holes by the dials.
func (b *bench) every(name, tool string, size, to float64) {
	for i, at := range fourPlaces() {
		b.down(i+1, name, tool, size, at[0], at[1], 20, to)
	}
}

const (
	screwDrill = "holes.ring/drill"
	screwSink  = "holes.ring/countersink"
	screwTap   = "holes.ring/tap"
)

// screwed makes the ring on the mill by dials.
func screwed(t *testing.T) *bench {
	t.Helper()
	return between(t, func(b *bench) {
		b.add(screwRing(t))
		b.onBar("bench mill", "mill")
		b.mill(screwDrill, "ring", plan.Drill, smallDrills, 2.5, 1600, 0.05, 0, 0, 0, 20)
		b.every("spot", spotDrill, 2.5, 18.5)
		b.every("drill", smallDrills, 2.5, 11.75) // 0.75 of it is the point
		b.mill(screwSink, "ring", plan.Countersink, "countersink/countersink", 8.3, 400, 0.05, 0, 0, 0, 20)
		b.every("sink", "countersink/countersink", 8.3, 18.2)
		b.mill(screwTap, "ring", plan.Tap, "taps/taps", 3, 0, 0.5, 0, 0, 0, 20)
		b.every("tap", "taps/taps", 3, 14)
	})
}

// punched makes it with punch marks, on the drilling machine, and taps it at the bench.
func punched(t *testing.T) *bench {
	t.Helper()
	b := between(t, func(b *bench) {
		ring := screwRing(t)
		ring.Within = 0.3
		b.add(ring)
		b.atBench()
		b.do("holes.ring/mark", "ring", plan.MarkOut, "scriber/scriber", 0, 0, 0, 0)
		b.atPlaces("mark", byScribe, 0.2, "", 0, nil)
		b.onBar("drill", "drill")
		b.setup.LocateMM = 0
		b.do(screwDrill, "ring", plan.Drill, smallDrills, 2.5, 1500, 0.05, 0)
		b.atPlaces("spot", byPunch, 0.2, spotDrill, 2.5, &plan.Measured{What: "position", LowMM: 18, HighMM: 18.5})
		b.atPlaces("drill", byPunch, 0.2, smallDrills, 2.5, &plan.Measured{What: "position", LowMM: 11.6, HighMM: 11.8})
		b.do(screwSink, "ring", plan.Countersink, "countersink/countersink", 8.3, 500, 0.05, 0)
		b.atPlaces("sink", byPunch, 0.2, "countersink/countersink", 8.3, &plan.Measured{What: "position", LowMM: 18.1, HighMM: 18.3})
		b.atBench()
		b.do(screwTap, "ring", plan.Tap, "taps/taps", 3, 0, 0.5, 0)
		b.atPlaces("tap", byHole, 0, "taps/taps", 3, &plan.Measured{What: "position", LowMM: 13.9, HighMM: 14.2})
	})
	shop := *b.job.Workshop
	shop.Tools = slices.DeleteFunc(slices.Clone(shop.Tools), func(t partspec.Tool) bool { return t.Kind == partspec.Scriber && t.Accuracy != 0.2 })
	b.job.Workshop = &shop
	return b
}

// atPlaces adds a cut at each place, found on the work.
func (b *bench) atPlaces(name, by string, within float64, tool string, size float64, m *plan.Measured) {
	for i, at := range fourPlaces() {
		b.op.Cuts = append(b.op.Cuts, plan.Cut{Name: fmt.Sprintf("%s %d", name, i+1), At: &plan.Place{XMM: at[0], YMM: at[1], By: by, WithinMM: within}, ToolID: tool, ToolSizeMM: size, ToMeasure: m})
		if len(b.op.Holes) < 4 {
			b.op.Holes = append(b.op.Holes, plan.HoleLine{Number: i + 1, XMM: at[0], YMM: at[1]})
		}
	}
	b.op.Passes = len(b.op.Cuts)
}

func TestScrewedRingsAreProved(t *testing.T) {
	assert.Equal(t, 30, proves(t, screwed(t)).Cuts)
	assert.NotEmpty(t, proves(t, punched(t)).Clauses)
}

func TestCorruptScrewedRingsAreRefused(t *testing.T) {
	dials, marks := screwed(t), punched(t)
	measured := func(id string, from, to int, low, high float64) func(*testing.T, *plan.Plan) {
		return change(id, func(o *plan.Operation) {
			for i := from; i < to; i++ {
				o.Cuts[i].ToMeasure = &plan.Measured{What: "position", LowMM: low, HighMM: high}
			}
		})
	}
	for _, c := range []corruption{
		{"never tapped", drop(screwTap), "finished part"},
		{"never sunk", drop(screwSink), "finished part"},
		{"one hole not tapped", change(screwTap, func(o *plan.Operation) { cutsOut(3, 4)(o); o.Holes = o.Holes[:3] }), "finished part"},
		{"tapped before it is drilled", func(t *testing.T, p *plan.Plan) {
			s := p.Parts[0].Setups[1].Operations
			s[0], s[2] = s[2], s[0]
			renumber(p)
		}, "blank"},
		{"tapped twice", change(screwTap, func(o *plan.Operation) { o.Cuts = append(o.Cuts, o.Cuts[0]); o.Passes++ }), "thread"},
		{"sunk after tapping, by a drill", func(t *testing.T, p *plan.Plan) {
			s := p.Parts[0].Setups[1].Operations
			s[1], s[2] = s[2], s[1]
			renumber(p)
		}, "thread"},
		{"tapped too short", deeper(screwTap, 0, 4, -30), "thread"},
		{"tapped to the floor", deeper(screwTap, 0, 4, 60), "thread"},
		{"taps that are not owned", change(screwTap, func(o *plan.Operation) { o.Tool.ID = "dies/dies" }), "tool"},
		{"drilled too short for the tap", deeper(screwDrill, 4, 8, -26), "run-out"},
		{"drilled too deep", deeper(screwDrill, 4, 8, 20), "size"},
		{"another core drill", change(screwDrill, func(o *plan.Operation) {
			o.Tool.SizeMM = 3.3
			for i := 4; i < 8; i++ {
				o.Cuts[i].ToolSizeMM = 3.3
			}
		}), "blank"},
		{"sunk too wide", deeper(screwSink, 0, 4, 10), "size"},
		{"sunk too narrow", deeper(screwSink, 0, 4, -10), "size"},
		{"sunk by a drill", change(screwSink, func(o *plan.Operation) { o.Tool.ID, o.Tool.SizeMM = smallDrills, 5 }), "tool"},
		{"from the other end", held(2, func(s *plan.Setup) { s.FreeEnd = "left" }), ""},
		{"a grip that bears no thrust", held(2, func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = 200, 200 }), "grip force"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, dials, c) })
	}
	for _, c := range []corruption{
		{"nobody marked it out", drop("holes.ring/mark"), "start"},
		{"a mark in another place", change("holes.ring/mark", func(o *plan.Operation) { o.Cuts[1].At.YMM = 7 }), "place"},
		{"a mark twice", change("holes.ring/mark", func(o *plan.Operation) { *o.Cuts[1].At = *o.Cuts[0].At }), "place"},
		{"marks said closer than they are", change(screwDrill, func(o *plan.Operation) { o.Cuts[5].At.WithinMM = 0.05 }), "located"},
		{"marks further off than drawn", change(screwDrill, func(o *plan.Operation) {
			for i := range o.Cuts {
				o.Cuts[i].At.WithinMM = 0.25
			}
		}), "place"},
		{"marked on the other face", held(2, func(s *plan.Setup) { s.FreeEnd = "left" }), "start"},
		{"a hole by no mark", change(screwDrill, func(o *plan.Operation) { o.Cuts[4].At.XMM = 7 }), "table"},
		{"tapped where no hole is", change(screwTap, func(o *plan.Operation) { o.Cuts[0].At.XMM, o.Holes[0].XMM = 0, 0 }), "place"},
		{"two lines exchanged", change(screwDrill, func(o *plan.Operation) { o.Holes[0].Number, o.Holes[1].Number = 2, 1 }), "table"},
		{"a stop that lets it too deep", measured(screwDrill, 4, 8, 11, 11.8), "size"},
		{"a stop that lets it too short", measured(screwDrill, 4, 8, 11.6, 13), "size"},
		{"a tap that may stop short", measured(screwTap, 0, 4, 13.9, 15.5), "thread"},
		{"a stop nobody can measure", measured(screwSink, 0, 4, 18.2, 18.2001), "measure"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, marks, c) })
	}
}
