package replay

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
)

// What a dividing head does is reckoned here from the workshop's own figures: its ratio, its plates, its height. A count turns the work, and so the pose of each cut.

const (
	// chuckRunOut is the full reading of the chuck on a dividing head where the workshop gives none: a three-jaw, or a four-jaw whose work is clocked (rule B-02).
	chuckRunOut   = 0.08
	clockedRunOut = 0.025
	// underHead is what stays between the table and the work that turns over it; clearFigure is the rounding of the clear height on the sheet.
	underHead   = 2.0
	clearFigure = 0.1
	fourJaws    = 4
)

// divided reports whether the setup at hand lies on a dividing head.
func (w *walk) divided() bool { return w.setup.Dividing != nil }

// checkDividing holds a setup's dividing head against the one that is owned, and the room under its axis.
func (w *walk) checkDividing() {
	d, h := w.setup.Dividing, w.holding
	if d == nil {
		if h.Kind == partspec.DividingHead {
			w.failOp("dividing", "nothing says what %s counts by", h.Name)
		}
		return
	}
	switch {
	case h.Kind != partspec.DividingHead:
		w.failOp("dividing", "a %s turns nothing by a count", h.Kind)
	case w.setup.MachineKind != string(partspec.Mill):
		w.failOp("dividing", "%s stands on a mill", h.Name)
	case w.indexing() && !h.Upright:
		w.failOp("dividing", "%s does not stand upright: work on it lies across", h.Name)
	case d.Ratio == h.Ratio && slices.Contains(h.Plates, d.Circle), d.Ratio == 1 && slices.Contains(h.Direct, d.Circle):
	default:
		w.failOp("dividing", "%s has no circle of %d with %d turns of the crank for one of the work", h.Name, d.Circle, d.Ratio)
	}
	if math.Abs(d.HeightMM-float64(h.Height)) > figure {
		w.failOp("dividing", "its axis is said to lie %s over the table; that of %s lies %s", mm(d.HeightMM), h.Name, mm(float64(h.Height)))
	}
	if w.setup.Across {
		w.checkUnderHead(h)
	}
}

// checkUnderHead holds that there is room between the table and work that turns over it.
func (w *walk) checkUnderHead(h partspec.Holding) {
	r := w.body.Outer.Greatest(w.body.Ends())
	if r+underHead > float64(h.Height)+same {
		w.failOp("dividing", "the work of Ø%s swings over the table under an axis %s high", mm(2*r), mm(float64(h.Height)))
	}
	if bed := w.setup.Bed; bed == nil || bed.Kind != "jaws" || bed.GapMM > float64(h.Height)-r+clearFigure {
		w.failOp("dividing", "under the work %s are clear, and nothing else carries it than the jaws", mm(float64(h.Height)-r))
	}
}

// turnHead turns the work to where the cuts of an operation have it: all alike, for one operation is done with the spindle locked.
func (w *walk) turnHead(op plan.Operation) {
	w.turnedDeg = 0
	if !w.divided() || w.indexing() {
		return // upright it is turned from cut to cut
	}
	count, known := int64(0), false
	for _, cut := range op.Cuts {
		for _, list := range [][]plan.Reading{cut.From, cut.To} {
			at := slices.IndexFunc(list, func(r plan.Reading) bool { return r.Dial == plan.HeadDial })
			switch {
			case at < 0:
				w.failOp("dividing", "cut %q does not say where the dividing head stands", cut.Name)
				return
			case known && list[at].Graduations != count:
				w.failOp("dividing", "cut %q turns the work in the middle of the operation", cut.Name)
				return
			}
			count, known = list[at].Graduations, true
		}
	}
	whole := int64(w.setup.Dividing.Ratio * w.setup.Dividing.Circle)
	if whole <= 0 || count < 0 || count >= whole {
		w.failOp("dividing", "a count of %d holes; one turn of the work has %d, counted up from nought", count, whole)
		return
	}
	w.turnedDeg = 360 * float64(count) / float64(whole)
	if known && !onCard(op, plan.HeadDial, count) {
		w.failOp("card", "the work is turned by %d holes; no line of the card says so", count)
	}
}

// checkHeadLine holds a line that turns the work: its turns and holes are its total, and its angle what they make.
func (w *walk) checkHeadLine(l plan.Line) {
	d := w.setup.Dividing
	if d == nil || d.Circle <= 0 || d.Ratio <= 0 {
		w.failOp("card", "line %q turns a dividing head, and none carries the work", l.Label)
		return
	}
	circle := int64(d.Circle)
	if !l.Counted || l.ByMeasure || l.Marks < 0 || l.Marks >= circle || l.Turns*circle+l.Marks != l.Total {
		w.failOp("card", "line %q: %d turns and %d holes of a circle of %d are not %d", l.Label, l.Turns, l.Marks, circle, l.Total)
	}
	deg := 360 * float64(l.Total) / float64(int64(d.Ratio)*circle)
	w.checkAngle(l, l.Reading, deg)
	if w.setup.Across {
		w.checkUp(l, w.setup.AcrossDeg+deg)
	}
}

// checkUp holds what a line says of where the drawing then looks, and of what that is off: "51.4167° of the drawing looks up, 0.0119° short of 51.4286°".
func (w *walk) checkUp(l plan.Line, deg float64) {
	up, off, inexact := strings.Cut(l.Makes, " of the drawing looks up, ")
	up, _, _ = strings.Cut(up, " of the drawing looks up")
	w.checkAngle(l, up, deg)
	if !inexact {
		return
	}
	for word, way := range map[string]float64{" past ": -1, " short of ": 1} {
		if by, drawn, ok := strings.Cut(off, word); ok {
			v, err := strconv.ParseFloat(strings.TrimSuffix(by, "°"), 64)
			if err != nil {
				v = math.NaN()
			}
			w.checkAngle(l, drawn, deg+way*v)
			return
		}
	}
	w.failOp("card", "line %q says %q: expected how far past or short of a direction it is", l.Label, off)
}

// degreeFigure is the rounding of an angle on the sheet, in degrees.
const degreeFigure = 1e-4

func (w *walk) checkAngle(l plan.Line, said string, deg float64) {
	v, err := strconv.ParseFloat(strings.TrimSuffix(said, "°"), 64)
	if err != nil || !(turnBetween(v, deg) <= degreeFigure) {
		w.failOp("card", "line %q says %q; its count makes %s°", l.Label, said, mm(deg))
	}
}

// headRunOut is how far, radially, work on a dividing head may lie off because its round runs out on the chuck: half the reading both ways.
func (w *walk) headRunOut() float64 {
	if !w.divided() {
		return 0
	}
	full := chuckRunOut
	switch {
	case w.holding.RunOut > 0:
		full = float64(w.holding.RunOut)
	case w.holding.Jaws == fourJaws:
		full = clockedRunOut
	}
	if w.setup.Grip.Packing != "" && w.holding.Jaws != fourJaws {
		full = math.Max(full, packedChuck)
	}
	if w.indexing() {
		return full / 2 // the work's axis beside the head's, which was found by itself
	}
	return math.Sqrt2 * full / 2
}

// packedChuck is a three-jaw's full reading over soft packing (rule B-02).
const packedChuck = 0.1

// outOfHead is a pass as the jaws of a dividing head feel it: nothing stands under the work.
func (w *walk) outOfHead(d *mechanics.GripDemand, p push) {
	lo, hi := w.grip()
	z0, z1 := w.body.Ends()
	d.AxialStop, d.OverhangMM = false, math.Abs(math.Max(z0, math.Min(z1, p.level[0]))-(lo+hi)/2) // a cutter runs out further than the metal
	if p.sideN > 0 {
		d.FeedN = p.sideN
		return
	}
	d.MainN, d.FeedN, d.PassiveN = 0, 0, p.thrustN // its torque is about its own axis, square to the work's: it tips the work as well
	if p.thrustN > 0 {
		d.OverhangMM += p.mainN * p.radius / p.thrustN
	}
}

// checkHeadBends holds that work which stands out of a dividing head's chuck is stiff enough for every pass.
func (w *walk) checkHeadBends() {
	if !w.divided() || w.indexing() {
		return
	}
	for _, p := range w.pushes {
		l := load{z: p.level[0], body: w.body}
		if bend, ok := w.bend(l, math.Max(p.sideN, p.thrustN)); ok && bend > mostBend+figure {
			w.fail(p.at, "bending", "cut %q bends the work by %s mm; at most %s (rule C-29)", p.name, mm(bend), mm(mostBend))
		}
	}
}
