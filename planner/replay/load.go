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
	forceShare = 0.9
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
}

// addLoad reckons a cut's force from the metal that it really takes.
func (w *walk) addLoad(op plan.Operation, m motion, before solid.Body) {
	chip, ok := w.chip(op, m, before)
	if !ok {
		return
	}
	f, err := mechanics.CuttingForce(chip)
	if err != nil {
		w.failOp("force", "%v", err)
		return
	}
	l := load{at: w.at, name: m.name, force: f, radius: math.Max(math.Abs(m.from.R), math.Abs(m.to.R)), z: m.from.Z, body: w.body}
	z0, z1 := before.Ends()
	l.z = math.Max(z0, math.Min(z1, l.z))
	if m.along() && w.free()*(m.to.Z-m.from.Z) > 0 {
		l.z = math.Max(z0, math.Min(z1, m.to.Z))
	}
	l.radius = math.Min(l.radius, before.Outer.Greatest(z0, z1))
	if m.set() { // two lips, each pressing half-way out
		l.axial, l.radius = true, m.size/4
		l.force.MainN *= 2
		l.force.FeedN *= 2
	}
	if op.ForceN > 0 && op.ForceN < forceShare*l.force.MainN {
		w.failOp("force", "cut %q pushes with %.0f N, the grip was judged by %.0f", m.name, l.force.MainN, op.ForceN)
	}
	w.loads = append(w.loads, l)
	w.checkPower(op, l)
	w.checkSurface(op, m, 2*math.Min(math.Max(math.Abs(m.from.R), l.radius), before.Outer.Greatest(z0, z1)))
}

// chip is the section of a cut; not ok where nothing is known of it: fed by hand, form tools, a metal with no figures.
func (w *walk) chip(op plan.Operation, m motion, before solid.Body) (mechanics.Cut, bool) {
	mat := w.part.Material
	if mat.Kc11MPa == 0 || op.FeedMM <= 0 {
		return mechanics.Cut{}, false
	}
	c := mechanics.Cut{KC11MPa: mat.Kc11MPa, MC: mat.Mc, FeedMM: op.FeedMM, EdgeAngleDeg: edgeAngle, WearFactor: wear}
	switch m.Kind {
	case partspec.Turning, partspec.Boring:
		c.DepthMM, _ = w.depth(m, before)
	case partspec.Parting, partspec.Grooving, partspec.RecessTool:
		c.DepthMM = float64(m.Width)
	case partspec.Drills:
		c.DepthMM, _ = w.depth(m, before)
		c.FeedMM /= 2
		c.EdgeAngleDeg = plan.DrillPointDeg / 2
	default:
		return mechanics.Cut{}, false
	}
	return c, c.DepthMM > 0
}

// driveShare is what reaches the spindle of the motor's power, and motorShare how much of the motor is used (rule C-29).
const (
	driveShare = 0.75
	motorShare = 0.7
)

func (w *walk) checkPower(op plan.Operation, l load) {
	if w.machine.PowerKW == 0 || op.RPM == 0 {
		return
	}
	v := 2 * math.Pi * l.radius * op.RPM / 1000
	if need, have := mechanics.CuttingPowerKW(l.force.MainN, v), w.machine.PowerKW*driveShare*motorShare; need > have {
		w.failOp("power", "cut %q takes %.2f kW at the spindle; %s has %.2f to give (rule C-29)", l.name, need, w.machine.Name, have)
	}
}
