package rules_test

import (
	"maps"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// sound is a case to which no rule objects: a stiff bar, well gripped in a three-jaw.
func sound(changes ...func(*rules.Case)) rules.Case {
	c := rules.Case{Holding: partspec.Holding{Kind: partspec.ThreeJaw}, Surface: "stock", Op: shape.Op{Process: plan.TurnFinish},
		Diameter: 30, Length: 18, JawLength: 18, Largest: 30, StickOut: 40, Body: 30, LeastN: 500, LightN: 150, FirmN: 3000}
	for _, f := range changes {
		f(&c)
	}
	return c
}

func in(kind partspec.HoldingKind) func(*rules.Case) {
	return func(c *rules.Case) { c.Holding = partspec.Holding{Kind: kind} }
}

func doing(p plan.Process) func(*rules.Case) { return func(c *rules.Case) { c.Op.Process = p } }

func clamped(f rules.Clamped) func(*rules.Case) { return func(c *rules.Case) { c.Clamped = &f } }

func ledged(l rules.LedgeFacts) func(*rules.Case) {
	return func(c *rules.Case) { c.Ledge = &l }
}

func plated(f rules.PlateFacts) func(*rules.Case) { return func(c *rules.Case) { c.Plate = &f } }

func flat(c *rules.Case) { c.Flat = true }

func viced(f rules.ViceFacts) func(*rules.Case) { return func(c *rules.Case) { c.Vice = &f } }

// holdingCases has for each rule of holding a case that it refuses, and one as near to it that it lets pass.
func holdingCases() map[string]struct{ refused, passed rules.Case } {
	collet := func(d float64) func(*rules.Case) {
		return func(c *rules.Case) {
			c.Holding = partspec.Holding{Kind: partspec.Collets, Sizes: []units.Length{12, 16}, SizeRange: 0.5}
			c.Diameter, c.Length, c.Body = d, 20, d
		}
	}
	onMandrel := func(c *rules.Case) { c.Diameter, c.Length, c.Wall, c.DriveNmm, c.TorqueNmm = 12, 20, 6, 4000, 1000 }
	type both = struct{ refused, passed rules.Case }
	cases := map[string]both{
		"B-45a": {sound(func(c *rules.Case) { c.Gone = true }), sound()},
		"B-45":  {sound(func(c *rules.Case) { c.Cuts = true }), sound()},
		"B-26":  {sound(func(c *rules.Case) { c.Capacity = "Ø90 is over its 80" }), sound()},
		"B-05":  {sound(collet(15.6)), sound(collet(15.8))},
		"B-12": {sound(in(partspec.PlainMandrel), onMandrel, func(c *rules.Case) { c.Length = 8 }),
			sound(in(partspec.PlainMandrel), onMandrel, func(c *rules.Case) { c.Op.Outer = solid.Const(0, 20, 20) })},
		"B-40": {sound(func(c *rules.Case) { c.Thread = true }), sound(in(partspec.StubMandrel), onMandrel, func(c *rules.Case) { c.Thread = true })},
		"B-37": {sound(func(c *rules.Case) { c.Finished, c.Tight = true, 0.03 }), sound(func(c *rules.Case) { c.Finished, c.Tight, c.Packed = true, 0.03, true })},
		"B-44": {sound(in(partspec.FourJaw), func(c *rules.Case) { c.Hexagon = true }), sound(func(c *rules.Case) { c.Hexagon = true })},
		"B-27": {sound(func(c *rules.Case) { c.Length = 9 }), sound(func(c *rules.Case) { c.Length = 15 })},
		"B-28": {sound(func(c *rules.Case) { c.StickOut = 160 }), sound(func(c *rules.Case) { c.StickOut, c.Centre = 160, true })},
		"B-23": {sound(func(c *rules.Case) { c.LobeMM, c.LimitMM = 0.02, 0.016 }), sound(func(c *rules.Case) { c.LobeMM, c.LimitMM = 0.015, 0.016 })},
		"B-13": {sound(in(partspec.ExpandingMandrel), onMandrel, func(c *rules.Case) { c.Wall = 1 }), sound(in(partspec.StubMandrel), onMandrel, func(c *rules.Case) { c.Wall = 1 })},
		"B-42": {sound(func(c *rules.Case) { c.LeastN = 3001 }), sound(func(c *rules.Case) { c.LeastN = 3000 })},
		"B-16": {sound(in(partspec.GluedArbor), onMandrel, doing(plan.Drill)), sound(in(partspec.GluedArbor), onMandrel, doing(plan.Face))},
		"B-07": {sound(in(partspec.TableClamps), clamped(rules.Clamped{Owned: 4, Placed: 3, NeedN: 9001, HaveN: 9000})),
			sound(in(partspec.TableClamps), clamped(rules.Clamped{Owned: 4, Placed: 3, NeedN: 9000, HaveN: 9000}))},
		"B-06": {sound(in(partspec.Faceplate), plated(rules.PlateFacts{Diameter: 160, Reach: 60, OffCentre: 57})), sound(in(partspec.Faceplate), plated(rules.PlateFacts{Diameter: 160, Reach: 60, OffCentre: 56}))},
		"B-09": {sound(in(partspec.Faceplate), plated(rules.PlateFacts{Diameter: 160, MostRPM: 59, Slowest: 60})), sound(in(partspec.Faceplate), plated(rules.PlateFacts{Diameter: 160, MostRPM: 60, Slowest: 60}))},
		"B-10": {sound(in(partspec.AnglePlate), ledged(rules.LedgeFacts{Plate: 170, Owned: 2, Swing: 180, Reach: 91, HaveN: 8000})), sound(in(partspec.AnglePlate), ledged(rules.LedgeFacts{Plate: 170, Owned: 2, Swing: 180, Reach: 90, HaveN: 8000}))},
		"B-04e": {sound(in(partspec.FourJaw), func(c *rules.Case) {
			c.Offset = &rules.OffsetFacts{Throw: 4.1, JawHalf: 4, MostRPM: 500, Slowest: 100, Clock: true}
		}), sound(in(partspec.FourJaw), func(c *rules.Case) {
			c.Offset = &rules.OffsetFacts{Throw: 4, JawHalf: 4, MostRPM: 500, Slowest: 100, Clock: true}
		})},
		"B-04": {sound(in(partspec.FourJaw), flat, func(c *rules.Case) { c.Jaws = &rules.JawFacts{Reach: 46, Capacity: 45} }), sound(in(partspec.FourJaw), flat, func(c *rules.Case) { c.Jaws = &rules.JawFacts{Reach: 45, Capacity: 45} })},
		"B-32": {sound(in(partspec.Vice), slid(rules.SlideFacts{CutterMM: 6, MostMM: 10, DepthMM: 1.6, Collets: true})), sound(in(partspec.Vice), slid(rules.SlideFacts{CutterMM: 6, MostMM: 10, DepthMM: 1.5, Collets: true}))},
		"B-33": {sound(in(partspec.Vice), viced(rules.ViceFacts{Across: 60, Opening: 80, Grip: 3.2, Thick: 10, HaveN: 5000})),
			sound(in(partspec.Vice), viced(rules.ViceFacts{Across: 60, Opening: 80, Grip: 3.4, Thick: 10, HaveN: 5000}))},
		"B-14": {sound(in(partspec.StubMandrel), onMandrel, func(c *rules.Case) { c.TorqueNmm = 4001 }), sound(in(partspec.StubMandrel), onMandrel)},
	}
	maps.Copy(cases, besideHoldingCases())
	return cases
}

// objects reports whether a rule is among those that refuse a case.
func objects(set rules.Set, id string, c rules.Case) bool {
	for _, v := range set.Judge(c) {
		if v.Rule == id {
			return v.Refused && v.Reason != ""
		}
	}
	return false
}

// A verdict that refuses a squeezed web says how much metal would save it.
func TestWasteIsTold(t *testing.T) {
	squeezed := func(waste float64) string {
		c := sound(in(partspec.FourJaw), flat, func(c *rules.Case) { c.LobeMM, c.LimitMM, c.Trust, c.WebMM, c.WasteMM = 0.02, 0.008, "good", 2, waste })
		return rules.All().Judge(c)[0].Reason
	}
	assert.Contains(t, squeezed(5.5), "with 2.0 of metal beside the bore; 0.008 may pass, as with 5.5: 3.5 of waste left on")
	assert.Contains(t, squeezed(math.Inf(1)), "as with no waste that could be left on")
}

// Of thin work half has to lie in the jaws, and they must not bow it.
func TestThinWorkInTheVice(t *testing.T) {
	refused := func(f rules.ViceFacts) bool {
		f.Across, f.Opening, f.HaveN = 60, 80, 5000
		return objects(rules.All(), "B-33", sound(in(partspec.Vice), viced(f)))
	}
	assert.True(t, refused(rules.ViceFacts{Grip: 1.9, Thick: 4}))
	assert.False(t, refused(rules.ViceFacts{Grip: 2, Thick: 4}))
	assert.True(t, refused(rules.ViceFacts{Grip: 2.9, Thick: 7}), "thick work wants 3")
	assert.True(t, refused(rules.ViceFacts{Grip: 3, Thick: 4, SagMM: 0.11}))
	assert.False(t, refused(rules.ViceFacts{Grip: 3, Thick: 4, SagMM: 0.1}))
	assert.True(t, refused(rules.ViceFacts{Grip: 1, Thick: 1.5, NeedN: 901, StandsN: 900}), "the cut asks more than it stands")
	assert.False(t, refused(rules.ViceFacts{Grip: 1, Thick: 1.5, NeedN: 900, NipN: 500, StandsN: 900}))
	assert.True(t, refused(rules.ViceFacts{Grip: 1, Thick: 1.5, NeedN: 100, NipN: 500, StandsN: 400}), "the lightest nip bows it")
}

func TestRulesOfHolding(t *testing.T) {
	require.Empty(t, rules.All().Judge(sound()), "the sound case")
	cases := holdingCases()
	for _, r := range rules.All().Holdings {
		t.Run(r.ID, func(t *testing.T) {
			c, ok := cases[r.ID]
			require.True(t, ok, "the rule has no case: %s", r.Title)
			assert.True(t, objects(rules.All(), r.ID, c.refused))
			assert.False(t, objects(rules.All(), r.ID, c.passed))
			assert.False(t, objects(rules.All().Without(r.ID), r.ID, c.refused), "left out")
		})
	}
	assert.Len(t, cases, len(rules.All().Holdings), "a case for a rule that is not there")
}
