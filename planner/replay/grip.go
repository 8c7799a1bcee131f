package replay

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

const (
	// Without a tailstock work is gripped over at least 10, or half its diameter (rule B-27, a collet maker's), or as much as the jaws of a small
	// chuck give, where the forces are left to decide; with one, over 5. A disc with its face hard on the jaw steps may do with 4, for cuts to 0.5
	// deep and a diameter to 20 grips.
	leastGrip      = 10.0
	leastGripShare = 0.5
	enoughGrip     = 15.0
	leastGripTail  = 5.0
	leastGripDisc  = 4.0
	discDepth      = 0.5
	discDiameters  = 20.0

	// tight is the tolerance below which a surface counts as finished to size, not to be gripped bare (rule E-03 counts such as toleranced).
	tight = 0.2

	// figureStickOut is how far the printed stick-out may differ from the true one.
	figureStickOut = 0.5
)

// checkGrip holds that what is gripped is there, as long and as thick as the plan says, and may be gripped.
func (w *walk) checkGrip() {
	g := w.setup.Grip
	if w.atBench() {
		w.checkBench()
		return
	}
	if w.onMill() {
		w.checkOnTable()
	}
	w.checkKindOfGrip()
	if g.Surface != w.setup.Locates {
		w.failOp("grip", "it grips %q and is located on %q", g.Surface, w.setup.Locates)
	}
	switch g.Kind {
	case "jaws", "collet", "mandrel", "split_mandrel", "glued_bore":
		w.checkGripped()
		w.checkMandrel()
	case "vice", "vee":
		w.checkLying()
	case "clamps":
		w.checkClamped()
	case "centres", "glued_face":
	default:
		w.failOp("grip", "%q is no way to grip: expected jaws, collet, mandrel, split_mandrel, centres, glued_face or glued_bore", g.Kind)
		return
	}
	w.checkLocates()
}

func (w *walk) checkGripped() {
	g := w.setup.Grip
	lo, hi := w.grip()
	if hi-lo <= same {
		w.failOp("grip", "it grips over %s mm", mm(hi-lo))
		return
	}
	surface := w.body.Outer
	if g.Inside {
		surface = w.body.Inner
	}
	z0, z1 := w.body.Ends()
	if lo < z0-same-w.slackPlace || hi > z1+same+w.slackPlace {
		w.failOp("grip", "it grips from %s to %s, the work reaches from %s to %s", mm(lo), mm(hi), mm(z0), mm(z1))
		return
	}
	// Ends made by measuring may lie a little otherwise than the plan reckons.
	lo, hi = math.Max(lo, z0), math.Min(hi, z1)
	touch := touching{surface, w.meets(lo, hi), g.Inside}.found(lo, hi)
	w.contact = touch.length(lo, hi)
	relief := jawRelief + w.slackPlace // jaws are pushed against the shoulder where it is
	if w.contact <= same || touch.stands(lo+relief, hi-relief) {
		w.failOp("grip", "it grips Ø%s from %s to %s; the work there is Ø%s to Ø%s", mm(2*g.RadiusMM), mm(lo), mm(hi),
			mm(2*surface.Least(lo, hi)), mm(2*surface.Greatest(lo, hi)))
		return
	}
	if !g.Inside {
		if w.contact -= w.cutAcross(lo, hi); w.contact <= same {
			w.failOp("grip", "it grips from %s to %s, where what is cut across leaves nothing of the round", mm(lo), mm(hi))
			return
		}
	}
	w.capacity()
	w.checkGripLength(hi-lo, w.contact+touch.relieved(lo, hi))
	w.checkJaws()
	if !g.Inside {
		w.through(lo, hi)
	}
	w.checkBare(lo, hi)
}

// checkGripLength holds the grip against the jaws' length, and what of it touches against the least.
func (w *walk) checkGripLength(long, length float64) {
	g, h := w.setup.Grip, w.holding
	longest := float64(h.JawLength)
	if g.Kind == "collet" {
		longest = float64(h.GripLength)
	}
	if longest > 0 && long > longest+same {
		w.failOp("grip", "it grips over %s; %s is %s long", mm(long), h.Name, mm(longest))
	}
	if g.Kind != "jaws" || w.pressedDown() {
		return
	}
	r, _ := w.own(g.RadiusMM, 0)
	d := 2 * r
	need := math.Min(enoughGrip, math.Max(leastGrip, leastGripShare*d))
	if w.setup.Tailstock {
		need = leastGripTail
	}
	if length >= need-same {
		return
	}
	if w.lightly = length >= leastGripDisc-same && w.faced(length); w.lightly {
		return // and the cuts are held to it as they come
	}
	w.failOp("grip", "it grips Ø%s over %s; at least %s is needed, or %s for a disc on the jaw steps with cuts to %s (rule B-27)",
		mm(d), mm(length), mm(need), mm(leastGripDisc), mm(discDepth))
}

// pressedDown reports whether work stands upright on a table and every tool of the setup only presses it down: nothing tips it out of a short grip.
func (w *walk) pressedDown() bool {
	if !w.offLathe() || w.setup.Across {
		return false
	}
	for _, op := range w.setup.Operations {
		switch op.Process {
		case plan.Spot, plan.Drill, plan.Ream, plan.Tap, plan.Counterbore, plan.Countersink:
		default:
			return false
		}
	}
	return true
}

// faced reports whether the work is a disc, standing out no more than its diameter, with its face hard on the jaw steps.
func (w *walk) faced(length float64) bool {
	wide := 2 * w.body.Outer.Greatest(w.body.Ends())
	return w.seated() && wide <= discDiameters*length+same && math.Abs(w.freeZ()-w.jawFace()) <= wide+same
}

// checkLight holds a cut on a disc held by the jaw steps to the depth that it stands: what is known of it, else what the operation says. A broken edge counts by
// how deep its flat lies.
func (w *walk) checkLight(op plan.Operation, m motion, deep float64, judged bool) {
	if !w.lightly || m.Kind == partspec.Drills || m.Kind == partspec.Reamers {
		return // a drill's thrust presses the work on the steps
	}
	if !judged {
		deep = op.DepthMM
		if f, ok := w.part.Feature(op.Feature).(*partspec.Chamfer); ok && op.Process == plan.Chamfer {
			deep *= math.Cos(f.Angle.Radians())
		}
	}
	if deep > discDepth+w.slack(m)+figure {
		w.failOp("grip", "cut %q is %s deep; a disc held by the jaw steps over %s stands %s (rule B-27)", m.name, mm(deep), mm(w.contact), mm(discDepth))
	}
}

// cutAcross is how much of a grip along the axis has lost part of its round to seats, flats and slots cut across it.
func (w *walk) cutAcross(lo, hi float64) float64 {
	var gaps [][2]float64
	passed := false
	for _, f := range w.part.Features {
		var span partspec.Span
		switch f := f.(type) {
		case *partspec.Flat:
			span = f.Span
		case *partspec.Slot:
			span = f.Span
		case *partspec.SideSeat:
			span = f.Hollowed()
		default:
			continue
		}
		made := slices.ContainsFunc(w.milled, func(a aside) bool { return a.feature == f.Head().Name })
		z0, z1 := math.Max(lo, float64(span.Left)), math.Min(hi, float64(span.Right))
		if !made || z1-z0 <= same {
			continue
		}
		gaps = append(gaps, [2]float64{z0, z1})
		flat, _ := f.(*partspec.Flat)
		passed = flat != nil && w.jawsPass(flat)
	}
	if len(gaps) == 1 && passed {
		return 0
	}
	slices.SortFunc(gaps, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	sum, end := 0.0, lo
	for _, g := range gaps {
		sum += math.Max(0, g[1]-math.Max(end, g[0]))
		end = math.Max(end, g[1])
	}
	return sum
}

// jawsPass reports whether three jaws of a lathe go past a single flat, laid in the middle between two of them.
func (w *walk) jawsPass(f *partspec.Flat) bool {
	g := w.setup.Grip
	if f.Count > 1 || g.Kind != "jaws" || g.Jaws != 3 || w.onMill() {
		return false
	}
	half := math.Acos(math.Min(1, float64(f.Distance.Low)/g.RadiusMM)) + math.Asin(math.Min(1, g.JawWidthMM/2/g.RadiusMM))
	return half <= math.Pi/3
}

func (w *walk) checkJaws() {
	g, h := w.setup.Grip, w.holding
	if g.Kind != "jaws" {
		return
	}
	if h.Jaws > 0 && g.Jaws != h.Jaws {
		w.failOp("grip", "%d jaws; %s has %d", g.Jaws, h.Name, h.Jaws)
	}
	if width := float64(h.JawWidth); width > 0 && math.Abs(g.JawWidthMM-width) > figure {
		w.failOp("grip", "jaws %s wide; those of %s are %s", mm(g.JawWidthMM), h.Name, mm(width))
	}
}

// checkBare holds that no thread, and no surface finished to a tight size, is gripped by bare hard jaws.
func (w *walk) checkBare(lo, hi float64) {
	g := w.setup.Grip
	bare := hard(w.holding.Kind) && g.Packing == ""
	for _, m := range w.marks {
		_, thread := w.part.Feature(m.feature).(*partspec.Thread)
		crushed := bare || thread && (g.Kind == "jaws" || g.Kind == "collet" || g.Kind == "vice" || g.Kind == "vee") && !strings.Contains(g.Packing, "threaded")
		if crushed && m.inside == g.Inside && m.z0 < hi-same && m.z1 > lo+same {
			w.failOp("bare jaws", "jaws would grip %s, which is threaded or knurled there (rule B-40)", m.feature)
		}
	}
	if !bare {
		return
	}
	for _, f := range w.part.Features {
		size, ok := diameterOf(f)
		left, right, _ := spanOf(f)
		if !ok || isInside(f) != g.Inside || left > hi-same || right < lo+same || float64(size.Width()) >= tight {
			continue
		}
		if r := 2 * g.RadiusMM; r >= float64(size.Low)-same && r <= float64(size.High)+same {
			w.failOp("bare jaws", "hard jaws without packing would grip %s, finished to %s mm (rule B-37)", f.Head().ID(), mm(float64(size.Width())))
		}
	}
}

// diameterOf is the diameter of a cylinder that is cut.
func diameterOf(f partspec.Feature) (partspec.Size, bool) {
	switch f := f.(type) {
	case *partspec.Spigot:
		return f.Diameter, !f.AsSupplied
	case *partspec.Bore:
		return f.Diameter, !f.AsSupplied
	}
	return partspec.Size{}, false
}

// checkStickOut holds the free length against the plan's figure: as it is when the work is put in or when it is let go, or between.
func (w *walk) checkStickOut() {
	if g := w.setup.Grip; g.Inside || g.Kind == "glued_face" || g.Kind == "centres" {
		return // the work itself does not stand out of the grip
	}
	begin, end := w.free()*(w.endOf(w.mounted)-w.jawFace()), w.free()*(w.freeZ()-w.jawFace())
	least, most := math.Min(begin, end), math.Max(begin, end)
	off := figureStickOut + w.slackPlace
	if said := w.setup.StickOutMM; said < least-off || said > most+off {
		w.failOp("stick-out", "%s of it stands out of the grip, the plan says %s", mm(begin), mm(said))
	}
}

// checkLocates holds that the work is located on what the plan says: raw stock, or the surface of a feature.
func (w *walk) checkLocates() {
	g := w.setup.Grip
	if g.Kind == "centres" || g.Kind == "glued_face" {
		return
	}
	lo, hi := w.grip()
	z, r := w.gripped(w.setup.Grip)
	setup, _ := w.madeAt(z, r, g.Inside)
	if w.setup.Locates == "stock" {
		if setup >= 0 {
			w.failOp("located on", "it says raw stock, but the surface gripped was cut in setup %d", w.plan.Setups[setup].Number)
		}
		return
	}
	f := w.part.Feature(w.setup.Locates)
	left, right, ok := spanOfNamed(f)
	if !ok || isInside(f) != g.Inside || left > hi-same || right < lo+same {
		w.failOp("located on", "it says %q, which is not what is gripped from %s to %s", w.setup.Locates, mm(lo), mm(hi))
	}
}

func spanOfNamed(f partspec.Feature) (left, right float64, ok bool) {
	if f == nil {
		return 0, 0, false
	}
	return spanOf(f)
}

// madeAt is the place in the plan of the cut that made the surface of radius r at z; -1 for the stock's own.
func (w *walk) madeAt(z, r float64, inside bool) (setup, op int) {
	if inside {
		return w.maker(z, r-2*offSurface)
	}
	return w.maker(z, r+2*offSurface)
}

// checkGripClear holds that a cut takes nothing of what is gripped, and that its tool keeps away from what grips.
func (w *walk) checkGripClear(m motion, before solid.Body) {
	g := w.setup.Grip
	if g.Kind == "centres" || g.Kind == "glued_face" {
		return
	}
	lo, hi := w.grip()
	spare := w.slackPlace + m.measured // ends made by measuring may lie a little otherwise than the plan reckons
	lo, hi = lo+spare, math.Max(hi-spare, lo+2*spare)
	lost := solid.Lost(before.Keep(lo, hi), w.body.Keep(lo, hi), same)
	cut := lost.Outside
	if g.Inside {
		cut = lost.Inside
	}
	if cut > same || lost.Whole > same {
		w.failOp("grip", "cut %q takes metal that is gripped, between %s and %s", m.name, mm(math.Max(lo, lost.Z0)), mm(math.Min(hi, lost.Z1)))
		return
	}
	away := w.free() * (m.head - w.jawFace())
	if m.inside == g.Inside && away < clearance-same {
		w.failOp("clearance", "cut %q brings the tool to %s mm from what grips the work; it must keep %s away (rule B-45)", m.name, mm(away), mm(clearance))
		return
	}
	if g.Inside && !m.inside && m.outer.Least(lo, hi) < g.RadiusMM-same {
		w.failOp("clearance", "cut %q goes down to Ø%s and into what holds the bore of Ø%s", m.name, mm(2*m.outer.Least(lo, hi)), mm(2*g.RadiusMM))
	}
}
