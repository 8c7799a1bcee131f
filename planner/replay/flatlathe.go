package replay

import (
	"math"

	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

const (
	// jawContactShare is the part of its width that a chuck's jaw bears on at least. Ours, no source.
	jawContactShare = 0.5
	// Shaking force that a lathe stands, N (rule B-09, opinion: 30 on a bench lathe up to 100 kg, 100 on a heavier one), and the swing over the bed from which on a
	// lathe counts as heavy (ours, no source).
	shakingBench = 30.0
	shakingHeavy = 100.0
	heavySwing   = 350.0
	// balanceShare is how far the plan's unbalance may differ from the one reckoned here: clamps and packing are guesses.
	balanceShare = 0.15
)

// checkFlatJaws holds that the jaws of a chuck press on what is there: straight edges, or a disc's rim.
func (f *flatWalk) checkFlatJaws() {
	g := f.setup.Grip
	if len(f.setup.Presses) > 0 {
		for _, p := range f.setup.Presses {
			f.checkPress(p, p.WidthMM*jawContactShare)
		}
		if len(f.setup.Presses) != g.Jaws {
			f.failOp("grip", "%d jaws, and %d places where they press", g.Jaws, len(f.setup.Presses))
		}
		f.checkJaws()
		return
	}
	x, y := f.setup.CentreX, f.setup.CentreY
	lo, hi := f.heights()
	for _, e := range f.work.outer((lo + hi) / 2) {
		if !e.IsArc() || math.Hypot(e.CX-x, e.CY-y) > figure || math.Abs(e.Radius-g.RadiusMM) > figureRadius {
			f.failOp("grip", "jaws on Ø%s about %s, %s: the rim is no such disc", mm(2*g.RadiusMM), mm(x), mm(y))
			return
		}
	}
	f.capacity()
	f.checkJaws()
}

// checkDriven holds that a mandrel stands in a finished bore about which the work then runs, or glue on a face.
func (f *flatWalk) checkDriven() {
	g := f.setup.Grip
	if g.Kind == "glued_face" {
		return
	}
	h, ok := f.holeAt(f.setup.CentreX, f.setup.CentreY)
	back, front, _ := f.work.faces()
	x, y, r := h.centred((back + front) / 2)
	if !ok || math.Hypot(x-f.setup.CentreX, y-f.setup.CentreY) > figure || math.Abs(f.reckoned(h, r)-g.RadiusMM) > figureRadius {
		f.failOp("grip", "a mandrel of Ø%s is to carry the work at %s, %s; there is no such bore", mm(2*g.RadiusMM), mm(f.setup.CentreX), mm(f.setup.CentreY))
		return
	}
	f.capacity()
}

// reckoned is the radius that the plan reckons with for a hole of some radius: of one that measuring ends, the middle of what it may end at.
func (f *flatWalk) reckoned(h taken, radius float64) float64 {
	if m := f.plan.Setups[h.key.setup].Operations[h.key.op].Cuts[h.key.cut].ToMeasure; m != nil && m.What == "diameter" {
		return (m.LowMM + m.HighMM) / 4
	}
	return radius
}

// checkFlatJawForce holds the jaws' force against every cut in the lathe, and their squeeze against the roundness of the bore.
func (f *flatWalk) checkFlatJawForce() {
	g := f.setup.Grip
	radius := g.RadiusMM
	if n := len(f.setup.Presses); n > 0 {
		radius = 0
		for _, p := range f.setup.Presses {
			sin, cos := math.Sincos(p.AngleDeg * math.Pi / 180)
			radius += math.Abs((p.XMM-f.setup.CentreX)*cos+(p.YMM-f.setup.CentreY)*sin) / float64(n)
		}
	}
	lo, hi := f.heights()
	for _, l := range f.loads {
		d := mechanics.GripDemand{AxialStop: true, MainN: l.force.MainN, FeedN: l.force.FeedN, PassiveN: l.force.PassiveN, CutRadiusMM: l.radius, GripRadiusMM: radius,
			GripLengthMM: hi - lo, Jaws: g.Jaws, Friction: frictionFinished, Safety: safety}
		need, err := mechanics.LeastGripPerJaw(d)
		if err != nil {
			f.fail(l.at, "grip force", "%v", err)
			return
		}
		if now := f.workingN(l.at.op); now < gripShare*need.PerJawN {
			f.fail(l.at, "grip force", "cut %q needs %.0f N a jaw (%s); the grip is %.0f N", l.name, need.PerJawN, need.RuledBy, now)
			return
		}
	}
	if firm := float64(f.holding.GripFirm); firm > 0 && g.WorkingN > firm*(1+figure) {
		f.failOp("grip force", "%.0f N a jaw; %s gives at most %.0f", g.WorkingN, f.holding.Name, firm)
	}
	f.checkSqueeze()
}

// checkFlatEased holds that the grip is eased before an operation of the setup, and to less.
func (f *flatWalk) checkFlatEased() {
	f.checkEased()
	if g := f.setup.Grip; g.Eased != nil && g.Eased.WorkingN >= g.WorkingN {
		f.failOp("grip force", "the grip is eased from %.0f to %.0f N a jaw: that is no easing", g.WorkingN, g.Eased.WorkingN)
	}
}

// rectangular reports whether the rim is straight and square all round.
func (f *flatWalk) rectangular() bool {
	lo, hi := f.heights()
	for _, e := range f.work.outer((lo + hi) / 2) {
		if e.IsArc() || math.Min(math.Abs(e.X0-e.X1), math.Abs(e.Y0-e.Y1)) > same {
			return false
		}
	}
	return true
}

// A mandrel's screw is M8 at the most, and leaves two fifths of the spigot round it; M6 pulls 5 kN at 6 N m, others as the square (rule B-08).
const (
	screwLargest = 8.0
	screwShare   = 0.6
	screwM6N     = 5000.0
	screwM6      = 6.0
)

// washerRoom is what a washer stays back from the rim that is turned, mm (rule B-45).
const washerRoom = 2.0

// checkDriveForce holds what the nut of a stub mandrel drives by friction on the face against every cut. Its washer finds room between the bore and the outline.
func (f *flatWalk) checkDriveForce() {
	g := f.setup.Grip
	room := f.drawn.outline.Inside(f.setup.CentreX, f.setup.CentreY) - washerRoom
	if most, err := mechanics.FaceRadiusMM(2*math.Max(room, g.RadiusMM+same), 2*g.RadiusMM); err != nil || g.DriveMM > most+figure {
		f.failOp("grip", "a washer that drives at a radius of %s finds no room round the bore", mm(g.DriveMM))
		return
	}
	screw := math.Min(screwLargest, 2*g.RadiusMM*screwShare) / screwM6
	if pull := screwM6N * screw * screw; g.DriveMM > 0 && g.WorkingN > pull*(1+figure) {
		f.failOp("grip force", "a screw in a spigot of Ø%s pulls with %.0f N at the most; the plan says %.0f", mm(2*g.RadiusMM), pull, g.WorkingN)
		return
	}
	f.checkDrives(mechanics.Hold{TorqueNm: frictionFinished * g.WorkingN * math.Max(g.DriveMM, g.RadiusMM) / 1000})
}

// interrupted goes in place of the usual safety where a cut meets gaps (rule B-42).
const interrupted = 4.0

// checkDrives holds what passes the spindle's turning on to the work against every cut; with the greater safety where the rim was sawn.
func (f *flatWalk) checkDrives(h mechanics.Hold) {
	factor := safety
	if f.gaps {
		factor = interrupted
	}
	for _, l := range f.loads {
		if torque := l.force.MainN * l.radius / 1000; factor*torque > h.TorqueNm/gripShare {
			f.fail(l.at, "grip force", "cut %q turns with %.1f N·m; what carries the work drives %.1f, with a safety of %g", l.name, torque, h.TorqueNm/factor, factor)
			return
		}
	}
}

// mandrelPress is what a taper or expanding mandrel presses outward with, driven home by hand, N. Common practice, no source; rough by two.
const mandrelPress = 4000.0

// checkOtherDrive is the same for glue, and for mandrels that press outward.
func (f *flatWalk) checkOtherDrive() {
	g := f.setup.Grip
	lo, hi := f.heights()
	inner := 0.0
	if h, ok := f.holeAt(f.setup.CentreX, f.setup.CentreY); ok {
		_, _, inner = h.centred((lo + hi) / 2)
	}
	var h mechanics.Hold
	var err error
	switch g.Kind {
	case "glued_bore":
		h, err = mechanics.BondedSpigot(2*g.RadiusMM, hi-lo, glueShear)
	case "glued_face":
		h, err = mechanics.BondedFace(2*g.RadiusMM, 2*inner, glueShear)
	default:
		h, err = mechanics.RadialDrive(2*g.RadiusMM, mandrelPress, frictionFinished)
	}
	if err != nil {
		f.failOp("grip force", "%v", err)
		return
	}
	f.checkDrives(h)
}

// checkBalance holds the plan's balance against the work as it lies about the spindle's axis, and every speed against the shaking that is left (rule B-09).
func (f *flatWalk) checkBalance() {
	if !f.onLathe() {
		return
	}
	b := f.setup.Balance
	x, y, mass := f.massAbout()
	work := mass * math.Hypot(x, y)
	limit := shakingBench
	if float64(f.machine.Swing) > heavySwing {
		limit = shakingHeavy
	}
	if b == nil {
		b = &plan.Balance{LeftOverKgMM: work}
	} else {
		f.checkWeight(*b, mass*x, mass*y, work, mass)
		f.checkCaps(*b, limit)
	}
	if b.LeftOverKgMM <= 0 {
		return
	}
	most, err := mechanics.Unbalance{KGMM: b.LeftOverKgMM}.SpeedCapRPM(limit)
	if err != nil {
		f.failOp("balance", "%v", err)
		return
	}
	for _, op := range f.setup.Operations {
		if op.RPM > most*(1+figure)+sameSpeed && op.RPM > slowest(f.machine)+sameSpeed {
			f.fail(where{f.setup.Number, op.ID}, "balance", "%s rev/min shakes with more than %s N at %s kg·mm out of balance; at most %.0f (rule B-09)", mm(op.RPM), mm(limit), mm(b.LeftOverKgMM), most)
			return
		}
	}
}

// checkWeight holds a counterweight against the unbalance of the work.
func (f *flatWalk) checkWeight(b plan.Balance, ux, uy, work, mass float64) {
	if b.MassKg < mass*(1-balanceShare) {
		f.failOp("balance", "the work alone is %.3f kg, the plan says %.3f with its clamps", mass, b.MassKg)
	}
	for _, c := range f.setup.Clamps {
		x, y, m := f.strapWeight(c)
		ux, uy = ux+m*x, uy+m*y
	}
	lx, ly, iron := f.ledgeWeights()
	ux, uy = ux+lx, uy+ly
	if b.MassKg < (mass+iron)*(1-balanceShare) {
		f.failOp("balance", "work and angle plate are %.3f kg, the plan says %.3f", mass+iron, b.MassKg)
	}
	if total := math.Hypot(ux, uy); len(f.setup.Presses) == 0 && b.UnbalanceKgMM < total*(1-balanceShare)-figure {
		f.failOp("balance", "work and clamps are %.2f kg·mm out of balance, the plan says %.2f", total, b.UnbalanceKgMM)
	}
	if len(f.setup.Presses) > 0 { // its jaws are out of balance too, and no weight can be bolted on
		if b.LeftOverKgMM < work*(1-balanceShare)-jawsUnbalance-figure {
			f.failOp("balance", "the work alone is %.2f kg·mm out of balance, the plan leaves %.2f", work, b.LeftOverKgMM)
		}
		return
	}
	sin, cos := math.Sincos(b.AngleDeg * math.Pi / 180)
	w := b.WeightKg * b.RadiusMM
	if left := math.Hypot(ux+w*cos, uy+w*sin); left > b.LeftOverKgMM+balanceShare*b.UnbalanceKgMM+figure {
		f.failOp("balance", "with its counterweight the work is %.2f kg·mm out of balance, the plan leaves %.2f", left, b.LeftOverKgMM)
	}
}

// A strap is of steel, so thick; its stud with nut and washer weighs as much as a round bar so thick and long. Guesses of a usual clamp, no source. Jaws that stand
// unevenly may take so much off the work's own unbalance.
const (
	strapThick    = 8.0
	studThick     = 9.0
	studLong      = 45.0
	steelKgMM3    = 7850e-9
	jawsUnbalance = 15.0
)

// strapWeight is a clamp's mass, kg, and where its middle lies from the spindle's axis.
func (f *flatWalk) strapWeight(c plan.Clamp) (x, y, mass float64) {
	s := f.strap(c)
	sin, cos := math.Sincos(c.AngleDeg * math.Pi / 180)
	mass = steelKgMM3 * (2*s.Radius*strapThick*s.Length() + math.Pi/4*studThick*studThick*studLong)
	return c.XMM + c.StudMM*cos - f.setup.CentreX, c.YMM + c.StudMM*sin - f.setup.CentreY, mass
}

// massAbout is the work's mass, kg, and where its centre lies from the spindle's axis, mm.
func (f *flatWalk) massAbout() (x, y, mass float64) {
	levels := f.work.levels()
	volume := 0.0
	for i := 1; i < len(levels); i++ {
		r := plane.Region{Edges: f.work.rim((levels[i-1] + levels[i]) / 2)}
		if r.Empty() {
			continue
		}
		v := r.Area() * (levels[i] - levels[i-1])
		cx, cy := r.Centroid()
		x, y, volume = x+v*cx, y+v*cy, volume+v
	}
	if volume <= 0 {
		return 0, 0, 0
	}
	return x/volume - f.setup.CentreX, y/volume - f.setup.CentreY, volume * f.part.Material.DensityKgM3 * 1e-9
}
