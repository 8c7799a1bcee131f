package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// checkShownPass holds that what decides a pass is on the card or in the table of holes: what stands still in it, and where it ends, unless it runs out into
// the air there.
func (w *walk) checkShownPass(op plan.Operation, m pass, runsOut bool) {
	for _, name := range dialsOf(m.counts) {
		c := m.counts[name]
		if c[1] == 0 || c[0] != c[1] && runsOut || onCard(op, name, c[1]) || onTable(op, name, c[1]) {
			continue
		}
		w.failOp("card", "cut %q takes the %s dial to %d; neither the card nor the table says so", m.name, name, c[1])
	}
}

func onTable(op plan.Operation, dial string, total int64) bool {
	for _, h := range op.Holes {
		if h.X.Dial == dial && h.X.Total == total || h.Y.Dial == dial && h.Y.Total == total || h.Head != nil && dial == plan.HeadDial && h.Head.Total == total {
			return true
		}
	}
	return false
}

// checkTable holds that the table of holes is what the cuts do, line for line: each line stands where a cut stands, its readings are those of the cut, and
// what it says of the place is what they give to the nearest graduation.
func (w *walk) checkTable(op plan.Operation, passes []pass) {
	if len(op.Holes) == 0 {
		return
	}
	numbers := map[int]bool{}
	for _, h := range op.Holes {
		if numbers[h.Number] {
			w.failOp("table", "hole %d stands in it twice", h.Number)
		}
		numbers[h.Number] = true
		if !w.checkHoleLine(op, h, passes) {
			w.failOp("table", "hole %d is said to lie at %s, %s, and no cut stands there", h.Number, mm(h.XMM), mm(h.YMM))
		}
	}
	for _, m := range passes {
		if !inTable(op, m) {
			w.failOp("table", "cut %q stands at %s, %s, and no line of the table says so", m.name, mm(m.told[0]), mm(m.told[1]))
		}
	}
	w.checkChords(op)
}

// checkHoleLine reports whether a cut stands where a line says.
func (w *walk) checkHoleLine(op plan.Operation, h plan.HoleLine, passes []pass) bool {
	for _, l := range []plan.Line{h.X, h.Y} {
		switch {
		case l.Dial != "":
			w.checkLine(l)
		case l != plan.Line{}:
			w.failOp("table", "hole %d has a reading of no dial", h.Number)
		}
		if l.ByMeasure {
			w.failOp("table", "hole %d is said to be reached by measuring; a dial sets it", h.Number)
		}
	}
	if (h.X.Dial == "") != (h.Y.Dial == "") || h.X.Dial != "" && (h.X.Dial != dialX || h.Y.Dial != dialY) {
		w.failOp("table", "hole %d is set by the dials %q and %q: expected x and y, or neither", h.Number, h.X.Dial, h.Y.Dial)
	}
	if h.Head != nil || w.indexing() {
		return w.checkRingLine(h, passes)
	}
	for _, m := range passes {
		x, y := w.standsAt(op, h)
		if tableLine(h).reads(m) && w.near(x, m.told[0], h.X.Dial) && w.near(y, m.told[1], h.Y.Dial) {
			return true
		}
	}
	return false
}

// standsAt is where a line's drawn place stands over the table: elsewhere only where the work is set over.
func (w *walk) standsAt(op plan.Operation, h plan.HoleLine) (x, y float64) {
	if !w.tilted() {
		return h.XMM, h.YMM
	}
	if f, ok := w.part.Feature(op.Feature).(*partspec.Holes); ok {
		for _, a := range w.aimsOf(f, w.poseOf()) {
			if a.number == h.Number {
				return float64(a.x.Value), float64(a.y.Value)
			}
		}
	}
	return h.XMM, h.YMM
}

// near reports whether a place is that of a dial's nearest graduation; without a dial, the very place.
func (w *walk) near(said, stands float64, dial string) bool {
	half := 0.0
	if d, ok := w.machine.Dial(dial); ok {
		half = graduationOf(d) / 2
	}
	return math.Abs(said-stands) <= half+figure
}

func inTable(op plan.Operation, m pass) bool {
	for _, h := range op.Holes {
		if tableLine(h).reads(m) {
			return true
		}
	}
	return false
}

// tableLine is a line of the table of holes, as it is read.
type tableLine plan.HoleLine

// reads reports whether a pass stands at the line's readings: both dials, or neither where the place is taken from the work.
func (h tableLine) reads(m pass) bool {
	if h.Head != nil {
		at, counted := m.counts[plan.HeadDial]
		return counted && at[1] == h.Head.Total
	}
	if h.X.Dial == "" && h.Y.Dial == "" {
		return m.by != "" && math.Abs(h.XMM-m.told[0]) <= figure && math.Abs(h.YMM-m.told[1]) <= figure
	}
	return m.by == "" && m.counts[h.X.Dial][1] == h.X.Total && m.counts[h.Y.Dial][1] == h.Y.Total
}

// checkChords holds the distances to measure over a pattern against the table's own places.
func (w *walk) checkChords(op plan.Operation) {
	at := map[int]plan.HoleLine{}
	for _, h := range op.Holes {
		at[h.Number] = h
	}
	for _, c := range op.Chords {
		a, okA := at[c.From]
		b, okB := at[c.To]
		if !okA || !okB || c.From == c.To {
			w.failOp("table", "a chord runs from hole %d to hole %d: expected two holes of the table", c.From, c.To)
			continue
		}
		if want := math.Hypot(a.XMM-b.XMM, a.YMM-b.YMM); math.Abs(want-c.DistanceMM) > chordFigure {
			w.failOp("table", "holes %d and %d are said to be %s apart; their places are %s apart", c.From, c.To, mm(c.DistanceMM), mm(want))
		}
		if c.PinMM < 0 || c.WithinMM <= 0 || math.Abs(c.DistanceMM+c.PinMM-c.OverMM) > chordFigure {
			w.failOp("table", "over pins of %s in holes %d and %d it is said to measure %s; it does %s", mm(c.PinMM), c.From, c.To, mm(c.OverMM), mm(c.DistanceMM+c.PinMM))
		}
	}
}

// chordFigure is how far a printed chord may differ from that of two printed places: each is rounded to a thousandth.
const chordFigure = 2 * figure
