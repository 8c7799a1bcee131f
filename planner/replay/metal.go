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

	// mostFromSolid is the largest drill that goes into a spotted face without a pilot, and mostDrillStep the most that a drill opens a hole on the
	// diameter (rule A-25: over 13 a pilot; steps of 3 to 6 on a light lathe).
	mostFromSolid = 13.0
	mostDrillStep = 6.0
)

// checkCut holds what must be true of one cut: it begins in the clear and takes no more at once than it says.
func (w *walk) checkCut(op plan.Operation, m motion, before solid.Body) {
	if m.outer.Empty() && m.inner.Empty() {
		w.failOp("tool", "a %s takes no metal away in this model: %q is no work for it", m.Kind, op.Process)
		return
	}
	if !m.set() && !m.plunges() {
		left := m.standing(before)
		if _, in := solid.Within(before, left, same); in.By > same {
			w.failOp("way in", "cut %q begins %s mm inside metal, with the tool's point at %s along the axis and Ø%s", m.name, mm(in.By), mm(m.from.Z), mm(2*m.from.R))
		}
	}
	if before.Volume()-w.body.Volume() <= leastVolume {
		return
	}
	w.removing[m.key] = true
	w.checkDepth(op, m, before)
	w.checkSkin(op, m, before)
}

// plunges reports whether the tool goes on in the direction in which it comes to the work: where exactly it begins then makes no difference.
func (m motion) plunges() bool {
	in := m.from.R - m.to.R
	if m.inside {
		in = -in
	}
	return m.across() && in > 0
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
	w.checkLight(op, m, deep, judged)
	if !judged {
		w.checkSideways(m, before)
		return
	}
	if m.Kind == partspec.Reamers && deep > mostForReamer/2+same {
		w.failOp("depth of cut", "the reamer would take %s off the diameter; it takes at most %s (rule A-27)", mm(2*deep), mm(mostForReamer))
	}
	if m.Kind == partspec.Drills {
		w.checkDrillStep(m, before)
		return
	}
	if deep > op.DepthMM+w.slack(m)+figure {
		w.failOp("depth of cut", "cut %q is %s deep, the operation says at most %s", m.name, mm(deep), mm(op.DepthMM))
	}
}

// mostSideways is how deep a blade is led sideways: it is made to plunge. Common practice, no source.
const mostSideways = 0.5

// checkSideways holds that a blade led along the axis only skims.
func (w *walk) checkSideways(m motion, before solid.Body) {
	switch m.Kind {
	case partspec.Grooving, partspec.Parting, partspec.RecessTool:
	default:
		return
	}
	if !m.along() || m.across() {
		return
	}
	lost := w.lost(m, before)
	if deep := math.Max(lost.Outside, lost.Inside); deep > mostSideways+w.slackRadius+same {
		w.failOp("depth of cut", "cut %q leads a blade sideways through %s mm of metal; it skims at most %s", m.name, mm(deep), mm(mostSideways))
	}
}

// checkDrillStep holds that a large drill finds a hole to follow.
func (w *walk) checkDrillStep(m motion, before solid.Body) {
	z0, z1 := before.Ends()
	lo, hi := m.head, z1
	if w.free() < 0 {
		lo, hi = z0, m.head
	}
	lo, hi = math.Max(lo, z0), math.Min(hi, z1)
	// The last diameter or so, where the points of both drills lie, does not count.
	if w.free() > 0 {
		lo = math.Min(lo+m.size, hi-same)
	} else {
		hi = math.Max(hi-m.size, lo+same)
	}
	found := 2 * before.Inner.Least(lo, hi)
	if m.size <= mostFromSolid || found > 0 && m.size-found <= mostDrillStep+same {
		return
	}
	w.failOp("depth of cut", "a drill of Ø%s finds a hole of Ø%s: from solid at most Ø%s is drilled, and a hole is opened by at most %s at once (rule A-25)",
		mm(m.size), mm(found), mm(mostFromSolid), mm(mostDrillStep))
}

// slack is what measured sizes, before the cut and in it, may add to its depth.
func (w *walk) slack(m motion) float64 {
	if m.across() {
		return w.slackPlace + m.measured
	}
	return w.slackRadius + m.measured/2
}

// shoulderSkim is how much of a shoulder, along the axis, a cut may take with its full edge at the end of its way: roughing leaves about 0.2 there
// (rule A-05) and the round of its nose, fed by hand.
const shoulderSkim = 0.5

// lost is what a cut took off, without the skim at the shoulder where it ends. A boring bar that runs to the floor of a blind hole meets the cone of the
// drill's point there, which is faced out by hand at the end of each pass.
func (w *walk) lost(m motion, before solid.Body) solid.Loss {
	if m.across() || m.set() {
		return solid.Lost(before, w.body, same)
	}
	skim := shoulderSkim + math.Min(w.slackPlace, shoulderSkim) // lengths made by measuring may leave more, up to as much again
	if m.Kind == partspec.Boring {
		skim = math.Max(skim, pointZone(m))
	}
	end := m.to.Z + math.Copysign(skim, m.from.Z-m.to.Z)
	lo, hi := -solid.Far, end
	if m.from.Z > m.to.Z {
		lo, hi = end, solid.Far
	}
	return solid.Lost(before.Keep(lo, hi), w.body.Keep(lo, hi), same)
}

// depth is how much metal a cut takes at once: along the axis when it goes straight across, else in radius, which is never less than
// square to a slanting way.
func (w *walk) depth(m motion, before solid.Body) (deep float64, judged bool) {
	lost := w.lost(m, before)
	switch {
	case m.Kind == partspec.Drills || m.Kind == partspec.Reamers:
		return lost.Inside, true
	case m.Kind != partspec.Turning && m.Kind != partspec.Boring:
		return 0, false
	case m.across():
		return lost.Z1 - lost.Z0, true
	case m.inside:
		return lost.Inside, true
	}
	return lost.Outside, true
}
