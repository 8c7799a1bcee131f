package replay

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// A dividing head that stands upright turns the work about the spindle's own direction: where the table has the spindle is then another place of the part, a count on.
// One that lies turns the direction that looks up. Neither comes nearer to a direction than half a hole, and what that moves is told here.

// indexing reports whether the setup at hand stands upright on a dividing head.
func (w *walk) indexing() bool { return w.divided() && !w.setup.Across }

// halfHole is half the angle from one hole of the circle in use to the next, in degrees; 0 off a lying head.
func (w *walk) halfHole() float64 {
	d := w.setup.Dividing
	if d == nil || !w.setup.Across || d.Ratio <= 0 || d.Circle <= 0 {
		return 0
	}
	return 180/float64(d.Ratio*d.Circle) + sameAngle
}

// indexPass turns a pass with the work: the direction that lay along the table's x at nought is AskewDeg, and each hole of the count brings one further round there.
func (w *walk) indexPass(m *pass, cut plan.Cut) bool {
	var count [2]int64
	for i, list := range [][]plan.Reading{cut.From, cut.To} {
		at := slices.IndexFunc(list, func(r plan.Reading) bool { return r.Dial == plan.HeadDial })
		if at < 0 {
			w.failOp("dividing", "cut %q does not say where the dividing head stands", cut.Name)
			return false
		}
		count[i] = list[at].Graduations
	}
	whole := int64(w.setup.Dividing.Ratio) * int64(w.setup.Dividing.Circle)
	switch {
	case count[0] != count[1]:
		w.failOp("dividing", "cut %q turns the work under the tool", cut.Name)
		return false
	case whole <= 0 || count[0] < 0 || count[0] >= whole:
		w.failOp("dividing", "a count of %d holes; one turn of the work has %d, counted up from nought", count[0], whole)
		return false
	}
	sin, cos := math.Sincos((w.setup.AskewDeg/360 + float64(count[0])/float64(whole)) * 2 * math.Pi)
	turn := func(x, y float64) (float64, float64) { return x*cos - y*sin, x*sin + y*cos }
	m.ringed = math.Pi / float64(whole) * math.Hypot(m.to[0], m.to[1])
	m.turning = m.within - w.headRunOut()
	m.from[0], m.from[1] = turn(m.from[0], m.from[1])
	m.to[0], m.to[1] = turn(m.to[0], m.to[1])
	m.told[0], m.told[1] = turn(m.told[0], m.told[1])
	return true
}

// checkRingLine reports whether a cut stands where a line of a ring says, half a graduation of the offset and half a hole of the circle apart; its count must be one of the
// head, and what it is off along the circle what that count makes.
func (w *walk) checkRingLine(h plan.HoleLine, passes []pass) bool {
	if h.Head == nil || h.X != (plan.Line{}) || h.Y != (plan.Line{}) {
		w.failOp("table", "hole %d of a ring that is turned is counted on the dividing head, and on nothing else", h.Number)
		return false
	}
	if h.Head.Dial != plan.HeadDial {
		w.failOp("table", "hole %d is counted on %q: expected %s", h.Number, h.Head.Dial, plan.HeadDial)
		return false
	}
	w.checkLine(*h.Head)
	for _, m := range passes {
		off := math.Hypot(h.XMM-m.told[0], h.YMM-m.told[1])
		x, _ := w.machine.Dial(dialX)
		if !tableLine(h).reads(m) || off > graduationOf(x)/2+m.ringed+oneRing+figure {
			continue
		}
		turned := math.Remainder(math.Atan2(m.told[1], m.told[0])-math.Atan2(h.YMM, h.XMM), 2*math.Pi) * math.Hypot(h.XMM, h.YMM)
		if math.Abs(turned-h.PastMM) > figure {
			w.failOp("table", "hole %d is said to come out %s past its place along the ring; its count makes %s", h.Number, mm(h.PastMM), mm(turned))
		}
		return true
	}
	return false
}

// oneRing is how much nearer to the axis than another a hole of a ring may be drawn: places that are written to a hundredth.
const oneRing = 0.02

// asideBy is how far beside its direction, at a distance from the axis, a pose has what it cuts there.
func asideBy(r, drawnDeg float64, p pose) float64 {
	if p.coarse == 0 {
		return 0
	}
	return r * math.Sin((p.deg-drawnDeg)*math.Pi/180)
}

// turnedAside is a tool over a hole across the axis as the drawing has that direction up: where the nearest count has turned the work past it, the hole enters beside.
func (w *walk) turnedAside(f partspec.Feature, a aside) aside {
	hole, ok := f.(*partspec.CrossHole)
	if !ok || a.pose.coarse == 0 || !a.pose.looks(float64(hole.Angle)) {
		return a
	}
	by := asideBy(w.widthOf(hole.On)/2, float64(hole.Angle), a.pose)
	a.from[1], a.to[1] = a.from[1]-by, a.to[1]-by // up has gone anticlockwise, and side is clockwise from it
	return a
}

// checkFlatTurned holds the direction of a flat that a dividing head has turned up: within the general tolerance of an angle whose leg is the round that it is cut on.
func (w *walk) checkFlatTurned(f *partspec.Flat, drawnDeg float64, a aside) {
	off := turnBetween(a.pose.deg, drawnDeg)
	if off <= sameAngle || a.pose.coarse == 0 {
		return
	}
	within, _, err := tables.ISO2768Angle(w.part.General, units.Length(w.widthOf(f.On)/2))
	if err != nil {
		w.failOp("place", "%s is cut %s degrees off its direction, and no general tolerance says how far it may be", f.ID(), mm(off))
		return
	}
	if off > float64(within)+degreeFigure {
		w.failOp("place", "%s is cut at %s degrees, %s off its direction; %s may pass", f.ID(), mm(a.pose.deg), mm(off), mm(float64(within)))
	}
}
