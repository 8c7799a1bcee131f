package replay

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// railSeat is a seat of radius 5 across the body of the bush, 0.6 deep, looking along X.
func railSeat() *partspec.SideSeat {
	return &partspec.SideSeat{Seat: partspec.Seat{FeatureHead: partspec.FeatureHead{Word: "seat", Name: "rail"}, Radius: sized(5, 0.1), Across: lengthOf(2 * math.Sqrt(0.6*9.4)),
		Depth: 0.6, AxisZ: 15, Leftover: 0.1, Finish: true}, Side: "body", Z: sized(15, 0.2), ZFrom: 20, Sunk: sized(0.6, 0.1)}
}

// steppedSide steps it with a ball nose, the bush lying in the vice on the other end of its body, and files it.
func steppedSide(t *testing.T) *bench {
	t.Helper()
	b := bush(t)
	b.withMill()
	b.add(railSeat())
	b.hold("right", 4.2, 9, 10, 11, 2500, "body", "copper strip")
	b.setup.Machine, b.setup.MachineKind, b.setup.Holding, b.setup.HoldingKind = "bench mill", "mill", "mill vice", "vice"
	b.setup.Across, b.setup.AcrossDeg, b.setup.LocateMM = true, 0, 0.015
	b.setup.Grip.Kind, b.setup.Grip.Jaws, b.setup.Grip.JawWidthMM = "vice", 2, 0
	b.setup.Bed = &plan.Bed{Kind: "jaws", GapMM: 10}
	b.mill("seat.rail/steps", "rail", plan.SeatSteps, "ball_nose/ball", 6, 1600, 0.05, 1, 20, 0, 10)
	for k := -6; k <= 6; k++ {
		s, run := 0.16*float64(k), 1
		if k > 0 {
			run = 2
		}
		q := math.Floor((math.Sqrt(4-s*s)-1.4)/0.05+1e-6) * 0.05
		b.move(fmt.Sprintf("run %d, step %d", run, k+7), place{15 + s, -8, 10 - q}, place{15 + s, 8, 10 - q})
	}
	b.hold("right", 0, 0, 0, 0, 0, "part", "")
	b.setup.Machine, b.setup.MachineKind, b.setup.Holding, b.setup.HoldingKind = "bench", "bench", "bench", "bench"
	b.setup.Grip = plan.Grip{Kind: "bench", Surface: "part"}
	b.do("seat.rail/file", "rail", plan.FileSeat, "files/files", 0, 0, 0, 0.1)
	b.op.ForceN = 0
	return b
}

func TestASeatAcrossTheSideIsProved(t *testing.T) {
	assert.Equal(t, 27, proves(t, steppedSide(t)).Cuts)
}

func TestCorruptSeatsAcrossTheSideAreRefused(t *testing.T) {
	const steps, file = "seat.rail/steps", "seat.rail/file"
	good := steppedSide(t)
	for _, c := range []corruption{
		{"never stepped", drop(steps), "finished part"},
		{"never filed", drop(file), "finished part"},
		{"a file that takes less than is left", change(file, func(o *plan.Operation) { o.DepthMM = 0.005 }), "most metal"},
		{"the deepest step too deep", shiftCut(steps, 6, dialQuill, 1), "least metal"},
		{"an outer step too deep", shiftCut(steps, 0, dialQuill, 2), "least metal"},
		{"all steps deeper", everyCut(steps, dialQuill, 1, 13), "least metal"},
		{"all steps shallower", everyCut(steps, dialQuill, -2, 13), "most metal"},
		{"all steps along the part", everyCut(steps, dialX, 15, 13), "least metal"},
		{"a step into the rim", shiftCut(steps, 0, dialX, -500), ""},
		{"the outer steps left out", change(steps, func(o *plan.Operation) { cutsOut(0, 4)(o); o.Card = o.Card[:0] }), "most metal"},
		{"along the wrong slide", change(steps, func(o *plan.Operation) {
			for i := range o.Cuts {
				moveReadings(o.Cuts[i].To, dialX, 100)
			}
		}), "pose"},
		{"steps stop over the part", change(steps, func(o *plan.Operation) {
			for i := range o.Cuts {
				moveReadings(o.Cuts[i].To, dialY, -400)
			}
		}), "seat"},
		{"a square end said to be the tool", change(steps, func(o *plan.Operation) { o.Tool.ID = "end_mill/cutters" }), "least metal"},
		{"swung, as it says", change(steps, func(o *plan.Operation) { o.Process = plan.BoreHead }), "tool"},
		{"another side up", held(3, func(s *plan.Setup) { s.AcrossDeg = 90 }), "pose"},
		{"upright", held(3, func(s *plan.Setup) { s.Across = false }), ""},
		{"its place a millimetre unsure", held(3, func(s *plan.Setup) { s.LocateMM = 1 }), "place"},
		{"its place sure", held(3, func(s *plan.Setup) { s.LocateMM = 0 }), "located"},
		{"the vice where it is cut", held(3, func(s *plan.Setup) { s.Grip.ToZ = 12 }), "clearance"},
		{"the vice too slack", held(3, func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = 50, 50 }), "grip force"},
		{"force belied", change(steps, func(o *plan.Operation) { o.ForceN = 1 }), "force"},
		{"depth belied", change(steps, func(o *plan.Operation) { o.DepthMM = 0.05 }), "depth of cut"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}

// A drawing that says otherwise refutes the same plan.
func TestASeatAcrossTheSideIsHeldAgainstItsDrawing(t *testing.T) {
	for name, c := range map[string]struct {
		redraw func(*partspec.SideSeat)
		clause string
	}{
		"a wider pipe":    {func(f *partspec.SideSeat) { f.Radius = sized(7, 0.1) }, "most metal"},
		"a narrower pipe": {func(f *partspec.SideSeat) { f.Radius = sized(4.6, 0.1) }, "least metal"},
		"deeper":          {func(f *partspec.SideSeat) { f.Sunk, f.Depth = sized(0.9, 0.1), 0.9 }, "most metal"},
		"less deep":       {func(f *partspec.SideSeat) { f.Sunk, f.Depth = sized(0.4, 0.1), 0.4 }, "least metal"},
		"elsewhere":       {func(f *partspec.SideSeat) { f.Z, f.AxisZ = sized(15.4, 0.2), 15.4 }, ""},
		"on another side": {func(f *partspec.SideSeat) { f.Angle = 10 }, "pose"},
		"a finer place":   {func(f *partspec.SideSeat) { f.Z = sized(15, 0.01) }, "place"},
		"belied figures":  {func(f *partspec.SideSeat) { f.AxisZ = 14 }, "finished part"},
	} {
		t.Run(name, func(t *testing.T) {
			b := steppedSide(t)
			seat := railSeat()
			c.redraw(seat)
			part := *b.job.Parts[0]
			part.Features = append(append([]partspec.Feature(nil), part.Features[:len(part.Features)-1]...), seat)
			b.job.Parts = []*partspec.Part{&part}
			refuse(t, b, corruption{name, func(*testing.T, *plan.Plan) {}, c.clause})
		})
	}
}
