package replay

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
)

// faced is the plate with its bore nearer to the left, bored on the faceplate.
func faced(t *testing.T) *table {
	t.Helper()
	b := newTable(t, strings.Replace(plateHCL, "[30, 20]", "[24, 20]", 1))
	good := plate(t)
	b.part.Setups = slices.Clone(good.part.Setups[:3])
	b.count = 5
	b.part.Setups = append(b.part.Setups, plan.Setup{Number: 4, Machine: "lathe", MachineKind: "lathe", Holding: "faceplate", HoldingKind: "faceplate", FreeEnd: "right", CentreX: 24, CentreY: 20,
		LocateMM: 0.071, RunOutMM: 0.02, Grip: plan.Grip{Kind: "clamps", FromZ: 0, ToZ: 4, WorkingN: 12000, LeastN: 2000},
		Bed:     &plan.Bed{Kind: "parallels", HeightMM: 6, GapMM: 6},
		Balance: &plan.Balance{MassKg: 0.35, UnbalanceKgMM: 1.8, WeightKg: 0.028, RadiusMM: 64.8, AngleDeg: 180, LeftOverKgMM: 2, MostRPM: 1160, ShakingN: 30}})
	b.setup = &b.part.Setups[3]
	for _, c := range []plan.Clamp{{XMM: 5, YMM: 20, AngleDeg: 180}, {XMM: 24, YMM: 36, AngleDeg: 90}, {XMM: 55, YMM: 20, AngleDeg: 0}, {XMM: 24, YMM: 4, AngleDeg: 270}} {
		c.ToeMM, c.StudMM, c.ForceN = 6, 12, 3000
		b.setup.Clamps = append(b.setup.Clamps, c)
		b.setup.Bed.Under = append(b.setup.Bed.Under, plan.Strip{X0: c.XMM - 3, Y0: c.YMM - 3, X1: c.XMM + 3, Y1: c.YMM + 3})
	}
	b.bored()
	b.part.Setups = append(b.part.Setups, good.part.Setups[3])
	b.setup = &b.part.Setups[4]
	b.setup.Number = 5
	b.setup.Operations = slices.DeleteFunc(slices.Clone(b.setup.Operations), func(o plan.Operation) bool { return o.Feature == "main" })
	spot := &b.setup.Operations[0]
	spot.Cuts, spot.Passes, spot.Card = spot.Cuts[:2], 2, spot.Card[:6]
	renumber(b.bench.plan())
	return b
}

// bored are the operations in the lathe.
func (b *table) bored() {
	b.do("main/spot", "main", plan.Spot, "centre_drill/centre_drill", 2.5, 680, 0, 0)
	b.zero("tailstock", 4, false)
	b.drill("spot", 0, 5, 2)
	b.do("main/drill", "main", plan.Drill, "drills/drills", 12, 680, 0.05, 3)
	b.op.ForceN = 1100
	b.zero("tailstock", 4, false)
	b.drill("pilot", 6, 5, -4)
	b.drill("drill", 12, 5, -4)
	b.do("main/bore", "main", plan.BoreOut, "boring/8 mm boring bar", 0, 450, 0.05, 0.4)
	b.zero("cross", 12, true)
	b.zero("saddle", 4, false)
	for r := 6.4; r < 9.7; r += 0.4 {
		b.turn("rough", r, 4.5, -0.6, nil)
	}
	b.turn("finish", 10, 4.5, -0.6, &plan.Measured{What: "diameter", LowMM: 20, HighMM: 20.033})
	b.op.Checks = []plan.Check{{What: "main, diameter", Feature: "main", LowMM: 20, HighMM: 20.033, Instrument: "bore_gauge"}}
}

func TestFlatWorkOnTheFaceplateIsProved(t *testing.T) {
	proof := proves(t, faced(t).bench)
	assert.Positive(t, proof.Cuts)
}

func TestFlatCorruptionsInTheLatheAreRefused(t *testing.T) {
	good := faced(t)
	for _, c := range []corruption{
		{"a clamp over the bore", held(4, func(s *plan.Setup) { s.Clamps[0].XMM = 14 }), "clearance"},
		{"a strap over the bore", held(4, func(s *plan.Setup) { s.Clamps[0].AngleDeg = 0 }), "clearance"},
		{"a clamp on air", held(4, func(s *plan.Setup) { s.Clamps[0].XMM = -1 }), "clamps"},
		{"a clamp with its stud in the work", held(4, func(s *plan.Setup) {
			for i := range s.Clamps {
				s.Clamps[i].AngleDeg += 180
			}
		}), "clamps"},
		{"clamps belied", held(4, func(s *plan.Setup) { s.Grip.WorkingN = 2000 }), "grip force"},
		{"a clamp over no packing", held(4, func(s *plan.Setup) { s.Bed.Under = s.Bed.Under[1:] }), "clamps"},
		{"two clamps", held(4, func(s *plan.Setup) { s.Clamps = s.Clamps[:2] }), "clamps"},
		{"clamps on one side", held(4, func(s *plan.Setup) { s.Clamps = s.Clamps[:3]; s.Clamps[2].XMM, s.Clamps[2].YMM = 34, 37 }), "clamps"},
		{"clamps hardly tightened", held(4, func(s *plan.Setup) {
			for i := range s.Clamps {
				s.Clamps[i].ForceN = 100
			}
		}), "grip force"},
		{"clamps tightened beyond what they give", held(4, func(s *plan.Setup) { s.Clamps[0].ForceN = 9000 }), "grip force"},
		{"toes wider than they are", held(4, func(s *plan.Setup) { s.Clamps[0].ToeMM = 20 }), "clamps"},
		{"studs far out", held(4, func(s *plan.Setup) { s.Clamps[0].StudMM = 40 }), "machine"},
		{"the counterweight left out", held(4, func(s *plan.Setup) { s.Balance.WeightKg, s.Balance.LeftOverKgMM = 0, 0.5 }), "balance"},
		{"the counterweight on the heavy side", held(4, func(s *plan.Setup) { s.Balance.AngleDeg, s.Balance.LeftOverKgMM = 0, 1 }), "balance"},
		{"more shaking than the lathe stands", held(4, func(s *plan.Setup) { s.Balance.LeftOverKgMM = 20 }), "balance"},
		{"about another place", held(4, func(s *plan.Setup) { s.CentreX = 26 }), ""},
		{"found too surely", held(4, func(s *plan.Setup) { s.LocateMM = 0.01 }), "located"},
		{"found too badly", held(4, func(s *plan.Setup) { s.LocateMM = 0.4 }), "place"},
		{"before the datum edges", func(_ *testing.T, p *plan.Plan) {
			s := p.Parts[0].Setups
			s[2], s[3] = s[3], s[2]
			s[2].Number, s[3].Number = 3, 4
			renumber(p)
		}, "located"},
		{"faster than the faceplate stands", change("main/spot", func(o *plan.Operation) { o.RPM, o.WantedRPM = 1500, 1500 }), "speed"},
		{"measured too large", change("main/bore", func(o *plan.Operation) { o.Cuts[9].ToMeasure.HighMM = 20.06 }), "least metal"},
		{"not bored through", change("main/bore", func(o *plan.Operation) {
			for i := range o.Cuts {
				o.Cuts[i].To[1].Graduations -= 20
			}
		}), "most metal"},
		{"bored without a hole", drop("main/drill"), ""},
		{"drilled without a spot", drop("main/spot"), "start"},
		{"turned round", held(4, func(s *plan.Setup) { s.FreeEnd = "left" }), ""},
		{"in the vice", held(4, func(s *plan.Setup) { s.Holding, s.HoldingKind = "vice", "vice" }), "grip"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good.bench, c) })
	}
}
