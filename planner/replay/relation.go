package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/tables"
)

const (
	// spindleError is the run-out between surfaces cut in one setting on a small lathe in good order. Common practice, no source.
	spindleError = 0.005
	// packedRunOut is that of a self-centring chuck with soft packing (rule B-02).
	packedRunOut = 0.1
)

// checkRunOuts holds that no setup claims to run truer than its holding does.
func (w *walk) checkRunOuts() {
	for _, s := range w.plan.Setups {
		w.setup, w.at = s, where{setup: s.Number}
		if !w.findHolding() {
			continue
		}
		if s.Locates == "stock" || w.offLathe() {
			continue // raw metal: nothing is located on it; a mill's work is clocked where it stands, and how well its noughts tell
		}
		if need, why := w.runOut(); s.RunOutMM < need-figure {
			w.failOp("run-out", "it claims %s; %s runs out by %s", mm(s.RunOutMM), why, mm(need))
		}
	}
}

// runOut is the full indicator reading to expect of the holding of the setup at hand: the workshop's figure, else the table's best.
func (w *walk) runOut() (need float64, whose string) {
	need, whose = float64(w.holding.RunOut), w.holding.Name
	if need == 0 {
		if row, ok := tables.FindHolding(tableName[w.holding.Kind]); ok {
			need, whose = float64(row.RunOut.Low), row.Name
		}
	}
	if w.setup.Grip.Packing != "" && w.holding.Kind == partspec.ThreeJaw {
		need = math.Max(need, packedRunOut)
	}
	return need, whose
}

// tableName is what the table of accuracies calls a holding.
var tableName = map[partspec.HoldingKind]string{
	partspec.ThreeJaw:         "3-jaw self-centring, new",
	partspec.FourJaw:          "4-jaw independent, clocked",
	partspec.Collets:          "collet, ER, DIN 6499 class 2",
	partspec.SoftJaws:         "soft jaws bored in place",
	partspec.StubMandrel:      "plain mandrel turned in place",
	partspec.PlainMandrel:     "plain mandrel, taper",
	partspec.ExpandingMandrel: "expanding mandrel",
	partspec.GluedArbor:       "glued to a turned arbor face",
	partspec.BetweenCentres:   "between centres",
	partspec.AnglePlate:       "faceplate, clocked",
}

// checkRelations holds every drawn relation through the chain of setups.
func (w *walk) checkRelations() {
	for _, r := range w.part.Relations {
		of, ok1 := w.surfaceOf(r.Of)
		to, ok2 := w.surfaceOf(r.To)
		if !ok1 || !ok2 {
			w.checkUnplaced(r)
			continue
		}
		a, opA := w.madeBy(of)
		b, opB := w.madeBy(to)
		w.at = w.later(a, opA, b, opB)
		err, known := w.between(a, b)
		if face, ok := w.faceToFace(a, b, of, to); ok && r.Kind == partspec.Parallel {
			if face > float64(r.Within)+figure {
				w.failOp("relation", "%s of %s to %s: %s to expect, %s drawn (the later sits on a face of the earlier)", r.Kind, of.name, to.name, mm(face), mm(float64(r.Within)))
			}
			continue
		}
		if !known {
			w.failOp("relation", "%s of %s to %s within %s cannot be held: %s is the stock's own surface, which nothing was set true to",
				r.Kind, of.name, to.name, mm(float64(r.Within)), stockOne(a, of, to))
			continue
		}
		if r.Kind == partspec.Square || r.Kind == partspec.Parallel {
			err = w.tilt(err, a, b, of, to)
		}
		if err > float64(r.Within)+figure {
			w.failOp("relation", "%s of %s to %s: %s to expect, %s drawn (%s)", r.Kind, of.name, to.name, mm(err), mm(float64(r.Within)), w.chain(a, b))
		}
	}
}

func stockOne(a int, of, to surface) string {
	if a < 0 {
		return of.name
	}
	return to.name
}

func (w *walk) later(a, opA, b, opB int) where {
	if a > b || a == b && opA > opB {
		return w.place(a, opA)
	}
	return w.place(b, opB)
}

// between is the run-out to expect between what was cut in two setups. In one setup it is the spindle's; else that of the later setup on the surface it
// is located on, and what lies between that surface and the earlier one. Not known where the chain ends on raw metal.
func (w *walk) between(a, b int) (float64, bool) {
	if a == b {
		return spindleError, a >= 0
	}
	if a < b {
		a, b = b, a
	}
	w.setup = w.plan.Setups[a]
	if !w.findHolding() {
		return 0, false
	}
	own, _ := w.runOut()
	own = math.Max(own, w.setup.RunOutMM)
	if b >= 0 && w.setup.Grip.Kind == "centres" && w.plan.Setups[b].Grip.Kind == "centres" {
		return own + spindleError, true // the same two centre holes carried both
	}
	on := w.locatedOn(a)
	if on == b {
		return own + spindleError, true
	}
	if on < 0 || on >= a {
		return 0, false
	}
	rest, known := w.between(on, b)
	return own + rest, known
}

// locatedOn is the setup in which the surface that setup a is located on was cut, -1 for raw metal.
func (w *walk) locatedOn(a int) int {
	if a >= len(w.located) {
		return -1
	}
	return w.located[a]
}

// noteLocated keeps on what the setup at hand is located, while the work still has it.
func (w *walk) noteLocated() {
	g := w.setup.Grip
	made := -1
	if g.Kind == "centres" || g.Kind == "glued_face" {
		if f := w.part.Feature(w.setup.Locates); f != nil {
			if left, right, ok := spanOf(f); ok {
				made, _ = w.madeBy(w.cylinderAt(f.Head().Name, left, right, isInside(f)))
			}
		}
	} else {
		z, r := w.gripped(g)
		made, _ = w.madeAt(z, r, g.Inside)
	}
	w.located = append(w.located, made)
}

// tilt is what a run-out over the length of the grip makes of a plane face over its diameter.
func (w *walk) tilt(err float64, a, b int, of, to surface) float64 {
	if a == b {
		return err
	}
	g := w.plan.Setups[max(a, b)].Grip
	long := math.Abs(g.ToZ - g.FromZ)
	if long <= same {
		return math.Inf(1)
	}
	wide := 0.0
	for _, s := range []surface{of, to} {
		if s.plane {
			z := s.z - 2*offSurface*s.look
			wide = math.Max(wide, 2*w.body.Outer.Greatest(z-offSurface, z+offSurface))
		}
	}
	return err * math.Max(1, wide/long)
}

// chain tells the setups between two places.
func (w *walk) chain(a, b int) string {
	if a == b {
		return "cut in one setting"
	}
	low, high := min(a, b), w.plan.Setups[max(a, b)].Number
	if low < 0 {
		return "the stock's own surface and setup " + number(high)
	}
	return "cut in setups " + number(w.plan.Setups[low].Number) + " and " + number(high)
}
