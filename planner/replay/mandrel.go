package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/solid"
)

const (
	// washerRim is how much of a face a washer covers round the hole at the least, and screwLeast the smallest screw that a mandrel is given: M3.
	washerRim  = 2.0
	screwLeast = 3.0
	// screwPlay is how much wider than a screw the hole is that it goes through (ISO 273, medium, rounded down).
	screwPlay = 0.5
	// splitLeast is the smallest bore that a slit mandrel is spread in, splitLong the least stretch of it (rule B-14); spreadShare is the least length of a bore on a
	// plain or expanding mandrel, in diameters (rule B-12).
	splitLeast  = 8.0
	splitLong   = 2.0
	spreadShare = 0.7
	// shoulderRoom is how far the shoulder of a mandrel stays back from the work's rim.
	shoulderRoom = 1.0
)

// screwed reports whether work is pressed on the shoulder of a mandrel by a screw and washer from in front: a thread in the bore needs none.
func (w *walk) screwed() bool {
	_, thread := w.part.Feature(w.setup.Grip.Surface).(*partspec.Thread)
	return w.setup.Grip.Kind == "mandrel" && w.holding.Kind == partspec.StubMandrel && !thread
}

// spreads reports whether a mandrel presses outward in the bore.
func (w *walk) spreads() bool {
	g := w.setup.Grip
	return g.Kind == "split_mandrel" || g.Kind == "mandrel" && w.holding.Kind != partspec.StubMandrel
}

// wayOut is the radius of the narrowest hole from the grip to the free end, 0 where there is none.
func (w *walk) wayOut() float64 {
	lo, hi := w.grip()
	if w.free() > 0 {
		return w.body.Inner.Least(hi, w.freeZ())
	}
	return w.body.Inner.Least(w.freeZ(), lo)
}

// checkMandrel holds that a mandrel bears in enough of its bore, that the screw which one turned in place is tightened by comes through the work, and that its washer
// finds a face to press on.
func (w *walk) checkMandrel() {
	g := w.setup.Grip
	if g.WasherMM != 0 && !w.screwed() {
		w.failOp("grip", "a washer of Ø%s is spoken of, and none holds the work", mm(2*g.WasherMM))
	}
	lo, hi := w.grip()
	switch long := hi - lo; {
	case g.Kind == "split_mandrel":
		if 2*g.RadiusMM < splitLeast-same-w.slackRadius || long < splitLong-same {
			w.failOp("grip", "a bore of Ø%s, gripped over %s, is too small to slit and spread a mandrel in (rule B-14)", mm(2*g.RadiusMM), mm(long))
		}
		if way := 2 * w.wayOut(); way < screwLeast-same-w.slackRadius {
			w.failOp("grip", "no taper screw is turned from the free end: the way there is Ø%s wide, and Ø%s is the least", mm(way), mm(screwLeast))
		}
	case w.screwed():
		if screw := w.mandrelScrew(); screw < screwLeast-same-w.slackRadius {
			w.failOp("grip", "a mandrel of Ø%s, the way to it Ø%s wide, has room for a screw of Ø%s; M3 is the least", mm(2*g.RadiusMM), mm(2*w.wayOut()), mm(math.Max(0, screw)))
		}
		w.checkWasherFace()
	case w.spreads() && long < spreadShare*2*g.RadiusMM-same:
		w.failOp("grip", "a bore of Ø%s is gripped over %s; its mandrel wants %g of the diameter (rule B-12)", mm(2*g.RadiusMM), mm(long), spreadShare)
	}
}

// mandrelScrew is the diameter of the largest screw that leaves metal round it in a mandrel's end, and comes to it from the free end.
func (w *walk) mandrelScrew() float64 {
	return math.Min(math.Min(screwLargest, 2*w.setup.Grip.RadiusMM*screwShare), 2*w.wayOut()-screwPlay)
}

// checkWasherFace holds that a washer lies on the free face all round, and within its rim.
func (w *walk) checkWasherFace() {
	g, z := w.setup.Grip, w.freeZ()-w.free()*offSurface
	lo, hi := z-offSurface/2, z+offSurface/2
	if mouth := w.body.Inner.Greatest(lo, hi); g.WasherMM < mouth+washerRim-figure-w.slackRadius {
		w.failOp("grip", "a washer of Ø%s presses on a face whose hole is Ø%s", mm(2*g.WasherMM), mm(2*mouth))
	} else if rim := w.body.Outer.Least(lo, hi); g.WasherMM > rim+figure {
		w.failOp("grip", "a washer of Ø%s stands out over a face of Ø%s", mm(2*g.WasherMM), mm(2*rim))
	}
}

// checkWasher holds that no cut at the free end comes upon the screw and washer in front of the work.
func (w *walk) checkWasher(m motion, before solid.Body) {
	if !w.screwed() || w.onMill() {
		return
	}
	z0, z1 := before.Ends()
	face := z1
	if w.free() < 0 {
		face = z0
	}
	reached := math.Min(m.from.R, m.to.R)
	outward := math.Max(w.free()*(m.from.Z-face), w.free()*(m.to.Z-face)) > -clearance
	if r := w.setup.Grip.WasherMM + clearance; outward && reached < r-figure {
		w.failOp("clearance", "cut %q goes down to Ø%s at the free end, where a screw and a washer of Ø%s hold the work", m.name, mm(2*reached), mm(2*w.setup.Grip.WasherMM))
	}
}

// checkMandrelDrives holds what a mandrel passes on to turned work against every cut: by the friction of its shoulder, or of what presses outward in the bore.
func (w *walk) checkMandrelDrives() {
	g := w.setup.Grip
	var h mechanics.Hold
	var err error
	switch {
	case w.spreads():
		h, err = mechanics.RadialDrive(2*g.RadiusMM, mandrelPress, frictionFinished)
	case w.screwed():
		z := w.headZ() + w.free()*offSurface
		var r float64
		r, err = mechanics.FaceRadiusMM(2*math.Max(g.RadiusMM+shoulderRoom, w.body.Outer.Least(z-offSurface/2, z+offSurface/2)-shoulderRoom), 2*g.RadiusMM)
		screw := w.mandrelScrew() / screwM6
		h = mechanics.Hold{TorqueNm: frictionFinished * screwM6N * screw * screw * r / 1000}
	default:
		return
	}
	if err != nil {
		w.failOp("grip force", "%v", err)
		return
	}
	for _, l := range w.loads {
		if torque := l.force.MainN * l.radius / 1000; gripShare*safety*torque > h.TorqueNm {
			w.fail(l.at, "grip force", "cut %q turns with %.1f N·m; the mandrel drives %.1f with a safety of %g", l.name, torque, h.TorqueNm/safety, safety)
			return
		}
	}
}
