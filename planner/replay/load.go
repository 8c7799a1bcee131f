package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

const (
	// edgeAngle is that of a knife tool, blade and boring tool against the feed.
	edgeAngle = 90.0
	// wear is the usual allowance for a worn edge (handbook, from memory).
	wear = 1.3
	// forceShare is how far the plan's force may lie under the one reckoned here: it may have measured the chip a little otherwise.
	forceShare = 0.8
)

// load is what a cut pushes with, and where.
type load struct {
	setup, op int // places in the plan
	at        where
	name      string
	force     mechanics.CutForce
	radius    float64
	z         float64 // where it acts, the place farthest from the grip
	axial     bool    // on the axis: it does not tilt
	body      solid.Body
	deep      float64 // radial depth
	measured  bool    // the size is crept up to by measuring
}

// addLoad reckons a cut's force from the metal that it really takes.
func (w *walk) addLoad(op plan.Operation, m motion, before solid.Body) {
	f, deep, ok := w.push(op, m, before)
	if !ok {
		return
	}
	l := load{setup: m.key.setup, op: m.key.op, at: w.at, name: m.name, force: f, deep: deep, measured: m.measured > 0, radius: math.Max(math.Abs(m.from.R), math.Abs(m.to.R)), z: m.from.Z, body: w.body}
	z0, z1 := before.Ends()
	l.z = math.Max(z0, math.Min(z1, l.z))
	if m.along() && w.free()*(m.to.Z-m.from.Z) > 0 {
		l.z = math.Max(z0, math.Min(z1, m.to.Z))
	}
	widest := before.Outer.Greatest(z0, z1) // what it meets: a slanting cut may begin and end far outside the metal
	if lost := solid.Lost(before, w.body, same); lost.Any() {
		widest = before.Outer.Greatest(lost.Z0, lost.Z1)
	}
	l.radius = math.Min(l.radius, widest)
	if m.across() && (m.Kind == partspec.Parting || m.Kind == partspec.Grooving) && !m.inside {
		l.radius = math.Min(l.radius, m.bladeArm(before.Outer, w.free()))
	}
	if m.set() {
		l.axial, l.radius = true, m.size/4
	}
	if op.ForceN < forceShare*l.force.MainN {
		w.failOp("force", "cut %q pushes with %.0f N, the grip was judged by %.0f", m.name, l.force.MainN, op.ForceN)
	}
	w.loads, w.all = append(w.loads, l), append(w.all, l)
	w.checkPower(op, l)
	w.checkSurface(op, m, 2*math.Min(math.Max(math.Abs(m.from.R), l.radius), widest))
}

// bladeArm is the radius at which a blade's whole force turns as hard as the blade does anywhere on its way in: where it meets a corner of the bar beside its place,
// only as much of its width cuts there.
func (m motion) bladeArm(outer solid.Curve, free float64) float64 {
	wide := float64(m.Width)
	if wide <= same {
		return math.Inf(1)
	}
	corners := [2]float64{m.from.Z, m.from.Z + free*wide}
	pieces, arm := outer.Clip(math.Min(corners[0], corners[1]), math.Max(corners[0], corners[1])).Pieces(), 0.0
	for _, p := range pieces {
		r, cutting := math.Max(p.R0, p.R1), 0.0
		for _, q := range pieces {
			if math.Max(q.R0, q.R1) >= r-same {
				cutting += q.Z1 - q.Z0
			}
		}
		arm = math.Max(arm, r*math.Min(1, cutting/wide))
	}
	return arm
}

// push is the force of a cut and its depth; not ok where nothing is known of it: fed by hand, form tools, a metal with no figures.
func (w *walk) push(op plan.Operation, m motion, before solid.Body) (f mechanics.CutForce, deep float64, ok bool) {
	mat := w.part.Material
	if mat.Kc11MPa == 0 || op.FeedMM <= 0 {
		return f, 0, false
	}
	switch m.Kind {
	case partspec.Turning, partspec.Boring:
		// What measuring may find over is taken in a pass more, or is half of the cut at most.
		deep, _ = w.depth(m, before)
		deep = math.Max(deep/2, deep-w.slack(m))
	case partspec.Parting, partspec.Grooving, partspec.RecessTool:
		deep = float64(m.Width)
		if lost := w.lost(m, before); m.along() { // it takes off what plunging has left
			deep = math.Min(deep, math.Max(lost.Inside, lost.Outside))
		}
	case partspec.Drills:
		f, ok = w.twist(op, m, before)
		return f, m.size / 2, ok
	}
	if deep <= 0 {
		return f, 0, false
	}
	f, err := mechanics.CuttingForce(mechanics.Cut{KC11MPa: mat.Kc11MPa, MC: mat.Mc, DepthMM: deep, FeedMM: op.FeedMM, EdgeAngleDeg: edgeAngle, WearFactor: wear})
	if err != nil {
		w.failOp("force", "%v", err)
	}
	return f, deep, err == nil
}

// twist is the force of a drill: its torque, as if it acted at a quarter of the diameter.
func (w *walk) twist(op plan.Operation, m motion, before solid.Body) (mechanics.CutForce, bool) {
	lost := solid.Lost(before, w.body, same).Inside
	pilot := m.size - 2*lost
	if pilot < same {
		pilot = 0
	}
	f, err := mechanics.DrillCut{DiameterMM: m.size, FeedMM: op.FeedMM, PointAngleDeg: plan.DrillPointDeg, KC11MPa: w.part.Material.Kc11MPa,
		MC: w.part.Material.Mc, WearFactor: wear, PilotMM: pilot}.Force()
	if err != nil {
		w.failOp("force", "%v", err)
		return mechanics.CutForce{}, false
	}
	return mechanics.CutForce{MainN: f.TorqueNm * 1000 / (m.size / 4), FeedN: f.ThrustN, Confidence: f.Confidence}, lost > 0
}

// driveShare is what reaches the spindle of the motor's power (rule C-29).
const driveShare = 0.75

// checkPower holds that the motor drives the cut with a sharp edge: a worn one is the safety of the grip, not of the motor.
func (w *walk) checkPower(op plan.Operation, l load) {
	if w.machine.PowerKW == 0 || op.RPM == 0 {
		return
	}
	v := 2 * math.Pi * l.radius * op.RPM / 1000
	if need, have := mechanics.CuttingPowerKW(l.force.MainN/wear, v), w.machine.PowerKW*driveShare; need > have {
		w.failOp("power", "cut %q takes %.2f kW at the spindle; %s has %.2f to give (rule C-29)", l.name, need, w.machine.Name, have)
	}
}
