package replay

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// checkHoldingClear holds that a tool on a mill or a drilling machine keeps away from what holds the work, and has somewhere to come out.
func (w *walk) checkHoldingClear(a aside) {
	if w.atBench() {
		return
	}
	switch g := w.setup.Grip; {
	case a.pose.leans:
		w.checkJawsBelow(a)
	case !a.pose.across && (g.Kind == "jaws" || g.Kind == "collet" || g.Kind == "mandrel"):
		w.checkJawsClear(a)
	case a.pose.across && g.Kind != "clamps":
		w.checkJawsBeside(a)
	}
	w.checkClampsClear(a)
	w.checkWayOut(a)
}

// checkJawsClear holds that a tool which goes down as far as upright jaws stays inside them, or a mandrel outside.
func (w *walk) checkJawsClear(a aside) {
	g := w.setup.Grip
	up := a.pose.up()
	if up*(a.to[2]-w.jawFace()) >= clearance-same {
		return
	}
	near, far := a.reachOf()
	switch {
	case !g.Inside && far+clearance > g.RadiusMM+same:
		w.failOp("clearance", "cut %q goes down between jaws on Ø%s and comes within %s mm of them; it must keep %s away (rule B-45)", a.name, mm(2*g.RadiusMM), mm(g.RadiusMM-far), mm(clearance))
	case g.Inside && near-clearance < g.RadiusMM-same:
		w.failOp("clearance", "cut %q goes down beside what holds the bore of Ø%s and comes within %s mm of it; it must keep %s away (rule B-45)", a.name, mm(2*g.RadiusMM), mm(near-g.RadiusMM), mm(clearance))
	}
}

// checkJawsBeside holds that a tool over lying work stays off the stretch that is gripped, where the clamp of a vee block stands, or goes down between the jaws of a
// vice, which stand as far to each side as the work reaches.
func (w *walk) checkJawsBeside(a aside) {
	lo, hi := w.grip()
	z0, z1 := math.Min(a.from[0], a.to[0])-a.radius, math.Max(a.from[0], a.to[0])+a.radius
	side := math.Max(math.Abs(a.from[1]), math.Abs(a.to[1])) + a.radius
	if w.setup.Grip.Kind == "vice" && side+clearance <= w.setup.Grip.RadiusMM+same {
		return
	}
	if gap := math.Max(lo-z1, z0-hi); gap < clearance-same {
		w.failOp("clearance", "cut %q comes within %s mm of what grips the work from %s to %s; it must keep %s away (rule B-45)", a.name, mm(math.Max(gap, 0)), mm(lo), mm(hi), mm(clearance))
	}
}

// reachOf is how near to the part's axis an upright tool comes, and how far from it.
func (m pass) reachOf() (near, far float64) {
	path := m.path()
	off := path.Off(0, 0)
	return math.Max(0, off-m.radius), math.Max(math.Hypot(m.from[0], m.from[1]), math.Hypot(m.to[0], m.to[1])) + m.radius
}

// checkClampsClear holds that a tool passes every clamp, its strap and stud too, with room.
func (w *walk) checkClampsClear(a aside) {
	for i, c := range w.setup.Clamps {
		if gap := apart(a.path(), strap(c)) - a.radius - c.ToeMM/2; gap < clearance-same {
			w.failOp("clearance", "cut %q comes within %s mm of clamp %d; it must keep %s away (rule B-45)", a.name, mm(gap), i+1, mm(clearance))
		}
	}
}

// checkWayOut holds that a tool which comes out below the work has clear depth there, or a board (rule B-35).
func (w *walk) checkWayOut(a aside) {
	out := w.below(a)
	if out <= same {
		return
	}
	bed := w.setup.Bed
	if bed == nil {
		w.failOp("way out", "cut %q comes out %s mm below the work; nothing says what is there", a.name, mm(out))
		return
	}
	if bed.Kind != "jaws" && bed.GapMM > bed.HeightMM+figure {
		w.failOp("way out", "%s mm are said to be clear below the work, which stands on %s of %s", mm(bed.GapMM), bed.Kind, mm(bed.HeightMM))
	}
	if bed.Kind == "backing board" {
		if need := math.Max(out, boardShare*2*a.radius) + boardSpare; bed.HeightMM < need-figure {
			w.failOp("way out", "cut %q goes %s mm into a board of %s; it wants %s (rule B-35)", a.name, mm(out), mm(bed.HeightMM), mm(need))
		}
		return
	}
	if bed.GapMM < out+clearance-figure {
		w.failOp("way out", "cut %q comes out %s mm below the work, where %s mm are clear; it needs %s more than it takes (rule B-35)", a.name, mm(out), mm(bed.GapMM), mm(clearance))
	}
	if len(bed.Under) == 0 && bed.Kind != "jaws" && bed.Kind != jawSteps {
		w.failOp("way out", "cut %q comes out below the work, which stands on its %s all over", a.name, bed.Kind)
	}
	for _, s := range bed.Under {
		if gap := stripOff(s, a.to[0], a.to[1]) - a.radius; gap < clearance-figure {
			w.failOp("way out", "cut %q comes out %s mm from what carries the work; it must keep %s away (rule B-35)", a.name, mm(gap), mm(clearance))
		}
	}
}

// A board under the work is as thick as 0.3 of the drill and 3 more (rule B-35).
const (
	boardShare = 0.3
	boardSpare = 3.0
)

// below is how far a tool's end comes out below the work.
func (w *walk) below(a aside) float64 {
	if a.pose.across {
		wide := math.Max(a.radius, offSurface) // a tap is given no width here
		lo, hi := math.Min(a.from[0], a.to[0])-wide, math.Max(a.from[0], a.to[0])+wide
		return -w.body.Outer.Greatest(lo, hi) - a.to[2]
	}
	z0, z1 := w.body.Ends()
	if a.pose.leans {
		return math.Min(a.pose.free*z0, a.pose.free*z1) - a.lowest()
	}
	if a.pose.up() > 0 {
		return z0 - a.to[2]
	}
	return a.to[2] - z1
}

// stripOff is how far a place lies from a rectangle of the table's plane; 0 inside.
func stripOff(s plan.Strip, x, y float64) float64 {
	dx := math.Max(math.Max(math.Min(s.X0, s.X1)-x, x-math.Max(s.X0, s.X1)), 0)
	dy := math.Max(math.Max(math.Min(s.Y0, s.Y1)-y, y-math.Max(s.Y0, s.Y1)), 0)
	return math.Hypot(dx, dy)
}

// push is what a pass on a mill or a drilling machine pushes with.
type push struct {
	at      where
	name    string
	mainN   float64 // at the tool's rim, or at a quarter of a drill
	radius  float64 // where mainN acts, from the tool's axis
	thrustN float64 // along the spindle, into the work
	from    float64 // how far from the part's axis the tool's own axis stands, in the table's plane
	level   place   // where it acts
	sideN   float64 // in the table's plane: milling
}

// addPush reckons a pass's force.
func (w *walk) addPush(op plan.Operation, a aside) {
	p, ok := w.pushOf(op, a)
	if !ok {
		return
	}
	if op.ForceN < forceShare*math.Max(p.mainN, p.sideN) {
		w.failOp("force", "cut %q pushes with %.0f N, the grip was judged by %.0f", a.name, math.Max(p.mainN, p.sideN), op.ForceN)
	}
	w.pushes = append(w.pushes, p)
	if v := 2 * math.Pi * p.radius * op.RPM / 1000; w.machine.PowerKW > 0 && op.RPM > 0 {
		if need, have := mechanics.CuttingPowerKW(p.mainN/wear, v), w.machine.PowerKW*driveShare; need > have {
			w.failOp("power", "cut %q takes %.2f kW at the spindle; %s has %.2f to give (rule C-29)", a.name, need, w.machine.Name, have)
		}
	}
}

// pushOf is the force of a pass; not ok where nothing is known of it: fed by hand, or a metal with no figures.
func (w *walk) pushOf(op plan.Operation, a aside) (p push, ok bool) {
	mat := w.part.Material
	if mat.Kc11MPa == 0 || op.FeedMM <= 0 || a.process == plan.Tap {
		return p, false
	}
	p = push{at: w.at, name: a.name, from: math.Hypot(a.to[0], a.to[1]), level: a.to}
	if a.pose.across {
		p.from = math.Abs(a.to[1])
	}
	switch a.Kind {
	case partspec.Drills, partspec.Counterbores:
		return w.drillPush(op, a, p)
	case partspec.EndMill, partspec.BallNose:
		return w.millPush(op.FeedMM, a, p)
	case partspec.FlyCutter, partspec.BoringHead:
		return w.swungPush(op.FeedMM, a, p)
	}
	return p, false
}

// drillPush is the torque and the thrust of a drill or a counterbore that opens what it finds.
func (w *walk) drillPush(op plan.Operation, a aside, p push) (push, bool) {
	d, found := 2*a.radius, 0.0
	goal, _ := nearestAim(w.aimsOf(w.part.Feature(a.feature), a.pose), a.to[0], a.to[1])
	if h := w.holes[holeKey{a.feature, goal.number}]; h != nil {
		for _, s := range h.steps {
			if s.key != a.key && s.bores() {
				found = math.Max(found, 2*s.radius)
			}
		}
	}
	if found >= d {
		return p, false
	}
	p.radius = d / 4
	if a.Kind == partspec.Counterbores {
		p.radius = d / 2
	}
	f, err := mechanics.DrillCut{DiameterMM: d, FeedMM: op.FeedMM, PointAngleDeg: a.pointDeg(), KC11MPa: w.part.Material.Kc11MPa, MC: w.part.Material.Mc, WearFactor: wear, PilotMM: found}.Force()
	if err != nil {
		w.failOp("force", "%v", err)
		return p, false
	}
	p.mainN, p.thrustN = f.TorqueNm*1000/p.radius, f.ThrustN
	return p, true
}

// checkPushes holds, when a setup off the lathe ends, that the holding resists every pass.
func (w *walk) checkPushes() {
	g := w.setup.Grip
	least := 0.0
	for _, p := range w.pushes {
		need, why, err := w.needOf(p)
		if err != nil {
			w.fail(p.at, "grip force", "%v", err)
			return
		}
		if have := w.pressN(p.at.op); have < gripShare*need {
			w.fail(p.at, "grip force", "cut %q needs %.0f N (%s%s); the grip is %.0f N", p.name, need, why, w.thrustNote(p), have)
			return
		}
		least = math.Max(least, need)
	}
	if g.LeastN < gripShare*least {
		w.failOp("grip force", "the cuts need %.0f N, the plan says %.0f", least, g.LeastN)
	}
}

// pressN is what presses on the work at an operation: a jaw of it, or all clamps together.
func (w *walk) pressN(op string) float64 {
	if w.setup.Grip.Kind != "clamps" || len(w.setup.Clamps) == 0 {
		return w.workingN(op)
	}
	sum := 0.0
	for _, c := range w.setup.Clamps {
		sum += c.ForceN
	}
	return sum
}

// footRadius is the outside of the face that upright work stands on.
func (w *walk) footRadius() float64 {
	z0, z1 := w.body.Ends()
	if w.free() < 0 {
		z0 = z1
	}
	return w.body.Keep(z0-offSurface, z0+offSurface).Outer.Least(-solid.Far, solid.Far)
}

// needOf is the force that a pass asks of the holding: a jaw, or all clamps together.
func (w *walk) needOf(p push) (needN float64, why string, err error) {
	g := w.setup.Grip
	switch g.Kind {
	case "jaws", "vice", "vee":
		f, err := mechanics.LeastGripPerJaw(w.jawsDemand(p))
		return f.PerJawN, "a jaw, " + f.RuledBy, err
	case "clamps":
		// Friction under the clamps bears the push in the table's plane; the torque of a drill is small against it, and a stop takes the turning of a milled
		// disc about its screw (rule B-07). A thrust presses the work down, and tips it from outside the face that it stands on.
		side, lever := p.sideN, math.Max(w.body.Outer.Greatest(w.body.Ends())/2, 1)
		if g.Inside { // the face round the bore bears it
			lever = g.RadiusMM
		}
		if side == 0 {
			side = p.mainN * p.radius / lever
		}
		slip, tip := safety*side/frictionFinished, 0.0
		if foot := w.footRadius(); !w.setup.Across {
			tip = safety * p.thrustN * (p.from - foot) / foot
		}
		if tip > slip {
			return tip, "in all, tipping", nil
		}
		return slip, "in all, slip", nil
	}
	return 0, "", fmt.Errorf("nothing is known of how a %s holds against %q", g.Kind, p.name)
}

// jawsOfVice are those of a vice; a vee block's clamp and its two faces are reckoned as so many too.
const jawsOfVice = 2

// jawsDemand is a pass as jaws feel it: the tool's own torque turns the work about the tool, which is the same about any axis; its thrust is
// carried by friction, or by what the work stands on; its side force pushes, turns and tips.
func (w *walk) jawsDemand(p push) mechanics.GripDemand {
	lo, hi := w.grip()
	friction := frictionFinished
	if w.setup.Locates == "stock" {
		friction = frictionRaw
	}
	d := mechanics.GripDemand{MainN: p.mainN, CutRadiusMM: p.radius, FeedN: p.thrustN, GripRadiusMM: w.setup.Grip.RadiusMM, GripLengthMM: w.contact, Jaws: max(w.setup.Grip.Jaws, jawsOfVice),
		Friction: friction, Safety: safety, AxialStop: w.carried()}
	z, arm := p.level[2], p.from+p.radius
	if w.setup.Across {
		z, arm = p.level[0], math.Abs(p.level[2]) // a push across the axis, as high as the tool's end, turns the work in the jaws
		d.AxialStop = true                        // the thrust goes into the bed
		if p.sideN == 0 {
			d.CutRadiusMM = p.radius
		}
	}
	if p.sideN > 0 {
		d.MainN, d.CutRadiusMM, d.OverhangMM = p.sideN, arm, math.Abs(z-(lo+hi)/2)
	}
	if w.divided() && w.setup.Across {
		w.outOfHead(&d, p)
	}
	if w.tilted() {
		w.setOverDemand(&d, p)
	}
	return d
}

// jawSteps is the bed of a disc whose end sits hard on the steps of upright jaws.
const jawSteps = "jaw steps"

// carried reports whether something stands under the work in upright jaws: parallels, packing or a board, or a shoulder on the jaws' face.
func (w *walk) carried() bool {
	bed := w.setup.Bed
	if bed != nil && bed.Kind == jawSteps {
		return w.seated()
	}
	return bed != nil && bed.Kind != "jaws" || w.shouldered()
}

// thrustNote tells that a thrust is held by the jaws alone.
func (w *walk) thrustNote(p push) string {
	if p.thrustN == 0 || w.carried() {
		return ""
	}
	return fmt.Sprintf("; nothing stands under the work, so that the jaws' friction alone bears a thrust of %.0f N", p.thrustN)
}

// shouldered reports whether a shoulder of the work sits on the jaws' face.
func (w *walk) shouldered() bool {
	behind, before := w.body.Outer.At(w.jawFace())
	if w.free() < 0 {
		behind, before = before, behind
	}
	return before > behind+offSurface
}
