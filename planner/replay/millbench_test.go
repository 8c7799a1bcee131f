package replay

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// sized is a dimension within so much on either side.
func sized(v, within float64) partspec.Size {
	s := partspec.Size{Low: lengthOf(v - within), High: lengthOf(v + within)}
	s.Value = lengthOf(v)
	return s
}

// withMill gives the job's workshop a small mill and its tools.
func (b *bench) withMill() {
	shop := *b.job.Workshop
	dial := func(name string, graduation float64) partspec.Dial {
		d := partspec.Dial{Name: name, Reads: partspec.ReadsTravel, Travel: 300}
		d.Graduation.Value, d.PerTurn.Value = lengthOf(graduation), lengthOf(2)
		return d
	}
	shop.Machines = append(append([]partspec.Machine(nil), shop.Machines...), partspec.Machine{Kind: partspec.Mill, Name: "bench mill", PowerKW: 0.5, Speeds: []units.Speed{100, 200, 400, 800, 1600},
		Dials: []partspec.Dial{dial(dialX, 0.02), dial(dialY, 0.02), dial(dialQuill, 0.05)}})
	shop.Holdings = append(append([]partspec.Holding(nil), shop.Holdings...), partspec.Holding{Kind: partspec.VeeBlock, Name: "vee", Largest: 60}, partspec.Holding{Kind: partspec.Vice, Name: "mill vice", Opening: 80, GripFirm: 8000})
	shop.Tools = append(append([]partspec.Tool(nil), shop.Tools...),
		partspec.Tool{Kind: partspec.Drills, Name: "small", Sizes: lengths(2.5, 3.3, 4.5, 5, 6)},
		partspec.Tool{Kind: partspec.EndMill, Name: "cutters", Sizes: lengths(3, 6, 10)},
		partspec.Tool{Kind: partspec.BallNose, Name: "ball", Sizes: lengths(6)},
		partspec.Tool{Kind: partspec.BoringHead, Name: "head", LeastSwing: 10, MostSwing: 120},
		partspec.Tool{Kind: partspec.Counterbores, Name: "counterbores", Sizes: lengths(4, 5)},
		partspec.Tool{Kind: partspec.EdgeFinder, Name: "finder", Accuracy: 0.01},
		partspec.Tool{Kind: partspec.Scriber, Name: "scriber", Accuracy: 0.15})
	b.job.Workshop = &shop
}

// add puts features beside or across the axis on the part.
func (b *bench) add(features ...partspec.Feature) {
	part := *b.job.Parts[0]
	part.Features = append(append([]partspec.Feature(nil), part.Features...), features...)
	b.job.Parts = []*partspec.Part{&part}
}

// onMill begins a setup upright in the chuck on the mill's table.
func (b *bench) onMill(free string, lo, hi, radius, force float64, locates, packing string) {
	b.hold(free, lo, hi, radius, 0, force, locates, packing)
	b.setup.Machine, b.setup.MachineKind, b.setup.LocateMM = "bench mill", "mill", 0.01
	b.setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: 10, GapMM: 10, Under: []plan.Strip{{X0: -10, Y0: -3, X1: 10, Y1: 3}}}
}

// mill begins an operation there, its table's dials set to nought on the middle, or at x and y, and its quill at a height.
func (b *bench) mill(id, feature string, p plan.Process, tool string, size, rpm, feed, depth, x, y, height float64) {
	b.do(id, feature, p, tool, size, rpm, feed, depth)
	b.zero(dialX, x, false)
	b.zero(dialY, y, false)
	b.zero(dialQuill, height, false)
}

// reading is the count of a mill's dial nearest to a place.
func (b *bench) reading(dial string, v float64) plan.Reading {
	b.t.Helper()
	d, ok := b.job.Workshop.Machines[len(b.job.Workshop.Machines)-1].Dial(dial)
	require.True(b.t, ok)
	p := pose{across: b.setup.Across, free: 1, deg: b.setup.AcrossDeg}
	if b.setup.FreeEnd == "left" {
		p.free = -1
	}
	n := p.goes(axisOf(dial)) * (v - b.zeros[dial].ReferenceMM) / graduationOf(d)
	return plan.Reading{Dial: dial, Graduations: int64(math.Round(n))}
}

// over are the readings of a place.
func (b *bench) over(p place) []plan.Reading {
	return []plan.Reading{b.reading(dialX, p[0]), b.reading(dialY, p[1]), b.reading(dialQuill, p[2])}
}

// millLine is a line of the card, as the mill's dial has it.
func (b *bench) millLine(label string, rd plan.Reading) plan.Line {
	d, _ := b.job.Workshop.Machines[len(b.job.Workshop.Machines)-1].Dial(rd.Dial)
	l := plan.Line{Label: label, Dial: rd.Dial, Total: rd.Graduations, Marks: rd.Graduations, Reads: string(d.Reads), Reading: mm(float64(rd.Graduations)*float64(d.Graduation.Value)) + " mm"}
	if per := int64(math.Round(float64(d.PerTurn.Value / d.Graduation.Value))); l.Total >= 0 {
		l.Counted, l.Turns, l.Marks = true, l.Total/per, l.Total%per
	}
	return l
}

// down takes a tool straight down at a place, and gives the place a line in the table.
func (b *bench) down(number int, name, tool string, size, x, y, from, to float64) {
	b.t.Helper()
	b.op.Cuts = append(b.op.Cuts, plan.Cut{Name: name, From: b.over(place{x, y, from}), To: b.over(place{x, y, to}), ToolID: tool, ToolSizeMM: size})
	b.op.Passes = len(b.op.Cuts)
	cut := b.op.Cuts[len(b.op.Cuts)-1]
	if !onCard(*b.op, dialQuill, cut.To[2].Graduations) {
		b.op.Card = append(b.op.Card, b.millLine(name, cut.To[2]))
	}
	for _, h := range b.op.Holes {
		if h.Number == number {
			return
		}
	}
	b.op.Holes = append(b.op.Holes, plan.HoleLine{Number: number, XMM: x, YMM: y, X: b.millLine("", cut.To[0]), Y: b.millLine("", cut.To[1])})
}

// move leads a tool in a straight line, with every reading on the card.
func (b *bench) move(name string, from, to place) {
	cut := plan.Cut{Name: name, From: b.over(from), To: b.over(to)}
	b.op.Cuts = append(b.op.Cuts, cut)
	b.op.Passes = len(b.op.Cuts)
	for _, rd := range cut.To {
		b.op.Card = append(b.op.Card, b.millLine(name, rd))
	}
}

func ringHoles(h partspec.Holes, circle float64, count int, within float64) *partspec.Holes {
	h.FeatureHead = partspec.FeatureHead{Word: "holes", Name: "ring"}
	for i := range count {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(count))
		h.Places = append(h.Places, partspec.Point{X: sized(circle/2*cos, within), Y: sized(circle/2*sin, within)})
	}
	return &h
}

// spotted is a drill's way: spotted from a face, then drilled.
const (
	smallDrills = "drills/small"
	spotDrill   = "centre_drill/centre_drill"
)

// flangedBush is the bush with a ring of four holes through its rim, drilled from the left in the chuck on the mill.
func flangedBush(t *testing.T) *bench {
	t.Helper()
	b := bush(t)
	b.withMill()
	b.add(ringHoles(partspec.Holes{Make: partspec.PlainHole, Diameter: sized(2.5, 0.1), From: partspec.Left, Through: true, Depth: sized(4, 0.1)}, 24, 4, 0.2))
	b.onMill("left", 9, 20, 10, 2500, "body", "copper strip")
	b.setup.StickOutMM = 9
	b.mill("holes.ring/drill", "ring", plan.Drill, smallDrills, 2.5, 1600, 0.05, 0, 0, 0, 0)
	b.ring(spotDrill, 2.5, 2, "spot")
	b.ring(smallDrills, 2.5, 5, "drill")
	b.op.Chords = []plan.ChordCheck{{From: 1, To: 3, DistanceMM: 24, WithinMM: 0.2, PinMM: 2.5, OverMM: 26.5}}
	return b
}

// ring takes a tool down the four holes of the rim.
func (b *bench) ring(tool string, size, to float64, name string) {
	for i := range 4 {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i))
		b.down(i+1, name, tool, size, math.Round(12*cos), math.Round(12*sin), 0, to)
	}
}
