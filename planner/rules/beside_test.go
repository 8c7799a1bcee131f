package rules_test

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

// ring is an operation on a ring of holes through the part, within a place of so much.
func ring(process plan.Process, within float64) shape.Op {
	o := shape.Op{ID: "fixing/" + string(process), Feature: "fixing", Process: process, Stage: shape.Roughing, Z1: 30, Place: within, Spots: []shape.Spot{{X: 15, Radius: 2}}}
	if process == plan.Tap || process == plan.Ream {
		o.Stage = shape.Finishing
	}
	return o
}

// crossing is an operation on a hole square to the axis.
func crossing(process plan.Process) shape.Op {
	return shape.Op{ID: "oil/" + string(process), Feature: "oil", Process: process, Stage: shape.Roughing, Cross: true, Z0: 5, Z1: 9}
}

// besideOrderCases are the cases of rules about what is cut beside the axis.
func besideOrderCases() map[string]struct{ binds, leaves pairing } {
	blind := ring(plan.Drill, 0.2)
	blind.End = partspec.Right
	bore := cut("main", plan.BoreOut, 0, 30, 4.9)
	seat := shape.Op{ID: "pipe/steps", Feature: "pipe", Process: plan.SeatSteps, Stage: shape.Finishing, End: partspec.Left, Z1: 8}
	mark := shape.Op{ID: "pipe/mark", Feature: "pipe", Process: plan.MarkOut, End: partspec.Left}
	spots := ring(plan.MarkOut, 0)
	spots.ID, spots.Feature = "spotted/mark", "spotted"
	square := ring(plan.Drill, 0.2)
	square.ID, square.Feature = "leaning/drill", "leaning"
	return map[string]struct{ binds, leaves pairing }{
		"A-38n": {pairing{seat, square}, pairing{seat, ring(plan.Drill, 0.2)}},
		"A-33":  {pairing{bore, spots}, pairing{bore, ring(plan.MarkOut, 0)}},
		"A-37":  {pairing{cut("main", plan.Drill, 0, 30, 4), seat}, pairing{seat, bore}},
		"A-38":  {pairing{seat, ring(plan.Tap, 0)}, pairing{seat, ring(plan.Drill, 0.2)}},
		"A-22":  {pairing{cut("body", plan.TurnFinish, 0, 20, 10), seat}, pairing{cut("body", plan.TurnFinish, 10, 20, 10), mark}},
		"A-31":  {pairing{crossing(plan.MillFlat), crossing(plan.Drill)}, pairing{crossing(plan.Drill), crossing(plan.MillFlat)}},
		"A-35":  {pairing{bore, crossing(plan.Drill)}, pairing{crossing(plan.Drill), bore}},
		"A-43h": {pairing{face(partspec.Left), ring(plan.Drill, 0.2)}, pairing{face(partspec.Left), blind}},
		"C-24m": {pairing{ring(plan.MarkOut, 0), ring(plan.Drill, 0.2)}, pairing{ring(plan.Drill, 0.2), ring(plan.MarkOut, 0)}},
		"A-44s": {pairing{ring(plan.Drill, 0.2), ring(plan.Countersink, 0.2)}, pairing{ring(plan.Drill, 0.2), ring(plan.Tap, 0)}},
		"A-30":  {pairing{ring(plan.Countersink, 0.2), ring(plan.Tap, 0)}, pairing{ring(plan.Tap, 0), ring(plan.Drill, 0.2)}},
		"A-36":  {pairing{bore, ring(plan.Drill, 0.05)}, pairing{bore, ring(plan.Drill, 0.3)}},
	}
}

// besideHoldingCases are those of holding.
func besideHoldingCases() map[string]struct{ refused, passed rules.Case } {
	lands := func(off float64) func(*rules.Case) {
		return func(c *rules.Case) { c.PlaceOff, c.PlaceAllow = off, 0.2 }
	}
	counts := func(off float64) func(*rules.Case) {
		return func(c *rules.Case) { c.CountOff, c.CountAllow, c.Counted = off, 0.15, 20 }
	}
	return map[string]struct{ refused, passed rules.Case }{
		"A-37b": {sound(func(c *rules.Case) { c.Hollow = true }), sound()},
		"C-24":  {sound(lands(0.21)), sound(lands(0.2))},
		"C-24i": {sound(counts(0.16)), sound(counts(0.15))},
		"B-43":  {sound(in(partspec.VeeBlock), func(c *rules.Case) { c.Lying, c.Length = true, 11 }), sound(in(partspec.VeeBlock), func(c *rules.Case) { c.Lying, c.Length = true, 12 })},
	}
}
