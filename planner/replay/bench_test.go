package replay

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// bench writes a plan by hand for the built-in workshop, in millimetres that must be whole graduations.
type bench struct {
	t     *testing.T
	job   *partspec.Job
	part  *plan.Part
	setup *plan.Setup
	op    *plan.Operation
	zeros map[string]plan.Zero
	count int
}

func newBench(t *testing.T, hcl string, left, right float64) *bench {
	t.Helper()
	job, _, diags := partspec.Parse([]partspec.Source{{Name: "test.hcl", Text: []byte(hcl)}})
	require.False(t, diags.HasErrors(), "%v", diags)
	job.Workshop = ownShop(job.Workshop)
	p := job.Parts[0]
	return &bench{t: t, job: job, part: &plan.Part{Name: p.Name, Material: p.Material.ID, MaterialName: p.Material.Name, Quantity: p.Quantity, LengthMM: float64(p.Length.Value),
		Stock: plan.Stock{Kind: p.Stock.Kind.String(), OutsideMM: float64(p.Stock.Outside.Value), InsideMM: float64(p.Stock.Inside.Value), LeftZ: left, RightZ: right, LengthMM: right - left}}}
}

// ownShop is a workshop that a test may change: the built-in one is everybody's.
func ownShop(w *partspec.Workshop) *partspec.Workshop {
	shop := *w
	shop.Machines, shop.Holdings = slices.Clone(w.Machines), slices.Clone(w.Holdings)
	shop.Tools, shop.Instruments = slices.Clone(w.Tools), slices.Clone(w.Instruments)
	for i := range shop.Machines {
		shop.Machines[i].Dials = slices.Clone(shop.Machines[i].Dials)
	}
	return &shop
}

func (b *bench) plan() *plan.Plan {
	return &plan.Plan{Schema: plan.Schema, Workshop: b.job.Workshop.Name, BuiltInWorkshop: true, Parts: []plan.Part{*b.part}}
}

// hold begins a setup in the three-jaw; lo..hi is gripped.
func (b *bench) hold(free string, lo, hi, radius, stickOut, force float64, locates, packing string) {
	b.part.Setups = append(b.part.Setups, plan.Setup{
		Number: len(b.part.Setups) + 1, Machine: "lathe", MachineKind: "lathe", Holding: "three_jaw", HoldingKind: "three_jaw", FreeEnd: free,
		StickOutMM: stickOut, RunOutMM: 0.08, Locates: locates,
		Grip: plan.Grip{Kind: "jaws", Surface: locates, FromZ: lo, ToZ: hi, RadiusMM: radius, Jaws: 3, JawWidthMM: 8, WorkingN: force, LeastN: force, Packing: packing,
			ErrorMM: 0.05, Trust: "rough"},
	})
	b.setup = &b.part.Setups[len(b.part.Setups)-1]
	if packing != "" {
		b.setup.RunOutMM = 0.1
	}
}

// do begins an operation.
func (b *bench) do(id, feature string, p plan.Process, tool string, size, rpm, feed, depth float64) {
	b.count++
	b.setup.Operations = append(b.setup.Operations, plan.Operation{ID: id, Number: 10 * b.count, Feature: feature, Process: p, Tool: plan.ToolRef{ID: tool, SizeMM: size},
		RPM: rpm, WantedRPM: rpm, FeedMM: feed, DepthMM: depth, ForceN: 800})
	b.op = &b.setup.Operations[len(b.setup.Operations)-1]
	b.zeros = map[string]plan.Zero{}
}

func (b *bench) zero(dial string, reference float64, outward bool) {
	z := plan.Zero{Dial: dial, ReferenceMM: reference, Outward: outward}
	b.op.Zeros = append(b.op.Zeros, z)
	b.zeros[dial] = z
}

// place gives the reading for a place along the axis, or a radius.
func (b *bench) place(dial string, mm float64) plan.Reading {
	b.t.Helper()
	m, _ := b.job.Workshop.Machines[0].Dial(dial)
	z, ok := b.zeros[dial]
	require.True(b.t, ok, "no nought for %s", dial)
	travel := z.ReferenceMM - mm
	if dial == "cross" {
		travel = z.ReferenceMM/2 - mm
		if z.Outward {
			travel = -travel
		}
	} else if b.setup.FreeEnd == "left" {
		travel = -travel
	}
	n := travel / graduationOf(m)
	require.InDelta(b.t, math.Round(n), n, 1e-6, "%s %g is no whole graduation", dial, mm)
	return plan.Reading{Dial: dial, Graduations: int64(math.Round(n))}
}

// at reads cross and saddle for a radius and a place.
func (b *bench) at(r, z float64) []plan.Reading {
	b.t.Helper()
	return []plan.Reading{b.place("cross", r), b.place("saddle", z)}
}

// cut adds a cut, and the card's lines for where it goes.
func (b *bench) cut(name string, from, to []plan.Reading, m *plan.Measured) {
	b.op.Cuts = append(b.op.Cuts, plan.Cut{Name: name, From: from, To: to, ToMeasure: m})
	for _, rd := range to {
		b.line(name, rd, m != nil)
	}
	b.op.Passes = len(b.op.Cuts)
}

// turn is a cut along the axis.
func (b *bench) turn(name string, r, z0, z1 float64, m *plan.Measured) {
	b.t.Helper()
	b.cut(name, b.at(r, z0), b.at(r, z1), m)
}

// drill is a cut with the tailstock, with a size of its own when it is not 0.
func (b *bench) drill(name string, size, z0, z1 float64) {
	b.t.Helper()
	b.cut(name, []plan.Reading{b.place("tailstock", z0)}, []plan.Reading{b.place("tailstock", z1)}, nil)
	b.op.Cuts[len(b.op.Cuts)-1].ToolSizeMM = size
}

func (b *bench) line(label string, rd plan.Reading, byMeasure bool) {
	d, _ := b.job.Workshop.Machines[0].Dial(rd.Dial)
	l := plan.Line{Label: label, Dial: rd.Dial, Total: rd.Graduations, Marks: rd.Graduations, Reads: string(d.Reads), ByMeasure: byMeasure,
		Reading: mm(float64(rd.Graduations)*float64(d.Graduation.Value)) + " mm"}
	if per := int64(math.Round(float64(d.PerTurn.Value / d.Graduation.Value))); per > 0 && l.Total >= 0 {
		l.Counted, l.Turns, l.Marks = true, l.Total/per, l.Total%per
	}
	if z := b.zeros["cross"]; rd.Dial == "cross" && !byMeasure {
		travel := 2 * float64(l.Total) * graduationOf(d)
		if z.Outward {
			travel = -travel
		}
		l.Makes = "Ø" + mm(z.ReferenceMM-travel) + " mm"
	}
	b.op.Card = append(b.op.Card, l)
}

// The part that the tests make: a flanged bush with a reamed bore.
const bushHCL = `
part "bush" {
  material = "brass-free-cutting"
  length   = 20
  stock "bar" { diameter = 30 }
  flange "rim" {
    diameter = 28
    length   = 4
  }
  spigot "body" {
    diameter = "20 +0 -0.05"
    length   = 16
  }
  bore "main" { diameter = "10 H7" }
  run_out {
    of     = "body"
    to     = "main"
    within = 0.02
  }
}
`

const (
	knife   = "turning/right-hand knife tool"
	parting = "parting/parting"
)

// bush is a good plan for it: everything but the left face from the bar, then the left face in packed jaws on the body.
func bush(t *testing.T) *bench {
	t.Helper()
	b := newBench(t, bushHCL, -30, 21)
	b.hold("right", -26, -6, 15, 27, 2500, "stock", "")
	b.do("face.right", "face.right", plan.Face, knife, 0, 680, 0.1, 1)
	b.zero("cross", 30, false)
	b.zero("saddle", 20, false)
	b.cut("cut", b.at(15, 20), b.at(-0.2, 20), nil)

	b.do("bore.main/spot", "main", plan.Spot, "centre_drill/centre_drill", 2.5, 1000, 0, 0)
	b.zero("tailstock", 20, false)
	b.drill("spot", 0, 21, 17)

	b.do("bore.main/drill", "main", plan.Drill, "drills/drills", 9.8, 1000, 0.1, 4.9)
	b.zero("tailstock", 20, false)
	b.drill("pilot", 5, 21, -6)
	b.drill("drill", 9.8, 21, -6)

	b.do("bore.main/ream", "main", plan.Ream, "reamers/reamers", 10, 450, 0.2, 0.2)
	b.zero("tailstock", 20, false)
	b.drill("ream", 0, 21, -3)

	b.do("flange.rim/turn", "rim", plan.TurnFinish, knife, 0, 680, 0.1, 1)
	b.zero("cross", 30, false)
	b.zero("saddle", 20, false)
	b.turn("cut", 14, 21, -2.5, nil)

	b.do("spigot.body/rough", "body", plan.TurnRough, knife, 0, 680, 0.1, 1)
	b.zero("cross", 28, false)
	b.zero("saddle", 20, false)
	b.turn("rough 1", 13, 21, 4.2, nil)
	b.turn("rough 2", 12, 21, 4.2, nil)
	b.turn("rough 3", 11, 21, 4.2, nil)
	b.turn("rough 4", 10.3, 21, 4.2, nil)

	b.do("spigot.body/turn", "body", plan.TurnFinish, knife, 0, 1000, 0.05, 0.4)
	b.zero("cross", 20.6, false)
	b.zero("saddle", 20, false)
	b.turn("finish", 10, 21, 4, &plan.Measured{What: "diameter", LowMM: 19.95, HighMM: 20})
	b.cut("shoulder", b.at(10, 4), b.at(15, 4), nil)
	b.op.Checks = []plan.Check{{What: "body, diameter", Feature: "body", LowMM: 19.95, HighMM: 20, Instrument: "micrometer"}}

	b.do("part/part_off", "part", plan.PartOff, parting, 0, 300, 0.03, 0)
	b.zero("cross", 28, false)
	b.zero("saddle", 20, false)
	b.cut("part off", b.at(14.2, -2.5), b.at(4.8, -2.5), nil)

	b.hold("left", 6, 20, 10, 6.5, 1500, "body", "copper strip")
	b.do("face.left", "face.left", plan.Face, knife, 0, 680, 0.1, 1)
	b.zero("cross", 28, false)
	b.zero("saddle", -0.5, false)
	b.cut("to length", b.at(14, 0), b.at(4.8, 0), &plan.Measured{What: "position", LowMM: -0.1, HighMM: 0.1})
	return b
}

func proves(t *testing.T, b *bench) plan.Proof {
	t.Helper()
	proofs, failures := Prove(b.job, b.plan())
	for _, f := range failures {
		t.Error(f.String())
	}
	return proofs[b.part.Name]
}
