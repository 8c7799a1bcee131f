package replay

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

func TestRingOfHolesIsProved(t *testing.T) {
	assert.Equal(t, 22, proves(t, flangedBush(t)).Cuts)
}

// shiftHole moves a hole of the table, and every cut that stands at it, by some graduations: readings and lines together.
func shiftHole(id string, number int, dial string, by int64) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		o := op(t, p, id)
		for i := range o.Holes {
			h := &o.Holes[i]
			if h.Number != number {
				continue
			}
			x, y := h.X.Total, h.Y.Total
			for k := range o.Cuts {
				if c := countsOf(o.Cuts[k]); c[dialX][1] == x && c[dialY][1] == y {
					moveReadings(o.Cuts[k].From, dial, by)
					moveReadings(o.Cuts[k].To, dial, by)
				}
			}
			l := &h.X
			if dial == dialY {
				l = &h.Y
			}
			l.Total += by
			relabelMill(l)
		}
	}
}

func moveReadings(list []plan.Reading, dial string, by int64) {
	for i := range list {
		if list[i].Dial == dial {
			list[i].Graduations += by
		}
	}
}

// relabelMill writes a line anew from its total.
func relabelMill(l *plan.Line) {
	graduation := map[string]float64{dialX: 0.02, dialY: 0.02, dialQuill: 0.05}[l.Dial]
	turn := map[string]int64{dialX: 100, dialY: 100, dialQuill: 40}[l.Dial]
	l.Counted, l.Turns, l.Marks = l.Total >= 0, 0, l.Total
	if l.Counted {
		l.Turns, l.Marks = l.Total/turn, l.Total%turn
	}
	l.Reading, l.Makes = mm(float64(l.Total)*graduation)+" mm", ""
}

// deeper moves the end of some cuts of an operation along the spindle, with the card.
func deeper(id string, from, to int, by int64) func(*testing.T, *plan.Plan) {
	return func(t *testing.T, p *plan.Plan) {
		o := op(t, p, id)
		old := countsOf(o.Cuts[from])[dialQuill][1]
		for i := from; i < to; i++ {
			moveReadings(o.Cuts[i].To, dialQuill, by)
		}
		for i := range o.Card {
			if o.Card[i].Dial == dialQuill && o.Card[i].Total == old {
				o.Card[i].Total += by
				relabelMill(&o.Card[i])
			}
		}
	}
}

const ringID = "holes.ring/drill"

func edit(f func(*plan.Operation)) func(*testing.T, *plan.Plan) { return change(ringID, f) }

// cutsOut leaves some cuts of the ring out.
func cutsOut(from, to int) func(*plan.Operation) {
	return func(o *plan.Operation) { o.Cuts = slices.Delete(o.Cuts, from, to); o.Passes = len(o.Cuts) }
}

func ringCorruptions() []corruption {
	return []corruption{
		{"the ring left out", drop(ringID), "finished part"},
		{"a hole left out, with its line", edit(func(o *plan.Operation) {
			cutsOut(7, 8)(o)
			cutsOut(3, 4)(o)
			o.Holes = o.Holes[:3]
		}), "finished part"},
		{"a hole only spotted", edit(cutsOut(7, 8)), "finished part"},
		{"a hole not spotted", edit(cutsOut(3, 4)), "start"},
		{"no spots", edit(cutsOut(0, 4)), "start"},
		{"spotted after drilling", edit(func(o *plan.Operation) { o.Cuts = append(o.Cuts[4:], o.Cuts[:4]...) }), "start"},
		{"a hole drilled twice", edit(func(o *plan.Operation) { o.Cuts = append(o.Cuts, o.Cuts[7]); o.Passes++ }), "removes metal"},
		{"a hole moved, with its line", shiftHole(ringID, 2, dialY, 12), "place"},
		{"a hole moved the other way", shiftHole(ringID, 1, dialX, -12), "place"},
		{"a hole moved out of the pattern", shiftHole(ringID, 1, dialX, -200), "place"},
		{"a cut moved alone", edit(func(o *plan.Operation) { moveReadings(o.Cuts[5].To, dialX, 5) }), "table"},
		{"lines of two holes exchanged", edit(func(o *plan.Operation) {
			o.Holes[0].X, o.Holes[1].X, o.Holes[0].Y, o.Holes[1].Y = o.Holes[1].X, o.Holes[0].X, o.Holes[1].Y, o.Holes[0].Y
		}), "table"},
		{"numbers of two holes exchanged", edit(func(o *plan.Operation) { o.Holes[0].Number, o.Holes[1].Number = 2, 1 }), "table"},
		{"x and y exchanged in one hole", edit(func(o *plan.Operation) {
			h := &o.Holes[0]
			h.X.Total, h.Y.Total = h.Y.Total, h.X.Total
			relabelMill(&h.X)
			relabelMill(&h.Y)
		}), "table"},
		{"another drill", edit(func(o *plan.Operation) {
			o.Tool.SizeMM, o.Tool.Text = 3.3, "3.3 mm drill"
			for i := 4; i < 8; i++ {
				o.Cuts[i].ToolSizeMM = 3.3
			}
		}), "size"},
		{"a drill that is not owned", edit(func(o *plan.Operation) { o.Cuts[5].ToolSizeMM = 2.6 }), "tool"},
		{"an end mill for a drill", edit(func(o *plan.Operation) { o.Tool.ID = "end_mill/cutters" }), "tool"},
		{"not through", deeper(ringID, 4, 8, -30), "most metal"},
		{"into the jaws", deeper(ringID, 4, 8, 60), "clearance"},
		{"depth off the card", edit(func(o *plan.Operation) { moveReadings(o.Cuts[5].To, dialQuill, 1) }), "card"},
		{"setting claimed without error", held(3, func(s *plan.Setup) { s.LocateMM = 0 }), "located"},
		{"setting that may be a tenth off", held(3, func(s *plan.Setup) { s.LocateMM = 0.15 }), "place"},
		{"nought of x moved", edit(func(o *plan.Operation) { o.Zeros[0].ReferenceMM = 1 }), "zero"},
		{"nought of x on the rim", edit(func(o *plan.Operation) { o.Zeros[0].ReferenceMM = 14 }), "zero"},
		{"nought of x wound back", edit(func(o *plan.Operation) { o.Zeros[0].WoundBack = 1 }), "zero"},
		{"nought of the quill moved", edit(func(o *plan.Operation) { o.Zeros[2].ReferenceMM = -3 }), "zero"},
		{"no nought of y", edit(func(o *plan.Operation) { o.Zeros = slices.Delete(o.Zeros, 1, 2) }), "zero"},
		{"other end up", held(3, func(s *plan.Setup) { s.FreeEnd = "right" }), ""},
		{"lying across", held(3, func(s *plan.Setup) { s.Across = true }), "zero"},
		{"on the lathe", held(3, func(s *plan.Setup) { s.Machine, s.MachineKind = "lathe", "lathe" }), ""},
		{"a machine that is not owned", held(3, func(s *plan.Setup) { s.Machine = "big mill" }), "machine"},
		{"too light a grip", held(3, func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = 2, 2 }), "grip force"},
		{"nothing under the work", held(3, func(s *plan.Setup) { s.Bed, s.Grip.WorkingN = nil, 300 }), "grip force"},
		{"a clamp over a hole", held(3, func(s *plan.Setup) { s.Clamps = []plan.Clamp{{XMM: 12, YMM: 3, ToeMM: 4, AngleDeg: 90, StudMM: 10}} }), "clearance"},
		{"a strap over a hole", held(3, func(s *plan.Setup) { s.Clamps = []plan.Clamp{{XMM: 5, YMM: 0, ToeMM: 4, AngleDeg: 0, StudMM: 10}} }), "clearance"},
		{"too fast", edit(func(o *plan.Operation) { o.RPM, o.WantedRPM = 1600, 800 }), "speed"},
		{"no step of the mill", edit(func(o *plan.Operation) { o.RPM = 1500 }), "speed"},
		{"force belied", edit(func(o *plan.Operation) { o.ForceN = 5 }), "force"},
		{"a chord that is not", edit(func(o *plan.Operation) { o.Chords[0].DistanceMM, o.Chords[0].OverMM = 23.9, 26.4 }), "table"},
		{"a check against other limits", edit(func(o *plan.Operation) {
			o.Checks = []plan.Check{{What: "ring, diameter", Feature: "ring", LowMM: 2.4, HighMM: 2.7}}
		}), "check"},
		{"for another feature", edit(func(o *plan.Operation) { o.Feature = "body" }), "machine"},
		{"tapped, undrawn", edit(func(o *plan.Operation) { o.Process = plan.Tap }), "thread"},
	}
}

func TestCorruptRingsAreRefused(t *testing.T) {
	good := flangedBush(t)
	for _, c := range ringCorruptions() {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}

// What changes nothing that matters about a ring must still be proved.
func TestHarmlessChangesOfARingPass(t *testing.T) {
	good := flangedBush(t)
	for name, f := range map[string]func(*testing.T, *plan.Plan){
		"a little deeper":        deeper(ringID, 4, 8, 6),
		"spots a little deeper":  deeper(ringID, 0, 4, 4),
		"hole by hole":           edit(func(o *plan.Operation) { o.Cuts[1], o.Cuts[2] = o.Cuts[2], o.Cuts[1] }),
		"lines in another order": edit(func(o *plan.Operation) { o.Holes[0], o.Holes[1] = o.Holes[1], o.Holes[0] }),
		"other words":            edit(func(o *plan.Operation) { o.Title, o.Tool.Text = "Holes", "drill" }),
		"a setting not so sure":  held(3, func(s *plan.Setup) { s.LocateMM = 0.05 }),
		"a firmer grip":          held(3, func(s *plan.Setup) { s.Grip.WorkingN = 2600 }),
		"a clamp elsewhere": held(3, func(s *plan.Setup) {
			s.Clamps = []plan.Clamp{{XMM: 7, YMM: 7, ToeMM: 2, AngleDeg: 45, StudMM: 10}}
		}),
		"noughts wound back": edit(func(o *plan.Operation) {
			for i := range 2 {
				o.Zeros[i].WoundBack = 10
			}
			o.Zeros[0].ReferenceMM, o.Zeros[1].ReferenceMM = 20, -20 // the left end is up: x counts the other way
			for i := range o.Cuts {
				for _, list := range [][]plan.Reading{o.Cuts[i].From, o.Cuts[i].To} {
					moveReadings(list, dialX, 1000)
					moveReadings(list, dialY, 1000)
				}
			}
			for i := range o.Holes {
				o.Holes[i].X.Total += 1000
				o.Holes[i].Y.Total += 1000
				relabelMill(&o.Holes[i].X)
				relabelMill(&o.Holes[i].Y)
			}
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

// A ring's place about a bore is the error of its holes, both ways, and what the surface that the dials are set by runs out to that bore.
func TestPositionOfARing(t *testing.T) {
	for name, c := range map[string]struct {
		zone    float64
		to      string
		refused bool
	}{
		"about what is clocked":            {0.2, "body", false}, // 0.08 of the drill and 0.01 of the clock, both ways
		"too close":                        {0.17, "body", true},
		"about the bore, cut with it":      {0.2, "main", false},
		"about the bore, too close for it": {0.182, "main", true},
	} {
		b := flangedBush(t)
		part := *b.job.Parts[0]
		part.Relations = append(slices.Clone(part.Relations), partspec.Relation{Kind: partspec.Position, Of: partspec.Surface{Feature: "ring"}, To: partspec.Surface{Feature: c.to}, Within: lengthOf(c.zone)})
		b.job.Parts = []*partspec.Part{&part}
		_, failures := Prove(b.job, b.plan())
		if !c.refused {
			assert.Empty(t, failures, name)
			continue
		}
		if assert.Len(t, failures, 1, name) {
			assert.Equal(t, "relation", failures[0].Clause, name)
		}
	}
}
