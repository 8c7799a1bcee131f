package replay

import (
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
)

const (
	// friction between jaws and work, and the safety factor (rule B-42: smooth on finished work 0.15, serrated on rough 0.25; 2.5).
	frictionFinished = 0.15
	frictionRaw      = 0.25
	safety           = 2.5
	// glueShear is the most that a glued joint is reckoned with (rule B-16).
	glueShear = 1.5
	// gripShare is how far the plan's grip may lie under the least reckoned here.
	gripShare = 0.95
	// roundShare is the share of the roundness allowed that the grip may take (rule B-23: a third).
	roundShare = 1.0 / 3
	// errorFigure is how far the plan's lobed error may lie under the one reckoned here: the formula's own error in part-length grips.
	errorFigure = 0.1
)

// release checks, when all cuts of a setup are known, that the grip held and did not harm.
func (w *walk) release() {
	g := w.setup.Grip
	if w.atBench() {
		return
	}
	w.checkStickOut()
	w.checkBend()
	switch g.Kind {
	case "jaws":
		w.checkJawForce()
		w.checkDistortion()
	case "collet":
		w.checkJawForce()
	case "glued_face", "glued_bore":
		w.checkGlue()
	case "mandrel", "split_mandrel":
		w.checkMandrelDrives()
	}
	if w.onMill() {
		w.checkPushes()
		w.checkHeadBends()
	}
}

// checkJawForce holds the working grip against the least that every cut needs, and against what the chuck gives.
func (w *walk) checkJawForce() {
	g, h := w.setup.Grip, w.holding
	least := 0.0
	for _, l := range w.loads {
		need, err := mechanics.LeastGripPerJaw(w.demand(l))
		if err != nil {
			w.failOp("grip force", "%v", err)
			return
		}
		if have := w.workingN(l.at.op); have < gripShare*need.PerJawN {
			w.fail(l.at, "grip force", "cut %q needs %.0f N a jaw (%s); the grip is %.0f N", l.name, need.PerJawN, need.RuledBy, have)
			return
		}
		if g.Eased == nil || w.workingN(l.at.op) == g.Eased.WorkingN { // LeastN is that of the last part of the setup
			least = math.Max(least, need.PerJawN)
		}
	}
	if g.LeastN < gripShare*least {
		w.failOp("grip force", "the cuts need %.0f N a jaw, the plan says %.0f", least, g.LeastN)
	}
	if firm := float64(h.GripFirm); firm > 0 && g.WorkingN > firm*(1+figure) {
		w.failOp("grip force", "%.0f N a jaw; %s gives at most %.0f", g.WorkingN, h.Name, firm)
	}
	if light := float64(h.GripLight); light > 0 && w.lastN() < light*(1-figure) {
		w.failOp("grip force", "%.0f N a jaw; the lightest nip of %s is %.0f", w.lastN(), h.Name, light)
	}
	if g.MostN != 0 && w.lastN() > g.MostN*(1+figure) {
		w.failOp("grip force", "%.0f N a jaw is more than the %.0f that the work stands", w.lastN(), g.MostN)
	}
}

func (w *walk) demand(l load) mechanics.GripDemand {
	lo, hi := w.grip()
	friction := frictionFinished
	if w.setup.Locates == "stock" {
		friction = frictionRaw
	}
	held, _ := w.own(w.setup.Grip.RadiusMM, 0)
	d := mechanics.GripDemand{AxialStop: w.seated(), MainN: l.force.MainN, FeedN: l.force.FeedN, PassiveN: l.force.PassiveN, CutRadiusMM: l.radius,
		GripRadiusMM: held, GripLengthMM: w.contact, Jaws: w.setup.Grip.Jaws, Friction: friction, Safety: safety}
	if w.part.Seen != nil { // what is turned there meets gaps until it is round
		d.Safety = interrupted
	}
	if !w.setup.Tailstock && !l.axial {
		d.OverhangMM = math.Abs(l.z - (lo+hi)/2)
	}
	if l.axial { // the thrust goes into the spindle
		d.AxialStop, d.PassiveN = true, 0
	}
	return d
}

// seated reports whether the feed can push the work on the chuck: its end lies where the jaws' grip ends, on their steps, or a shoulder on their face.
func (w *walk) seated() bool {
	lo, hi := w.grip()
	back, front := lo, hi
	if w.free() < 0 {
		back, front = hi, lo
	}
	if math.Abs(w.headZ()-back) <= same+w.slackPlace {
		return true
	}
	mark := w.saddleMark() // the jaws are pushed against the shoulder where it is
	behind, _ := w.body.Outer.At(front - w.free()*mark)
	before, _ := w.body.Outer.At(front + w.free()*mark)
	return before > behind+offSurface
}

// checkDistortion holds the lobed error that the grip leaves against the plan's figure and against the roundness of what was cut in it.
func (w *walk) checkDistortion() {
	g := w.setup.Grip
	limit, of := w.roundness()
	if w.solid() {
		return
	}
	ring := w.ring(w.lastN())
	w.checkYield(ring)
	if math.IsInf(limit, 1) {
		return // nothing round was made
	}
	if g.LimitMM > limit+figure {
		w.failOp("distortion", "the plan lets %s mm of lobed error pass; %s allows %s", mm(g.LimitMM), of, mm(limit))
	}
	d, err := ring.Distortion()
	if err != nil || d.Trust == mechanics.TrustNone {
		if g.Trust == string(mechanics.TrustGood) {
			w.failOp("distortion", "the plan trusts its lobed error, but no figure can be trusted here")
		}
		return
	}
	if d.Trust != mechanics.TrustGood {
		return // a bound from outside the formula's range decides nothing
	}
	if g.ErrorMM < d.ErrorMostMM*(1-errorFigure)-figure {
		w.failOp("distortion", "the grip leaves a lobed error of %s mm, the plan says %s", mm(d.ErrorMostMM), mm(g.ErrorMM))
	}
	if d.ErrorMostMM > limit+figure {
		w.failOp("distortion", "the grip leaves a lobed error of %s mm; %s allows %s", mm(d.ErrorMostMM), of, mm(limit))
	}
}

// checkYield holds that the wall springs back when the grip is let go.
func (w *walk) checkYield(ring mechanics.RingGrip) {
	d, err := ring.Distortion()
	if err == nil && ring.YieldShare(d.StressMostMPa) > 1+yieldFigure {
		w.failOp("distortion", "the wall would yield under %.0f N a jaw: %.0f MPa, with what the figure may be low by, against %.0f", ring.ForcePerJawN, d.StressMostMPa, ring.YieldMPa)
	}
}

const (
	// yieldFigure is by how much of the yield the stress reckoned here may differ from the plan's: its walls are those of other moments.
	yieldFigure = 0.05
	// boredShare is the part of its share of the circle that a bored soft jaw covers (rule B-21: gaps of a twentieth; ours, with the corners off).
	boredShare = 0.9
	// plugClearance is that of a plug turned to the measured bore, in radius (0 to 0.02 on diameter).
	plugClearance = 0.005
)

// solid reports whether the work has no hole under the jaws.
func (w *walk) solid() bool {
	lo, hi := w.grip()
	return w.body.Inner.Greatest(lo, hi) <= same
}

// saddleMark is a graduation of the saddle: faces that are set by it stand up to so much beside their drawn place.
func (w *walk) saddleMark() float64 {
	if d, ok := w.machine.Dial("saddle"); ok {
		return float64(d.Graduation.Value)
	}
	return offSurface
}

// ring is the work as a plain ring in the jaws, as thin as it is anywhere under them but for a mark at their ends, where a neighbour may begin.
func (w *walk) ring(forcePerJawN float64) mechanics.RingGrip {
	g, m := w.setup.Grip, w.part.Material
	lo, hi := w.grip()
	z0, z1 := w.body.Ends()
	lo, hi = math.Max(lo, z0), math.Min(hi, z1)
	outside, wall := g.RadiusMM, w.body.LeastWall(lo, hi)
	if off := w.saddleMark(); hi-lo > 4*off {
		wall = w.body.LeastWall(lo+off, hi-off)
	}
	if g.Inside {
		outside = g.RadiusMM + wall
	}
	r := mechanics.RingGrip{
		OutsideDiameterMM: 2 * outside, WallMM: wall, LengthMM: math.Max(z1-z0, hi-lo), GripLengthMM: hi - lo, Jaws: g.Jaws, JawWidthMM: g.JawWidthMM,
		ForcePerJawN: forcePerJawN, ModulusMPa: m.ModulusGPa.Middle() * 1000, Poisson: m.Poisson, YieldMPa: m.YieldMPa.Low, Inside: g.Inside,
	}
	outside, r.WallMM = w.own(outside, wall)
	r.OutsideDiameterMM = 2 * outside
	if w.holding.Kind == partspec.SoftJaws {
		r.JawWidthMM, r.JawArcDeg = 0, boredShare*360/float64(max(1, g.Jaws))
	}
	if w.plugged() {
		r.Plug = &mechanics.Plug{ClearanceMM: plugClearance}
	}
	return r
}

// plugged reports whether a plug is made for this setup.
func (w *walk) plugged() bool {
	for _, h := range w.plan.MakeFirst {
		if h.ForSetup == w.setup.Number && strings.HasPrefix(h.ID, string(partspec.Plug)) {
			return true
		}
	}
	return false
}

// checkGlue holds what a glued joint carries against every cut.
func (w *walk) checkGlue() {
	g := w.setup.Grip
	var h mechanics.Hold
	var err error
	lo, hi := w.grip()
	if g.Kind == "glued_bore" {
		h, err = mechanics.BondedSpigot(2*g.RadiusMM, hi-lo, glueShear)
	} else {
		z := w.freeZ() - w.free()*(math.Abs(w.freeZ()-w.headZ())-offSurface)
		o, i := w.body.Outer.Least(z-offSurface, z+offSurface), w.body.Inner.Greatest(z-offSurface, z+offSurface)
		h, err = mechanics.BondedFace(2*o, 2*i, glueShear)
	}
	if err != nil {
		w.failOp("grip force", "%v", err)
		return
	}
	for _, l := range w.loads {
		if torque := l.force.MainN * l.radius / 1000; safety*torque > h.TorqueNm {
			w.fail(l.at, "grip force", "cut %q turns with %.1f N·m; the glued joint holds %.1f with a safety of %g", l.name, torque, h.TorqueNm/safety, safety)
			return
		}
	}
}

// headZ is the work's end on the headstock's side.
func (w *walk) headZ() float64 {
	z0, z1 := w.body.Ends()
	if w.free() > 0 {
		return z0
	}
	return z1
}
