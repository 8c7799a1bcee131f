package replay

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// gripsOf are the ways in which each kind of holding grips turned work.
var gripsOf = map[partspec.HoldingKind][]string{
	partspec.ThreeJaw: {"jaws"}, partspec.FourJaw: {"jaws"}, partspec.SoftJaws: {"jaws"}, partspec.Collets: {"collet"},
	partspec.StubMandrel: {"mandrel", "split_mandrel"}, partspec.PlainMandrel: {"mandrel"}, partspec.ExpandingMandrel: {"mandrel"},
	partspec.GluedArbor: {"glued_bore", "glued_face"}, partspec.BetweenCentres: {"centres"},
	partspec.Vice: {"vice"}, partspec.VerticalSlide: {"vice"}, partspec.VeeBlock: {"vee"}, partspec.TableClamps: {"clamps"}, partspec.DividingHead: {"jaws"}, partspec.TiltingPlate: {"jaws"},
}

// checkKindOfGrip holds that the holding grips in the way that the plan says.
func (w *walk) checkKindOfGrip() {
	if g := w.setup.Grip.Kind; !slices.Contains(gripsOf[w.holding.Kind], g) {
		w.failOp("grip", "%q is no way in which a %s holds turned work", g, w.holding.Kind)
	}
}

// checkPose holds that a setup says nothing of a pose which it has not: the sheet would print it.
func (w *walk) checkPose() {
	s := w.setup
	switch {
	case s.Across && !w.offLathe():
		w.failOp("pose", "work lies across on a mill or a drilling machine only")
	case s.AcrossDeg != 0 && !s.Across:
		w.failOp("pose", "it is turned to %s degrees round its axis, and does not lie across", mm(s.AcrossDeg))
	case s.AskewDeg != 0 && !w.part.Flat() && !w.indexing():
		w.failOp("pose", "it is turned round on the table by %s degrees: only flat work is, and what stands on a dividing head", mm(s.AskewDeg))
	case (s.CentreX != 0 || s.CentreY != 0) && s.MachineKind != string(partspec.Lathe):
		w.failOp("pose", "work is set off its centre on a lathe only")
	case (s.CentreX != 0 || s.CentreY != 0) && !w.part.Flat() && s.SwingHighMM == 0:
		w.failOp("pose", "work is set off its centre by %s, %s, and no clock shows it", mm(s.CentreX), mm(s.CentreY))
	case s.MachineKind == string(partspec.Bench) && s.HoldingKind != "bench":
		w.failOp("holding", "at the bench work is held by the bench: not by %q", s.HoldingKind)
	}
}

// handTools are the kinds of tool that hand work wants; a burr is taken off with a scraper as well, which no workshop lists.
var handTools = map[plan.Process]partspec.ToolKind{
	plan.FileProfile: partspec.Files, plan.FileSeat: partspec.Files, plan.Deburr: partspec.Files,
}

// checkByHand holds that what is done by hand has the tool for it.
func (w *walk) checkByHand(op plan.Operation) {
	want, byHand := handTools[op.Process]
	if !byHand || op.Tool.ID == "" && op.Process == plan.Deburr {
		return
	}
	if c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM); err != nil || c.Kind != want {
		w.failOp("tool", "%q is none of the workshop's %s, which a %s wants", op.Tool.ID, want, op.Process)
	}
}

// checkToolOfChain holds that where every cut names a tool of its own, the operation's is that of one of them: the sheet lays it ready.
func (w *walk) checkToolOfChain(op plan.Operation) {
	for _, cut := range op.Cuts {
		if cut.ToolID == "" || cut.ToolID == op.Tool.ID && (cut.ToolSizeMM == 0 || math.Abs(cut.ToolSizeMM-op.Tool.SizeMM) <= same) {
			return
		}
	}
	if len(op.Cuts) > 0 {
		w.failOp("tool", "no cut of it uses %q", op.Tool.ID)
	}
}

// checkSizeOfTaps holds the size that the sheet gives of taps or dies against their thread.
func (w *walk) checkSizeOfTaps(op plan.Operation, major float64) {
	if s := op.Tool.SizeMM; s != 0 && math.Abs(s-major) > figure {
		w.failOp("tool", "taps and dies of %s for a thread of %s", mm(s), mm(major))
	}
}

// checkMarkedWithin holds that a tool gets at a surface between two places which is threaded, knurled or filed as it is held: not under what grips it, nor behind
// it, and inside from the free end through holes at least as wide as it.
func (w *walk) checkMarkedWithin(what string, lo, hi float64, inside bool, least float64) {
	g := w.setup.Grip
	if w.atBench() || g.Kind == "centres" || g.Kind == "glued_face" {
		return
	}
	far, face := lo, w.jawFace()
	if w.free() < 0 {
		far = hi
	}
	if inside == g.Inside && w.free()*(far-face) < -same-w.slackPlace {
		w.failOp("reach", "%s reaches to %s, and what grips the work to %s", what, mm(far), mm(face))
		return
	}
	if !inside {
		return
	}
	near := hi
	if w.free() < 0 {
		near = lo
	}
	from, to := math.Min(near, w.freeZ()), math.Max(near, w.freeZ())
	if to-from > 2*offSurface && w.body.Inner.Least(from+offSurface, to-offSurface) < least-same {
		w.failOp("reach", "%s lies behind a hole of Ø%s, seen from the free end", what, mm(2*w.body.Inner.Least(from+offSurface, to-offSurface)))
	}
}

// guideGraduations is how many graduations the reading that guides a measured cut may lie beside the range to measure: a dial cannot stand between two.
const guideGraduations = 1

// checkGuide holds that the reading that a measured cut is first taken to lies where measuring may end it: a dial turned past there has spoilt the work
// before anybody measures.
func (w *walk) checkGuide(cut plan.Cut) {
	q := cut.ToMeasure
	if q.What == "length" {
		return
	}
	dial, _ := measuredDial(cut)
	z, set := w.zeros[dial]
	counts, read := countsOf(cut)[dial]
	if !set || !read {
		return
	}
	travel := float64(counts[1]) * z.graduation
	along := w.free()
	if w.setup.Across {
		along = 1
	}
	place, off := z.ReferenceMM-along*travel, z.graduation
	if q.What == "diameter" {
		place, off = z.ReferenceMM-2*travel, 2*z.graduation
		if z.Outward {
			place = z.ReferenceMM + 2*travel
		}
	}
	if off *= guideGraduations; place < q.LowMM-off-same || place > q.HighMM+off+same {
		w.failOp("measure", "cut %q is taken to %s by the %s dial, and is to end between %s and %s", cut.Name, mm(place), dial, mm(q.LowMM), mm(q.HighMM))
	}
}
