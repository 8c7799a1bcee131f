package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

const (
	// leastVolume is the least, in cubic millimetres, that counts as metal removed: a thousandth of a chip, far beyond rounding.
	leastVolume = 1e-3

	// mostForReamer is the most that a reamer is given on the diameter (rule A-27, published: never over 0.8).
	mostForReamer = 0.8
)

// checkCut holds what must be true of one cut: it begins in the clear, removes metal, and no more at once than it says.
func (w *walk) checkCut(op plan.Operation, m motion, before solid.Body, goesOn bool) {
	if m.outer.Empty() && m.inner.Empty() {
		w.failOp("tool", "a %s takes no metal away in this model: %q is no work for it", m.Kind, op.Process)
		return
	}
	if !m.set() {
		left := m.standing(before)
		if _, in := solid.Within(before, left, same); in.By > same {
			w.failOp("way in", "cut %q begins %s mm inside metal, with the tool's point at %s along the axis and Ø%s", m.name, mm(in.By), mm(m.from.Z), mm(2*m.from.R))
		}
	}
	if before.Volume()-w.body.Volume() <= leastVolume {
		// A tool led out along the face that it has just cut takes nothing more off, and need not.
		if !goesOn {
			w.failOp("removes metal", "cut %q removes nothing", m.name)
		}
		return
	}
	w.checkDepth(op, m, before)
}

// standing is what is left of a body when the tool stands where the motion begins.
func (m motion) standing(b solid.Body) solid.Body {
	if m.inside {
		return b.BoreTo(m.static)
	}
	return b.TurnTo(m.static)
}

// checkDepth holds that a cut is no deeper than the operation says. Blades and form tools cut their width, and so are not judged.
func (w *walk) checkDepth(op plan.Operation, m motion, before solid.Body) {
	deep, judged := w.depth(m, before)
	if !judged {
		return
	}
	if m.Kind == partspec.Reamers && deep > mostForReamer/2+same {
		w.failOp("depth of cut", "the reamer would take %s off the diameter; it takes at most %s (rule A-27)", mm(2*deep), mm(mostForReamer))
	}
	if op.DepthMM > 0 && deep > op.DepthMM+w.slack(m)+figure {
		w.failOp("depth of cut", "cut %q is %s deep, the operation says at most %s", m.name, mm(deep), mm(op.DepthMM))
	}
}

// slack is what measured sizes before the cut may add to its depth.
func (w *walk) slack(m motion) float64 {
	if m.along() {
		return w.slackRadius
	}
	return w.slackPlace
}

// shoulderSkim is how much of a shoulder, along the axis, a cut may take with its full edge at the end of its way: roughing leaves about 0.2 there
// (rule A-05), fed by hand.
const shoulderSkim = 0.3

// lost is what a cut took off, without the skim at the shoulder where it ends.
func (w *walk) lost(m motion, before solid.Body) solid.Loss {
	if !m.along() || m.set() {
		return solid.Lost(before, w.body, same)
	}
	end := m.to.Z + math.Copysign(shoulderSkim, m.from.Z-m.to.Z)
	lo, hi := -solid.Far, end
	if m.from.Z > m.to.Z {
		lo, hi = end, solid.Far
	}
	return solid.Lost(before.Keep(lo, hi), w.body.Keep(lo, hi), same)
}

// depth is how much metal a cut takes at once: in radius when it goes along the axis, along the axis when it goes across.
func (w *walk) depth(m motion, before solid.Body) (deep float64, judged bool) {
	lost := w.lost(m, before)
	switch {
	case m.Kind == partspec.Drills || m.Kind == partspec.Reamers:
		return lost.Inside, true
	case m.Kind != partspec.Turning && m.Kind != partspec.Boring:
		return 0, false
	case !m.along():
		return lost.Z1 - lost.Z0, true
	case m.inside:
		return lost.Inside, true
	}
	return lost.Outside, true
}
