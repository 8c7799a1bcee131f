package replay

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// pipeSeat is a seat of radius 40 across the rim of the bush, its pipe along Y.
func pipeSeat() *partspec.Seat {
	depth := 40 - math.Sqrt(40*40-14*14)
	return &partspec.Seat{FeatureHead: partspec.FeatureHead{Word: "seat", Name: "pipe"}, On: partspec.Left, Radius: sized(40, 0.1), Angle: 90, Across: 28,
		Depth: lengthOf(depth), AxisZ: lengthOf(depth - 40), Leftover: 0.1, Finish: true}
}

// steppedSeat steps it with a ball nose in the chuck, left end up, and files it.
func steppedSeat(t *testing.T) *bench {
	t.Helper()
	b := bush(t)
	b.withMill()
	b.add(pipeSeat())
	b.onMill("left", 9, 20, 10, 2500, "body", "copper strip")
	b.setup.StickOutMM = 9
	b.mill("seat.pipe/steps", "pipe", plan.SeatSteps, "ball_nose/ball", 6, 1600, 0.05, 1, 0, 0, 0)
	axis := -math.Sqrt(40*40 - 14*14)
	for k := -13; k <= 13; k++ {
		s, run := float64(k), 1
		if k > 0 {
			run = 2
		}
		q := axis + math.Sqrt(37*37-s*s) + 3
		q = math.Floor(q/0.05+1e-6) * 0.05
		b.move(fmt.Sprintf("run %d, step %d", run, k+14), place{s, -18, q}, place{s, 18, q})
	}
	b.hold("left", 0, 0, 0, 0, 0, "part", "")
	b.setup.Machine, b.setup.MachineKind, b.setup.Holding, b.setup.HoldingKind = "bench", "bench", "bench", "bench"
	b.setup.Grip = plan.Grip{Kind: "bench", Surface: "part"}
	b.do("seat.pipe/file", "pipe", plan.FileSeat, "files/files", 0, 0, 0, 0.1)
	b.op.ForceN = 0
	return b
}

// swungSeat swings it with a boring head, the work lying in the vice.
func swungSeat(t *testing.T) *bench {
	t.Helper()
	b := bush(t)
	b.withMill()
	seat := pipeSeat()
	seat.Finish = false
	b.add(seat)
	b.hold("left", 9, 20, 10, 9, 3500, "body", "copper strip")
	b.setup.Machine, b.setup.MachineKind, b.setup.Holding, b.setup.HoldingKind = "bench mill", "mill", "mill vice", "vice"
	b.setup.Across, b.setup.AcrossDeg, b.setup.LocateMM = true, 90, 0.015
	b.setup.Grip.Kind, b.setup.Grip.Jaws, b.setup.Grip.JawWidthMM = "vice", 2, 0
	b.setup.Bed = &plan.Bed{Kind: "jaws", GapMM: 10}
	b.mill("seat.pipe/swing", "pipe", plan.BoreHead, "boring_head/head", 80, 100, 0.05, 0.4, 0, 0, 14)
	for k, z := range []float64{-39.64, -39.24, -38.84, -38.44, -38.04, -37.64, -37.46} {
		b.move(fmt.Sprintf("pass %d", k+1), place{z, 0, 14}, place{z, 0, -16})
		b.op.Cuts[k].ToMeasure = &plan.Measured{What: "diameter", LowMM: 79.8, HighMM: 80.2}
	}
	return b
}

func TestSeatsAreProved(t *testing.T) {
	assert.Equal(t, 41, proves(t, steppedSeat(t)).Cuts)
	assert.Equal(t, 21, proves(t, swungSeat(t)).Cuts)
}

// shiftCut moves a reading of one cut, and its line of the card, by some graduations.
func shiftCut(id string, cut int, dial string, by int64) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		o := op(t, p, id)
		c := &o.Cuts[cut]
		moveReadings(c.From, dial, by)
		moveReadings(c.To, dial, by)
		for i := range o.Card {
			if l := &o.Card[i]; l.Label == c.Name && l.Dial == dial {
				l.Total += by
				relabelMill(l)
			}
		}
	}
}

// all does several changes one after the other.
func all(list ...func(*testing.T, *plan.Plan)) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		for _, f := range list {
			f(t, p)
		}
	}
}

// everyCut shifts all cuts of an operation alike.
func everyCut(id, dial string, by int64, n int) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		for i := range n {
			shiftCut(id, i, dial, by)(t, p)
		}
	}
}

const (
	stepsID = "seat.pipe/steps"
	fileID  = "seat.pipe/file"
	swingID = "seat.pipe/swing"
)

func TestCorruptSeatsAreRefused(t *testing.T) {
	stepped, swung := steppedSeat(t), swungSeat(t)
	without := func(id string, from, to int) func(*testing.T, *plan.Plan) {
		return change(id, func(o *plan.Operation) { cutsOut(from, to)(o); o.Card = o.Card[:0] })
	}
	for _, c := range []corruption{
		{"never filed", drop(fileID), "finished part"},
		{"never stepped", drop(stepsID), "finished part"},
		{"filed by no seat's name", change(fileID, func(o *plan.Operation) { o.Feature = "body" }), "machine"},
		{"a file that takes less than is left", change(fileID, func(o *plan.Operation) { o.DepthMM = 0.02 }), "most metal"},
		{"a step one mark too deep", shiftCut(stepsID, 14, dialQuill, 2), "least metal"},
		{"an outer step too deep", shiftCut(stepsID, 1, dialQuill, 2), "least metal"},
		{"steps too shallow", everyCut(stepsID, dialQuill, -3, 8), "most metal"},
		{"a step aside", shiftCut(stepsID, 3, dialX, 40), ""},
		{"a step left out", without(stepsID, 10, 11), ""},
		{"all steps aside", everyCut(stepsID, dialX, 50, 27), "least metal"},
		{"all steps deeper", everyCut(stepsID, dialQuill, 2, 27), "least metal"},
		{"steps stop within the part", change(stepsID, func(o *plan.Operation) {
			for i := range o.Cuts {
				moveReadings(o.Cuts[i].To, dialY, -800)
			}
		}), "seat"},
		{"along the wrong slide", change(stepsID, func(o *plan.Operation) {
			for i := range o.Cuts {
				moveReadings(o.Cuts[i].To, dialX, 100)
			}
		}), "pose"},
		{"another cutter", change(stepsID, func(o *plan.Operation) { o.Tool.ID, o.Tool.SizeMM = "end_mill/cutters", 6 }), "least metal"},
		{"a swing that was said to be steps", change(stepsID, func(o *plan.Operation) { o.Tool.ID = "boring_head/head" }), "tool"},
		{"both ways", change(stepsID, func(o *plan.Operation) {
			for i := range o.Cuts {
				o.Cuts[i].Name = fmt.Sprintf("step %d", i)
			}
		}), "one way"},
		{"other end up", held(3, func(s *plan.Setup) { s.FreeEnd = "right" }), ""},
		{"the axis said a millimetre off", held(3, func(s *plan.Setup) { s.LocateMM = 1 }), "place"},
		{"the axis said without error", held(3, func(s *plan.Setup) { s.LocateMM = 0 }), "located"},
		{"too light a grip", held(3, func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = 100, 100 }), "grip force"},
		{"jaws too near", held(3, func(s *plan.Setup) { s.Grip.FromZ, s.StickOutMM = 4.2, 4 }), "clearance"},
		{"the bore reamed through the seat", func(t *testing.T, p *plan.Plan) {
			s := p.Parts[0].Setups
			again, ream := s[1], *op(t, p, "bore.main/ream")
			drop("bore.main/ream")(t, p)
			ream.Zeros = []plan.Zero{{Dial: "tailstock", ReferenceMM: 0, How: ream.Zeros[0].How}}
			again.Number, again.Operations = len(s)+1, []plan.Operation{ream}
			p.Parts[0].Setups = append(s, again)
			renumber(p)
		}, "entry"},
		{"filed before it is stepped", func(t *testing.T, p *plan.Plan) {
			s := p.Parts[0].Setups
			s[2], s[3] = s[3], s[2]
			s[2].Number, s[3].Number = 3, 4
			renumber(p)
		}, "finished part"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, stepped, c) })
	}
	swing := func(f func(*plan.Operation)) func(*testing.T, *plan.Plan) { return change(swingID, f) }
	radius := func(low, high float64) func(*testing.T, *plan.Plan) {
		return swing(func(o *plan.Operation) {
			o.Tool.SizeMM = low
			for i := range o.Cuts {
				o.Cuts[i].ToMeasure.LowMM, o.Cuts[i].ToMeasure.HighMM = low, high
			}
		})
	}
	for _, c := range []corruption{
		{"never swung", drop(swingID), "finished part"},
		{"a larger radius, with its table", radius(80.6, 81), "least metal"},
		{"a smaller radius, with its table", radius(79, 79.4), "most metal"},
		{"a radius beyond the head", radius(119, 121), "tool"},
		{"a radius too fine to measure", radius(79.999, 80.001), "measure"},
		{"not deep enough", without(swingID, 4, 7), "size"},
		{"too deep", everyCut(swingID, dialX, 20, 7), "size"},
		{"beside the axis", everyCut(swingID, dialY, 20, 7), "place"},
		{"not through", swing(func(o *plan.Operation) {
			for i := range o.Cuts {
				moveReadings(o.Cuts[i].To, dialQuill, -60)
			}
		}), "seat"},
		{"a pass that takes nothing", swing(func(o *plan.Operation) {
			o.Cuts[5] = o.Cuts[4]
			o.Card = slices.DeleteFunc(o.Card, func(l plan.Line) bool { return l.Label == "pass 6" })
		}), "removes metal"},
		{"turned a little", held(3, func(s *plan.Setup) { s.AcrossDeg = 85 }), "pose"},
		{"upright", held(3, func(s *plan.Setup) { s.Across = false }), ""},
		{"the vice too narrow", held(3, func(s *plan.Setup) { s.Grip.RadiusMM = 45 }), "capacity"},
		{"the vice where it is cut", held(3, func(s *plan.Setup) { s.Grip.FromZ, s.Grip.ToZ = 4.2, 15 }), "clearance"},
		{"the vice too slack", held(3, func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = 300, 300 }), "grip force"},
		{"force belied", swing(func(o *plan.Operation) { o.ForceN = 5 }), "force"},
		{"into the table", held(3, func(s *plan.Setup) { s.Bed.GapMM = 2 }), "way out"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, swung, c) })
	}
}

// What changes nothing that matters about a seat must still be proved.
func TestHarmlessChangesOfSeatsPass(t *testing.T) {
	stepped, swung := steppedSeat(t), swungSeat(t)
	for name, c := range map[string]struct {
		good  *bench
		spoil func(*testing.T, *plan.Plan)
	}{
		"run out further": {stepped, change(stepsID, func(o *plan.Operation) {
			for i := range o.Cuts {
				moveReadings(o.Cuts[i].To, dialY, 100)
			}
			for i := range o.Card {
				if l := &o.Card[i]; l.Dial == dialY {
					l.Total += 100
					relabelMill(l)
				}
			}
		})},
		"a firmer grip":        {stepped, held(3, func(s *plan.Setup) { s.Grip.WorkingN = 2800 })},
		"a file that may take": {stepped, change(fileID, func(o *plan.Operation) { o.DepthMM = 0 })},
		"seen from below":      {swung, held(3, func(s *plan.Setup) { s.AcrossDeg = -90 })},
		"further through": {swung, change(swingID, func(o *plan.Operation) {
			moveReadings(o.Cuts[6].To, dialQuill, 4)
			o.Card = append(o.Card, o.Card[2])
			o.Card[len(o.Card)-1].Total += 4
			relabelMill(&o.Card[len(o.Card)-1])
		})},
		"a narrower range": {swung, change(swingID, func(o *plan.Operation) {
			for i := range o.Cuts {
				o.Cuts[i].ToMeasure.LowMM, o.Cuts[i].ToMeasure.HighMM = 79.9, 80.1
			}
		})},
	} {
		t.Run(name, func(t *testing.T) {
			p := copied(t, c.good.plan())
			c.spoil(t, p)
			_, failures := Prove(c.good.job, p)
			assert.Empty(t, failures)
		})
	}
}

func BenchmarkProveSeat(b *testing.B) {
	good := steppedSeat(&testing.T{})
	p := good.plan()
	b.ReportAllocs()
	for b.Loop() {
		if _, failures := Prove(good.job, p); len(failures) > 0 {
			b.Fatal(failures)
		}
	}
}
