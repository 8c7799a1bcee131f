package replay

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
)

// slid moves an operation to the front of another setup.
func slid(id string, setup int) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		o := *op(t, p, id)
		drop(id)(t, p)
		s := &p.Parts[0].Setups[setup-1]
		s.Operations = slices.Insert(s.Operations, 0, o)
		renumber(p)
	}
}

// turnedBy moves a reading of every cut of an operation, and with it the card and the table.
func turnedBy(id, dial string, by int64) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		o := op(t, p, id)
		for c := range o.Cuts {
			for _, list := range [][]plan.Reading{o.Cuts[c].From, o.Cuts[c].To} {
				for i := range list {
					if list[i].Dial == dial {
						list[i].Graduations += by
					}
				}
			}
		}
		for i := range o.Card {
			if o.Card[i].Dial == dial {
				o.Card[i].Total += by
				retable(&o.Card[i])
			}
		}
	}
}

// retable writes a card line anew from its total, as the built-in workshop's mill has it.
func retable(l *plan.Line) {
	graduation := map[string]float64{"x": 0.02, "y": 0.02, "quill": 0.05}[l.Dial]
	turn := map[string]int64{"x": 100, "y": 100, "quill": 50}[l.Dial]
	l.Counted, l.Turns, l.Marks = l.Total >= 0, 0, l.Total
	if l.Counted {
		l.Turns, l.Marks = l.Total/turn, l.Total%turn
	}
	l.Reading = mm(float64(l.Total)*graduation) + " mm"
}

func plateCorruptions() []corruption {
	return []corruption{
		{"drop the saw", drop("outline/saw"), ""},
		{"drop an edge", drop("right/mill"), "finished part"},
		{"drop a datum edge", drop("left/mill"), "most metal"},
		{"drop the spots", drop("fixing/spot"), "start"},
		{"drop the drill of the holes", drop("fixing/drill"), "most metal"},
		{"drop the drill of the bore", drop("main/drill"), "start"},
		{"drop the boring", drop("main/bore"), "most metal"},
		{"drop the taps", drop("fixing/tap"), "finished part"},
		{"drop a hole", change("fixing/drill", func(o *plan.Operation) { o.Cuts, o.Passes = o.Cuts[:1], 1 }), "most metal"},
		{"drop a tapped hole", change("fixing/tap", func(o *plan.Operation) { o.Cuts, o.Passes = o.Cuts[:1], 1 }), "finished part"},
		{"drop a pass of the boring head", change("main/bore", func(o *plan.Operation) {
			o.Cuts, o.Passes = slices.Delete(o.Cuts, 2, 3), len(o.Cuts)-1
		}), "depth of cut"},
		{"drill before the spot", swap("fixing/spot", "fixing/drill"), "start"},
		{"bore before the drill", swap("main/drill", "main/bore"), "start"},
		{"tap before the drill", swap("fixing/drill", "fixing/tap"), "start"},
		{"holes before the datum edge", slid("fixing/spot", 2), "zero"},

		{"an edge too far in", turnedBy("right/mill", "x", -40), "least metal"},
		{"an edge too far out", turnedBy("right/mill", "x", 40), "most metal"},
		{"a datum edge too far in", turnedBy("bottom/mill", "y", 60), ""},
		{"an edge not through", turnedBy("top/mill", "quill", -30), "most metal"},
		{"an edge too short", change("top/mill", func(o *plan.Operation) { o.Cuts[0].To[0].Graduations += 1000 }), "most metal"},
		{"a hole off its place", turnedBy("fixing/drill", "x", 30), ""},
		{"a hole off its place, spot and all", func(t *testing.T, p *plan.Plan) {
			turnedBy("fixing/spot", "y", 30)(t, p)
			turnedBy("fixing/drill", "y", 30)(t, p)
		}, "place"},
		{"mirrored", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Setups[3].FreeEnd = "left" }, ""},
		{"not drilled through", turnedBy("fixing/drill", "quill", -80), "most metal"},
		{"drilled into the vice", turnedBy("fixing/drill", "quill", 400), "bed"},
		{"another drill", change("fixing/drill", func(o *plan.Operation) { o.Tool.SizeMM = 3.6 }), "least metal"},
		{"a smaller drill", change("fixing/drill", func(o *plan.Operation) { o.Tool.SizeMM = 3 }), "most metal"},
		{"another end mill", change("right/mill", func(o *plan.Operation) { o.Tool.SizeMM = 12 }), "least metal"},
		{"a tool that is not owned", change("right/mill", func(o *plan.Operation) { o.Tool.ID = "end_mill/other" }), "tool"},
		{"a drill for an edge", change("right/mill", func(o *plan.Operation) { o.Tool.ID = "drills/drills" }), ""},
		{"a bore too large", change("main/bore", func(o *plan.Operation) { o.Cuts[7].ToMeasure.HighMM = 20.05 }), "least metal"},
		{"a bore too small", change("main/bore", func(o *plan.Operation) { o.Cuts[7].ToMeasure.LowMM = 19.95 }), "most metal"},
		{"swung too fast", change("main/bore", func(o *plan.Operation) { o.RPM, o.WantedRPM = 600, 600 }), "speed"},
		{"swung wider than the head", change("main/bore", func(o *plan.Operation) { o.Cuts[6].ToolSizeMM = 70 }), "tool"},
		{"other taps", change("fixing/tap", func(o *plan.Operation) { o.Tool.ID = "drills/drills" }), "tool"},
		{"tapped half through", turnedBy("fixing/tap", "quill", -80), "depth"},
		{"tapped with the lead still in the hole", turnedBy("fixing/tap", "quill", -40), "depth"},
		{"sawn too far in", change("outline/saw", func(o *plan.Operation) { o.Edges[0].LeftMM = 0.2 }), ""},
		{"sawn more surely than a saw", change("outline/saw", func(o *plan.Operation) { o.Edges[0].WithinMM = 0.05 }), "edges"},
		{"sawn along no edge", change("outline/saw", func(o *plan.Operation) { o.Edges[0].Edge = "rim" }), "edges"},

		{"zero where no edge is", change("left/mill", func(o *plan.Operation) { o.Zeros[0].ReferenceMM = -3 }), "zero"},
		{"the place found too surely", held(4, func(s *plan.Setup) { s.LocateMM = 0.001 }), "located"},
		{"the place found too badly", held(4, func(s *plan.Setup) { s.LocateMM = 0.5 }), "place"},
		{"a jaw where no edge is", held(3, func(s *plan.Setup) { s.Presses[0].XMM = -2 }), "grip"},
		{"a jaw in the work", held(3, func(s *plan.Setup) { s.Presses[0].XMM = 5 }), "grip"},
		{"one jaw", held(3, func(s *plan.Setup) { s.Presses = s.Presses[:1] }), "grip"},
		{"jaws in the cutter's way", held(3, func(s *plan.Setup) {
			s.Presses[0].YMM, s.Presses[1].YMM, s.Presses[0].WidthMM, s.Presses[1].WidthMM, s.Grip.JawWidthMM = 5, 5, 10, 10, 10
		}), "clearance"},
		{"gripped too low", held(3, func(s *plan.Setup) { s.Grip.ToZ = 1 }), "grip"},
		{"gripped too lightly", held(2, func(s *plan.Setup) { s.Grip.WorkingN = 300 }), "grip force"},
		{"gripped beyond the vice", held(2, func(s *plan.Setup) { s.Grip.WorkingN = 9000 }), "grip force"},
		{"a parallel under a hole", held(4, func(s *plan.Setup) { s.Bed.Under[0] = plan.Strip{X0: 2, Y0: 2, X1: 14, Y1: 14} }), "bed"},
		{"a parallel under air", held(4, func(s *plan.Setup) { s.Bed.Under[0] = plan.Strip{X0: -20, Y0: 2, X1: -10, Y1: 14} }), "bed"},
		{"nothing clear below", held(4, func(s *plan.Setup) { s.Bed.GapMM = 0 }), "bed"},
		{"no bed", held(4, func(s *plan.Setup) { s.Bed = nil }), "bed"},
		{"a vice in the lathe", held(4, func(s *plan.Setup) { s.Machine, s.MachineKind = "lathe", "lathe" }), "holding"},
		{"a grip that no vice has", held(4, func(s *plan.Setup) { s.Grip.Kind = "magnet" }), "grip"},
		{"no step of the machine", change("right/mill", func(o *plan.Operation) { o.RPM = 600 }), "speed"},
		{"faster than the metal is cut", change("right/mill", func(o *plan.Operation) { o.RPM, o.WantedRPM = 2200, 2200 }), "speed"},
		{"force belied", change("right/mill", func(o *plan.Operation) { o.ForceN = 50 }), "force"},
		{"deeper than it says", change("right/mill", func(o *plan.Operation) { o.DepthMM = 0.5 }), "depth of cut"},
		{"card line with another total", change("right/mill", func(o *plan.Operation) { o.Card[0].Total++; o.Card[0].Marks++ }), "card"},
		{"a card line forgotten", change("right/mill", func(o *plan.Operation) { o.Card = o.Card[1:] }), "card"},
		{"stock of another thickness", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Stock.Flat.FrontZ = 5 }, "stock"},
		{"stock that is not there", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Stock.Flat.Outline = rectangle(-5, -5, 70, 45) }, "stock"},
		{"stock beside the part", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Stock.Flat.Outline = rectangle(5, -5, 75, 45) }, "stock"},
		{"stock open", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Stock.Flat.Outline[1].X1 = 80 }, "stock"},
		{"no stock", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Stock.Flat = nil }, "stock"},
	}
}

func TestFlatCorruptionsAreRefused(t *testing.T) {
	good := plate(t)
	for _, c := range plateCorruptions() {
		t.Run(c.name, func(t *testing.T) { refuse(t, good.bench, c) })
	}
}

func TestHarmlessFlatChangesPass(t *testing.T) {
	good := plate(t)
	for name, f := range map[string]func(*testing.T, *plan.Plan){
		"a slower step":                change("right/mill", func(o *plan.Operation) { o.RPM = 300 }),
		"other words":                  change("right/mill", func(o *plan.Operation) { o.Title, o.Notes = "Mill it", []string{"with care"} }),
		"a finer feed":                 change("right/mill", func(o *plan.Operation) { o.FeedMM = 0.08 }),
		"bore before the taps":         swap("main/bore", "fixing/tap"),
		"holes after the bore's drill": swap("fixing/drill", "main/drill"),
		"a firmer grip":                held(2, func(s *plan.Setup) { s.Grip.WorkingN = 7000 }),
		"an edge within its limits":    turnedBy("top/mill", "y", 2),
		"drilled a little deeper":      turnedBy("fixing/drill", "quill", 10),
		"shorter jaws": held(4, func(s *plan.Setup) {
			s.Presses[0].WidthMM, s.Presses[1].WidthMM, s.Grip.JawWidthMM = 20, 20, 20
		}),
	} {
		t.Run(name, func(t *testing.T) {
			p := copied(t, good.plan())
			f(t, p)
			_, failures := Prove(good.job, p)
			assert.Empty(t, failures)
		})
	}
}
