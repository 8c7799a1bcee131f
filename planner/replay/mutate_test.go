package replay

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
)

// copied is a plan of its own.
func copied(t *testing.T, p *plan.Plan) *plan.Plan {
	t.Helper()
	text, err := json.Marshal(p)
	require.NoError(t, err)
	var q plan.Plan
	require.NoError(t, json.Unmarshal(text, &q))
	return &q
}

// op finds an operation of the plan's first part.
func op(t *testing.T, p *plan.Plan, id string) *plan.Operation {
	t.Helper()
	for i := range p.Parts[0].Setups {
		for k := range p.Parts[0].Setups[i].Operations {
			if o := &p.Parts[0].Setups[i].Operations[k]; o.ID == id {
				return o
			}
		}
	}
	require.Fail(t, "no operation", id)
	return nil
}

// drop takes an operation out.
func drop(id string) func(*testing.T, *plan.Plan) {
	return func(_ *testing.T, p *plan.Plan) {
		for i := range p.Parts[0].Setups {
			s := &p.Parts[0].Setups[i]
			s.Operations = slices.DeleteFunc(s.Operations, func(o plan.Operation) bool { return o.ID == id })
		}
		renumber(p)
	}
}

// swap exchanges two operations of one setup.
func swap(a, b string) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		x, y := op(t, p, a), op(t, p, b)
		*x, *y = *y, *x
		renumber(p)
	}
}

// first moves an operation forward in its setup, to the given place.
func first(id string, place int) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		o := *op(t, p, id)
		drop(id)(t, p)
		s := &p.Parts[0].Setups[0]
		s.Operations = slices.Insert(s.Operations, place, o)
		renumber(p)
	}
}

// shift moves every reading of a dial in a cut by some graduations, and with it the card and all that is printed of it.
func shift(id string, cut int, dial string, by int64) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		o := op(t, p, id)
		move := func(list []plan.Reading) {
			for i := range list {
				if list[i].Dial == dial {
					list[i].Graduations += by
				}
			}
		}
		c := &o.Cuts[cut]
		old := slices.Concat(c.From, c.To)
		move(c.From)
		move(c.To)
		for i := range o.Card {
			l := &o.Card[i]
			if slices.Contains(old, plan.Reading{Dial: dial, Graduations: l.Total}) && l.Dial == dial {
				l.Total += by
				relabel(l)
			}
		}
	}
}

// relabel writes a card line anew from its total, as the built-in workshop's dials have it.
func relabel(l *plan.Line) {
	graduation := map[string]float64{"cross": 0.02, "saddle": 0.1, "tailstock": 0.1, "top": 0.02}[l.Dial]
	turn := map[string]int64{"cross": 100, "saddle": 200, "tailstock": 20, "top": 50}[l.Dial]
	l.Counted, l.Turns, l.Marks = l.Total >= 0, 0, l.Total
	if l.Counted {
		l.Turns, l.Marks = l.Total/turn, l.Total%turn
	}
	l.Reading, l.Makes = mm(float64(l.Total)*graduation)+" mm", ""
}

// renumber numbers the operations anew, in their order.
func renumber(p *plan.Plan) {
	n := 0
	for i := range p.Parts[0].Setups {
		for k := range p.Parts[0].Setups[i].Operations {
			n += 10
			p.Parts[0].Setups[i].Operations[k].Number = n
		}
	}
}

// change edits an operation.
func change(id string, f func(*plan.Operation)) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) { f(op(t, p, id)) }
}

// held edits a setup.
func held(n int, f func(*plan.Setup)) func(*testing.T, *plan.Plan) {
	return func(_ *testing.T, p *plan.Plan) { f(&p.Parts[0].Setups[n-1]) }
}

// corruption is a change that must be refused, and the clause that must say so.
type corruption struct {
	name   string
	spoil  func(*testing.T, *plan.Plan)
	clause string
}

func bushCorruptions() []corruption {
	return []corruption{
		{"drop facing", drop("face.right"), ""},
		{"drop the spot", drop("bore.main/spot"), "start"},
		{"drop the drill", drop("bore.main/drill"), "depth of cut"},
		{"drop the pilot", change("bore.main/drill", func(o *plan.Operation) { o.Cuts = o.Cuts[1:]; o.Passes = 1; o.Card = o.Card[1:] }), "force"},
		{"drop the reamer", drop("bore.main/ream"), "most metal"},
		{"drop the rim", drop("flange.rim/turn"), ""},
		{"drop roughing", drop("spigot.body/rough"), ""},
		{"drop the last turning", drop("spigot.body/turn"), "most metal"},
		{"drop parting", drop("part/part_off"), ""},
		{"drop the second face", drop("face.left"), "size"},
		{"drop the second setup", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Setups = p.Parts[0].Setups[:1] }, "size"},

		{"ream before drilling", swap("bore.main/drill", "bore.main/ream"), "depth of cut"},
		{"drill before the spot", swap("bore.main/spot", "bore.main/drill"), "start"},
		{"part off before the last turning", swap("part/part_off", "spigot.body/turn"), "order"},
		{"body before rim", swap("flange.rim/turn", "spigot.body/rough"), "zero"},
		{"spot before facing", swap("face.right", "bore.main/spot"), ""},

		{"rim one mark too deep with size and card", shift("flange.rim/turn", 0, "cross", 21), "least metal"},
		{"body's shoulder off, with card", shift("spigot.body/turn", 0, "saddle", 2), ""},
		{"body's shoulder short, with card", shift("spigot.body/turn", 0, "saddle", -2), ""},
		{"parting into the part", shift("part/part_off", 0, "saddle", -10), ""},
		{"parting not through", func(t *testing.T, p *plan.Plan) {
			o := op(t, p, "part/part_off")
			o.Cuts[0].To[0].Graduations -= 200
			o.Card[0].Total = o.Cuts[0].To[0].Graduations
			relabel(&o.Card[0])
		}, "parting"},
		{"drilled short", change("bore.main/drill", func(o *plan.Operation) { o.Cuts[1].To[0].Graduations -= 60 }), ""},
		{"length measured off the drawing", change("face.left", func(o *plan.Operation) { o.Cuts[0].ToMeasure.LowMM = -0.3 }), "size"},
		{"diameter measured off the drawing", change("spigot.body/turn", func(o *plan.Operation) { o.Cuts[0].ToMeasure.HighMM = 20.01 }), "most metal"},
		{"diameter measured under the drawing", change("spigot.body/turn", func(o *plan.Operation) { o.Cuts[0].ToMeasure.LowMM = 19.94 }), "least metal"},
		{"a range too fine to measure", change("spigot.body/turn", func(o *plan.Operation) { o.Cuts[0].ToMeasure.LowMM = 19.995 }), "measure"},
		{"card line with another total", change("flange.rim/turn", func(o *plan.Operation) { o.Card[0].Total++; o.Card[0].Marks++ }), "card"},
		{"card turns that do not add up", change("spigot.body/rough", func(o *plan.Operation) { o.Card[0].Turns++ }), "card"},
		{"card figure wrong", change("flange.rim/turn", func(o *plan.Operation) { o.Card[0].Reading = "2.2 mm" }), "card"},
		{"card reads radius", change("flange.rim/turn", func(o *plan.Operation) { o.Card[0].Reads = "radius" }), "card"},
		{"card promises another size", change("flange.rim/turn", func(o *plan.Operation) { o.Card[0].Makes = "Ø28.1 mm" }), "card"},
		{"limits to measure by", change("spigot.body/turn", func(o *plan.Operation) { o.Checks[0].HighMM = 20.05 }), "check"},
		{"an instrument that is not owned", change("spigot.body/turn", func(o *plan.Operation) { o.Checks[0].Instrument = "laser" }), "check"},
		{"another material", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Material = "aluminium-6082" }, "part"},
		{"another quantity", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Quantity = 3 }, "part"},
		{"card line forgotten", change("flange.rim/turn", func(o *plan.Operation) { o.Card = o.Card[1:] }), "card"},
		{"one pass more than cuts", change("spigot.body/rough", func(o *plan.Operation) { o.Passes++ }), "passes"},
		{"one rough cut left out", change("spigot.body/rough", func(o *plan.Operation) {
			o.Cuts, o.Card, o.Passes = slices.Delete(o.Cuts, 1, 2), slices.Delete(o.Card, 2, 4), 3
		}), "depth of cut"},

		{"nought of the cross slide moved", change("flange.rim/turn", func(o *plan.Operation) { o.Zeros[0].ReferenceMM = 29.5 }), "zero"},
		{"nought of the saddle moved", change("flange.rim/turn", func(o *plan.Operation) { o.Zeros[1].ReferenceMM = 19 }), "zero"},
		{"nought of the tailstock moved", change("bore.main/drill", func(o *plan.Operation) { o.Zeros[0].ReferenceMM = 21 }), "zero"},
		{"nought turned round", change("flange.rim/turn", func(o *plan.Operation) { o.Zeros[0].Outward = true }), ""},
		{"nought of a lathe's dial wound back", change("flange.rim/turn", func(o *plan.Operation) { o.Zeros[0].WoundBack = 1 }), "zero"},
		{"guide of a measured length", shift("face.left", 0, "saddle", 20), "measure"},
		{"guide of a measured diameter", shift("spigot.body/turn", 0, "cross", 20), "measure"},
		{"nought forgotten", change("flange.rim/turn", func(o *plan.Operation) { o.Zeros = o.Zeros[:1] }), "zero"},
		{"nought set twice", change("flange.rim/turn", func(o *plan.Operation) { o.Zeros = append(o.Zeros, o.Zeros[0]) }), "zero"},

		{"a tool that is not owned", change("flange.rim/turn", func(o *plan.Operation) { o.Tool.ID = "turning/other" }), "tool"},
		{"a drill that is not owned", change("bore.main/drill", func(o *plan.Operation) { o.Cuts[1].ToolSizeMM = 9.85 }), "tool"},
		{"another drill", change("bore.main/drill", func(o *plan.Operation) { o.Cuts[1].ToolSizeMM = 10.2 }), ""},
		{"a smaller reamer", change("bore.main/ream", func(o *plan.Operation) { o.Tool.SizeMM = 9 }), ""},
		{"a larger reamer", change("bore.main/ream", func(o *plan.Operation) { o.Tool.SizeMM = 11 }), ""},
		{"a left-hand tool", change("spigot.body/turn", func(o *plan.Operation) { o.Tool.ID = "turning/left-hand knife tool" }), ""},
		{"a parting tool for turning", change("face.right", func(o *plan.Operation) { o.Tool.ID = parting }), "tool"},

		{"grip cut shorter", held(1, func(s *plan.Setup) { s.Grip.FromZ = -10 }), "grip"},
		{"grip moved under the parting tool", held(1, func(s *plan.Setup) { s.Grip.FromZ, s.Grip.ToZ, s.StickOutMM = -23, -3, 24 }), "clearance"},
		{"grip beyond the stock", held(1, func(s *plan.Setup) { s.Grip.FromZ = -40 }), "grip"},
		{"grip of another diameter", held(2, func(s *plan.Setup) { s.Grip.RadiusMM = 14 }), "grip"},
		{"grip on the flange that is faced", held(2, func(s *plan.Setup) { s.Grip.FromZ = 2 }), "grip"},
		{"grip too light", held(1, func(s *plan.Setup) { s.Grip.WorkingN = 300 }), "grip force"},
		{"grip beyond the chuck", held(1, func(s *plan.Setup) { s.Grip.WorkingN = 4000 }), "grip force"},
		{"bare jaws on finished work", held(2, func(s *plan.Setup) { s.Grip.Packing = "" }), "bare jaws"},
		{"stick-out belied", held(1, func(s *plan.Setup) { s.StickOutMM = 10 }), "stick-out"},
		{"run-out belied", held(2, func(s *plan.Setup) { s.RunOutMM = 0.02 }), "run-out"},
		{"located on something else", held(2, func(s *plan.Setup) { s.Locates = "rim" }), "located on"},
		{"located on raw stock", held(2, func(s *plan.Setup) { s.Locates = "stock" }), "located on"},
		{"other end outward", held(2, func(s *plan.Setup) { s.FreeEnd = "right" }), ""},
		{"a holding that is not owned", held(1, func(s *plan.Setup) { s.Holding = "vice" }), "holding"},
		{"a holding that grips otherwise", held(1, func(s *plan.Setup) { s.Holding, s.HoldingKind = "collets", "collets" }), "grip"},
		{"clamps of a mill's table on the lathe", held(1, func(s *plan.Setup) { s.Holding, s.HoldingKind = "table_clamps", "table_clamps" }), "grip"},
		{"lying across in a lathe", held(1, func(s *plan.Setup) { s.Across = true }), "pose"},
		{"turned round its axis", held(1, func(s *plan.Setup) { s.AcrossDeg = 30 }), "pose"},
		{"a machine that is not owned", held(1, func(s *plan.Setup) { s.Machine = "big lathe" }), "machine"},

		{"no step of the machine", change("flange.rim/turn", func(o *plan.Operation) { o.RPM = 700 }), "speed"},
		{"faster than wanted", change("flange.rim/turn", func(o *plan.Operation) { o.RPM = 1000 }), "speed"},
		{"faster than the metal is cut", change("flange.rim/turn", func(o *plan.Operation) { o.RPM, o.WantedRPM = 1500, 1500 }), "speed"},
		{"deeper than it says", change("flange.rim/turn", func(o *plan.Operation) { o.DepthMM = 0.5 }), "depth of cut"},
		{"force belied", change("spigot.body/rough", func(o *plan.Operation) { o.ForceN = 50 }), "force"},

		{"stock too thin on the list", func(_ *testing.T, p *plan.Plan) { p.Parts[0].Stock.LengthMM = 20 }, "stock"},
		{"setups misnumbered", held(2, func(s *plan.Setup) { s.Number = 3 }), "order"},
		{"part left out", func(_ *testing.T, p *plan.Plan) { p.Parts = nil }, "part"},
		{"part planned twice", func(_ *testing.T, p *plan.Plan) { p.Parts = append(p.Parts, p.Parts[0]) }, "part"},
	}
}

// Every corruption is refused, and by the clause that is about it where one is named.
func TestCorruptionsAreRefused(t *testing.T) {
	good := bush(t)
	for _, c := range bushCorruptions() {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}

func refuse(t *testing.T, good *bench, c corruption) {
	t.Helper()
	p := copied(t, good.plan())
	c.spoil(t, p)
	proofs, failures := Prove(good.job, p)
	require.NotEmpty(t, failures, "nothing was refused")
	if len(p.Parts) < 2 {
		assert.Empty(t, proofs)
	}
	if c.clause == "" {
		return
	}
	var clauses []string
	for _, f := range failures {
		clauses = append(clauses, f.Clause)
	}
	assert.Contains(t, clauses, c.clause, "%v", failures)
}

// harmless are changes that alter nothing that matters; each must still be proved.
func TestHarmlessChangesPass(t *testing.T) {
	good := bush(t)
	for name, f := range map[string]func(*testing.T, *plan.Plan){
		"a feed within its range":       change("flange.rim/turn", func(o *plan.Operation) { o.FeedMM = 0.08 }),
		"a slower step":                 change("flange.rim/turn", func(o *plan.Operation) { o.RPM = 450 }),
		"other words":                   change("flange.rim/turn", func(o *plan.Operation) { o.Title, o.Notes = "Turn it", []string{"with care"} }),
		"minutes":                       change("flange.rim/turn", func(o *plan.Operation) { o.Minutes = 99 }),
		"rim before the bore":           first("flange.rim/turn", 1),
		"a firmer grip":                 held(1, func(s *plan.Setup) { s.Grip.WorkingN = 2600 }),
		"a narrower range to measure":   change("face.left", func(o *plan.Operation) { o.Cuts[0].ToMeasure.LowMM = -0.05 }),
		"a larger force than there is":  change("flange.rim/turn", func(o *plan.Operation) { o.ForceN = 900 }),
		"a deeper limit than is needed": change("flange.rim/turn", func(o *plan.Operation) { o.DepthMM = 1.5 }),
		"a larger run-out":              held(2, func(s *plan.Setup) { s.RunOutMM = 0.2 }),
		"drilled a little deeper": func(t *testing.T, p *plan.Plan) {
			shift("bore.main/drill", 0, "tailstock", 5)(t, p)
			shift("bore.main/drill", 1, "tailstock", 5)(t, p)
		},
	} {
		t.Run(name, func(t *testing.T) {
			p := copied(t, good.plan())
			f(t, p)
			_, failures := Prove(good.job, p)
			assert.Empty(t, failures)
		})
	}
}

// Nothing in a plan makes the replay panic: empty setups, readings of no dial, figures that are no numbers' worth.
func TestStrangePlansAreRefusedInWords(t *testing.T) {
	good := bush(t)
	for name, f := range map[string]func(*testing.T, *plan.Plan){
		"no setups":       func(_ *testing.T, p *plan.Plan) { p.Parts[0].Setups = nil },
		"empty operation": change("face.right", func(o *plan.Operation) { o.Cuts = nil }),
		"no readings":     change("face.right", func(o *plan.Operation) { o.Cuts[0].From, o.Cuts[0].To = nil, nil }),
		"unknown dial":    change("face.right", func(o *plan.Operation) { o.Cuts[0].To[0].Dial = "wheel" }),
		"unknown process": change("face.right", func(o *plan.Operation) { o.Process = "dance" }),
		"unknown end":     held(1, func(s *plan.Setup) { s.FreeEnd = "up" }),
		"unknown grip":    held(1, func(s *plan.Setup) { s.Grip.Kind = "magnet" }),
		"huge counts":     shift("face.right", 0, "saddle", 1<<40),
		"stock inside out": func(_ *testing.T, p *plan.Plan) {
			p.Parts[0].Stock.LeftZ, p.Parts[0].Stock.RightZ = 21, -30
		},
		"measured what": change("face.left", func(o *plan.Operation) { o.Cuts[0].ToMeasure.What = "weight" }),
		"no part":       func(_ *testing.T, p *plan.Plan) { p.Parts[0].Name = "other" },
	} {
		t.Run(name, func(t *testing.T) {
			p := copied(t, good.plan())
			f(t, p)
			_, failures := Prove(good.job, p)
			assert.NotEmpty(t, failures)
		})
	}
}
