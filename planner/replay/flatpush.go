package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// flatPush is what a tool on the mill or the drilling machine does to the work.
type flatPush struct {
	at     where
	name   string
	x, y   float64 // where, the place farthest from the middle of the grip
	x1, y1 float64 // the other end of the way
	sideN  float64 // across the spindle
	torque float64 // about the spindle, N mm
	thrust float64 // along the spindle, into the work
	radius float64
}

// teethOf is how many teeth a milling cutter has: a fly-cutter one, others two below 6 mm and four above. Common practice, no source: a workshop does not say.
func teethOf(c cutter) float64 {
	switch {
	case c.Kind == partspec.FlyCutter:
		return 1
	case c.size < 6:
		return 2
	}
	return 4
}

// addPush reckons a movement's force from the metal that it really takes.
func (f *flatWalk) addPush(op plan.Operation, m pass, t taken) {
	mat := f.part.Material
	if mat.Kc11MPa == 0 || op.FeedMM <= 0 {
		return
	}
	p := flatPush{at: f.at, name: m.name, x: m.from[0], y: m.from[1], x1: m.to[0], y1: m.to[1], radius: m.radius}
	switch m.Kind {
	case partspec.Drills:
		d, err := mechanics.DrillCut{DiameterMM: m.size, FeedMM: op.FeedMM, PointAngleDeg: plan.DrillPointDeg, KC11MPa: mat.Kc11MPa, MC: mat.Mc, WearFactor: wear, PilotMM: f.pilot(m)}.Force()
		if err != nil {
			f.failOp("force", "%v", err)
			return
		}
		p.torque, p.thrust = d.TorqueNm*1000, d.ThrustN
	case partspec.EndMill, partspec.FlyCutter, partspec.BallNose:
		if _, moves := m.slot(); !moves {
			f.checkOnSlide(m, 0)
			return // it goes down, like a counterbore: by hand, into the bed
		}
		deep, wide := f.metalOf(m, t)
		f.checkOnSlide(m, deep)
		if most := op.DepthMM + m.measured + f.slackPlace + figure; deep > most && wide > most {
			f.failOp("depth of cut", "cut %q is %s deep and %s wide, the operation says at most %s", m.name, mm(deep), mm(wide), mm(op.DepthMM))
		}
		p.sideN = f.teethPush(m, deep, wide, op.FeedMM)
	case partspec.HoleSaw:
		p.torque = f.sawTurns(m, op.FeedMM)
		p.thrust = p.torque / m.radius // teeth without rake press about as hard as they drive
		f.checkSawSpeed(op, m)
	case partspec.BoringHead:
		p.sideN = f.chip(m.radius-f.pilot(m)/2-f.slackRadius, op.FeedMM)
	default:
		return
	}
	arm := math.Max(op.Tool.SizeMM, m.size) / 4 // where the torque of a chain of drills is told to act: of the last one
	if m.Kind == partspec.HoleSaw {
		arm = m.radius // at its teeth
	}
	if main := math.Max(p.sideN, p.torque/math.Max(arm, same)); op.ForceN < forceShare*main {
		f.failOp("force", "cut %q pushes with %.0f N, the holding was judged by %.0f", m.name, main, op.ForceN)
	}
	f.checkMillPower(op, p)
	f.checkRim(op, m)
	f.pushes = append(f.pushes, p)
}

// chip is the force of a chip, N; 0 for none.
func (f *flatWalk) chip(deep, feed float64) float64 {
	if deep <= same || feed <= 0 {
		return 0
	}
	c, err := mechanics.CuttingForce(mechanics.Cut{KC11MPa: f.part.Material.Kc11MPa, MC: f.part.Material.Mc, DepthMM: deep, FeedMM: feed, EdgeAngleDeg: edgeAngle, WearFactor: wear})
	if err != nil {
		f.failOp("force", "%v", err)
		return 0
	}
	return c.MainN
}

// pilot is the diameter of the hole that a tool on its axis finds; 0 = none.
func (f *flatWalk) pilot(m pass) float64 {
	for i := len(f.work.taken) - 1; i >= 0; i-- {
		t := f.work.taken[i]
		if t.key == m.key || !t.centre || t.mark {
			continue
		}
		if x, y, r := t.centred((math.Max(t.z0, f.work.back) + math.Min(t.z1, f.work.front)) / 2); math.Hypot(x-m.to[0], y-m.to[1]) <= centreNear && r >= leadRadius && r < m.radius-same {
			return 2 * r
		}
	}
	return 0
}

// teethPush is the force of a milling cutter's teeth in the cut, N, each with the thickest chip that it takes there: 2 f sqrt(w/d (1 - w/d)) a tooth for a width w of
// the diameter d, f from half of it on. Plane geometry and Kienzle's law.
func (f *flatWalk) teethPush(m pass, deep, wide, feed float64) float64 {
	engaged, teeth := math.Min(1, wide/(2*m.radius)), teethOf(m.cutter)
	chip := feed / teeth
	if engaged < 0.5 {
		chip *= 2 * math.Sqrt(engaged*(1-engaged))
	}
	arc := math.Acos(1-2*engaged) / (2 * math.Pi)
	return math.Max(1, math.Ceil(arc*teeth)) * f.chip(deep, math.Max(chip, thinChip))
}

// thinChip keeps the force law to chips that are cut rather than rubbed, mm (handbook practice, from memory).
const thinChip = 0.005

// metalOf is how much metal a milling cutter takes on its way: along the spindle, and across its way.
func (f *flatWalk) metalOf(m pass, t taken) (deep, wide float64) {
	before := f.work
	before.taken = before.taken[:len(before.taken)-1]
	levels := before.levels()
	low, high := math.Inf(1), math.Inf(-1)
	long, moves := m.slot()
	for i := 1; i < len(levels); i++ {
		a, b := math.Max(levels[i-1], t.z0), math.Min(levels[i], t.z1)
		if b-a <= same {
			continue
		}
		z := (a + b) / 2
		rim := plane.Common([]plane.Set{before.stock, t.at(z, 0)}, before.gone(z))
		if len(rim) == 0 {
			continue
		}
		low, high = math.Min(low, a), math.Max(high, b)
		if !moves {
			wide = 2 * m.radius
			continue
		}
		wide = math.Max(wide, spanAcross(rim, (m.to[0]-m.from[0])/long, (m.to[1]-m.from[1])/long))
	}
	return math.Max(0, high-low), wide
}

// spanAcross is how wide a figure is square to a direction, by the ends and the middles of its rim's pieces.
func spanAcross(rim []plane.Edge, ux, uy float64) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, e := range rim {
		mx, my := e.At(0.5)
		for _, p := range [][2]float64{{e.X0, e.Y0}, {mx, my}, {e.X1, e.Y1}} {
			d := p[0]*uy - p[1]*ux
			low, high = math.Min(low, d), math.Max(high, d)
		}
	}
	return high - low
}

// checkMillPower holds that the motor drives the cut with a sharp edge.
func (f *flatWalk) checkMillPower(op plan.Operation, p flatPush) {
	if f.machine.PowerKW == 0 || op.RPM == 0 {
		return
	}
	force := math.Max(p.sideN, p.torque/math.Max(p.radius, same))
	if need, have := mechanics.CuttingPowerKW(force/wear, 2*math.Pi*p.radius*op.RPM/1000), f.machine.PowerKW*driveShare; need > have {
		f.failOp("power", "cut %q takes %.2f kW at the spindle; %s has %.2f to give (rule C-29)", p.name, need, f.machine.Name, have)
	}
}

// checkRim holds the speed at a tool's rim against the fastest that the table gives for metal and tool.
func (f *flatWalk) checkRim(op plan.Operation, m pass) {
	most := fastest(f.part.Material, m.cutter)
	if most == 0 || op.RPM == 0 || op.RPM <= slowest(f.machine)+sameSpeed {
		return
	}
	if v := 2 * math.Pi * m.radius * op.RPM / 1000; v > most*overSpeed {
		f.failOp("speed", "%s rev/min on Ø%s is %s m/min; %s is cut at up to %s with this tool", mm(op.RPM), mm(2*m.radius), mm(math.Round(v*10)/10), f.part.Material.Name, mm(most))
	}
}

// release checks, when all cuts of a setup are known, that the work was held against them.
func (f *flatWalk) release() {
	f.settleErrors()
	f.settleDisc()
	switch f.setup.Grip.Kind {
	case "vice":
		f.checkViceForce()
	case "clamps":
		f.checkClampForce()
	case "ledge":
		f.checkLedgeForce()
	case "jaws":
		f.checkFlatJawForce()
	case "glued_bore", "glued_face":
		f.checkOtherDrive()
	case "mandrel":
		if f.holding.Kind == partspec.StubMandrel {
			f.checkDriveForce()
		} else {
			f.checkOtherDrive()
		}
	}
}

// settleErrors takes the error of finding the work off what was cut in a setting that made the datum edges itself: what is cut by the same dials in the same setting
// lies true to them, but for what the dials had them off.
func (f *flatWalk) settleErrors() {
	now, made, beside := f.setup.Number-1, [2]bool{}, [2]float64{}
	for _, t := range f.work.taken {
		g, ok := t.swath.(swept)
		if !ok || t.key.setup != now || g.datum == nil {
			continue
		}
		axis := 0
		if math.Abs(g.datum[1]) > math.Abs(g.datum[0]) {
			axis = 1
		}
		made[axis], beside[axis] = true, math.Max(beside[axis], g.beside)
	}
	for i := range f.work.taken {
		t := &f.work.taken[i]
		g, ok := t.swath.(swept)
		if !ok || t.key.setup != now {
			continue
		}
		alongX, alongY := math.Abs(g.path.Y0-g.path.Y1) <= same, math.Abs(g.path.X0-g.path.X1) <= same
		switch {
		case t.centre && made[0] && made[1]:
			both := math.Hypot(beside[0], beside[1])
			t.off += both - f.setup.LocateMM
			t.less, t.shared = both-math.Max(beside[0], beside[1]), both
		case !t.centre && alongX && made[1]:
			t.off += beside[1] - f.setup.LocateMM
		case !t.centre && alongY && made[0]:
			t.off += beside[0] - f.setup.LocateMM
		}
	}
}

// middle is what the work turns about when it slips: the spindle's axis on a lathe, else the middle of what holds it.
func (f *flatWalk) middle() (x, y float64) {
	if f.onLathe() {
		return f.setup.CentreX, f.setup.CentreY
	}
	n := 0.0
	for _, c := range f.setup.Clamps {
		x, y, n = x+c.XMM, y+c.YMM, n+1
	}
	for _, p := range f.setup.Presses {
		x, y, n = x+p.XMM, y+p.YMM, n+1
	}
	return x / math.Max(n, 1), y / math.Max(n, 1)
}

// away is how far from a place a push can act: on its way, and on the work.
func (f *flatWalk) away(p flatPush, x, y float64) float64 {
	back, front, _ := f.work.faces()
	far := 0.0
	for _, e := range f.work.outer((back + front) / 2) {
		far = math.Max(far, farthest(e, x, y))
	}
	return math.Min(far, math.Max(math.Hypot(p.x-x, p.y-y), math.Hypot(p.x1-x, p.y1-y)))
}

// checkViceForce holds what the jaws hold by friction against every push: two faces against being pushed along them and turned about the middle of the vice.
func (f *flatWalk) checkViceForce() {
	x, y := f.middle()
	half := 0.0
	for _, p := range f.setup.Presses {
		half = math.Max(half, math.Hypot(p.XMM-x, p.YMM-y))
	}
	if half <= same {
		return // told already
	}
	f.checkSag()
	f.checkSqueeze()
	for _, p := range f.pushes {
		need := safety * math.Hypot(p.sideN, (p.sideN*f.away(p, x, y)+p.torque)/half) / (2 * frictionFinished)
		if now := f.workingN(p.at.op); now < gripShare*need {
			f.fail(p.at, "grip force", "cut %q needs %.0f N in the vice; the grip is %.0f N", p.name, need, now)
			return
		}
	}
	if firm := float64(f.holding.GripFirm); firm > 0 && f.setup.Grip.WorkingN > firm*(1+figure) {
		f.failOp("grip force", "%.0f N; %s gives at most %.0f", f.setup.Grip.WorkingN, f.holding.Name, firm)
	}
}

// mostSag is how far a drill may press work down between its parallels, mm: more springs back as it breaks through (rule B-33; ours, no source).
const mostSag = 0.1

// checkSag holds that no drill bends the work much between the two parallels that carry it, as a beam that is no wider than its span is long.
func (f *flatWalk) checkSag() {
	b, back, front := f.setup.Bed, 0.0, 0.0
	if b == nil || len(b.Under) != 2 {
		return
	}
	back, front, _ = f.work.faces()
	u, v := b.Under[0], b.Under[1]
	alongX := math.Max(math.Min(u.X0, u.X1), math.Min(v.X0, v.X1)) - math.Min(math.Max(u.X0, u.X1), math.Max(v.X0, v.X1))
	alongY := math.Max(math.Min(u.Y0, u.Y1), math.Min(v.Y0, v.Y1)) - math.Min(math.Max(u.Y0, u.Y1), math.Max(v.Y0, v.Y1))
	plate := mechanics.PlateOnParallels{ThicknessMM: front - back, SpanMM: math.Max(alongX, alongY), WidthMM: math.Abs(u.Y1 - u.Y0), ModulusMPa: f.part.Material.ModulusGPa.Low * 1000}
	if alongY > alongX {
		plate.WidthMM = math.Abs(u.X1 - u.X0)
	}
	for _, p := range f.pushes {
		if sag := plate.SagMM(p.thrust); sag > mostSag*(1+figure) {
			f.fail(p.at, "bed", "cut %q presses the work down by %s between the parallels; %s is the most (rule B-33)", p.name, mm(sag), mm(mostSag))
			return
		}
	}
}

// checkClampForce holds what the clamps hold by friction, on the face that they press the work on, against every push.
func (f *flatWalk) checkClampForce() {
	x, y := f.middle()
	total, radius := 0.0, 0.0
	for _, c := range f.setup.Clamps {
		total, radius = total+c.ForceN, radius+math.Hypot(c.XMM-x, c.YMM-y)/float64(len(f.setup.Clamps))
	}
	if radius <= same {
		return // told already
	}
	hold := func(at where, name string, d mechanics.ClampDemand) bool {
		d.ClampRadiusMM, d.Friction, d.Safety = radius, frictionFinished, safety
		need, err := mechanics.LeastClampForce(d)
		if err != nil || total < gripShare*need {
			f.fail(at, "grip force", "cut %q needs %.0f N of clamping; the clamps press with %.0f N in all", name, need, total)
			return false
		}
		return true
	}
	for _, p := range f.pushes {
		d := mechanics.ClampDemand{MainN: p.sideN, PassiveN: p.sideN, CutRadiusMM: f.away(p, x, y)}
		if p.torque > 0 { // it only twists
			d = mechanics.ClampDemand{MainN: p.torque / (p.radius / 2), CutRadiusMM: p.radius / 2}
		}
		if !hold(p.at, p.name, d) {
			return
		}
	}
	for _, l := range f.loads {
		d := mechanics.ClampDemand{MainN: l.force.MainN, PassiveN: l.force.PassiveN, CutRadiusMM: l.radius}
		if l.axial {
			d.PassiveN = 0
		}
		if !hold(l.at, l.name, d) {
			return
		}
	}
}
