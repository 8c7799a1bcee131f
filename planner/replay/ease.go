package replay

import (
	"math"

	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
)

// workingN is the grip at an operation of the setup: the firm one, or the eased one from the operation on before which it is slackened (rule B-24).
func (w *walk) workingN(op string) float64 {
	g := w.setup.Grip
	if g.Eased == nil {
		return g.WorkingN
	}
	for _, o := range w.setup.Operations {
		if o.ID == g.Eased.Before {
			return g.Eased.WorkingN
		}
		if o.ID == op {
			break
		}
	}
	return g.WorkingN
}

// lastN is the grip when the setup ends.
func (w *walk) lastN() float64 {
	if e := w.setup.Grip.Eased; e != nil {
		return e.WorkingN
	}
	return w.setup.Grip.WorkingN
}

// easing holds, before the operation at hand, that what was made round under the firm grip is round enough, and that the eased grip is the lighter.
func (w *walk) easing(op plan.Operation) {
	g := w.setup.Grip
	if g.Eased == nil || g.Eased.Before != op.ID {
		return
	}
	if g.Eased.WorkingN >= g.WorkingN {
		w.failOp("grip force", "the grip is eased from %.0f to %.0f N a jaw: that is no easing", g.WorkingN, g.Eased.WorkingN)
	}
	limit, of := w.roundness()
	ring := w.ring(g.WorkingN)
	if math.IsInf(limit, 1) || w.solid() {
		return
	}
	if d, err := ring.Distortion(); err == nil && d.Trust == mechanics.TrustGood && d.ErrorMostMM > limit+figure {
		w.failOp("distortion", "before it is eased the grip leaves a lobed error of %s mm; %s allows %s", mm(d.ErrorMostMM), of, mm(limit))
	}
}

// checkEased holds that the operation before which the grip is eased is one of the setup's.
func (w *walk) checkEased() {
	e := w.setup.Grip.Eased
	if e == nil {
		return
	}
	for _, o := range w.setup.Operations {
		if o.ID == e.Before {
			return
		}
	}
	w.failOp("grip force", "the grip is to be eased before %q, which is no operation of this setup", e.Before)
}
