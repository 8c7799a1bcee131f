package replay

import (
	"math"
	"slices"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

const (
	// leastClamps is how many clamps hold work (rule B-07; two serve small stiff work with a stop, which the plan cannot tell).
	leastClamps = 3
	// How far apart two neighbours of three clamps may stand, seen from the middle of them all (rule B-07: about 120); and of more, at the corners of a long plate (ours,
	// no source).
	mostBetweenDeg  = 130.0
	mostCorneredDeg = 150.0
	// leastJawHeight and leastJawShare are how high a vice grips at least; of work too thin for that, leastJawThin of it (rule B-33).
	leastJawHeight = 3.0
	leastJawShare  = 1.0 / 3
	leastJawThin   = 1.0 / 2
	// mostBowShare is the part of the force which would bow a plate that jaws may press with. Ours, no source.
	mostBowShare = 0.5
	// leastJawContact is how long an edge lies in a jaw at least. Common practice, no source.
	leastJawContact = 10.0
	// jawDeep is how far a vice's jaw reaches from the work. Common practice, no source.
	jawDeep = 25.0
)

// checkHeld holds that what grips or clamps the work is there, and that the work is.
func (f *flatWalk) checkHeld() {
	g, ok := f.setup.Grip, f.holdingFits()
	if !ok {
		return
	}
	switch g.Kind {
	case "bench":
	case "vice":
		f.checkVice()
	case "clamps":
		f.checkClamps()
	case "ledge":
		f.checkLedge()
	case "jaws":
		f.checkFlatJaws()
	case "mandrel", "glued_bore", "glued_face":
		f.checkDriven()
	}
	f.checkBed()
}

// holdingFits holds that the kind of grip is one that the machine and the holding give.
func (f *flatWalk) holdingFits() bool {
	g := f.setup.Grip.Kind
	if !f.onSpindle() {
		if g != "bench" {
			f.failOp("grip", "%q is no way to hold work at the bench", g)
		}
		return g == "bench"
	}
	want := map[partspec.HoldingKind]string{
		partspec.Vice: "vice", partspec.VerticalSlide: "vice", partspec.TableClamps: "clamps", partspec.Faceplate: "clamps", partspec.AnglePlate: "ledge", partspec.FourJaw: "jaws", partspec.ThreeJaw: "jaws", partspec.SoftJaws: "jaws",
		partspec.StubMandrel: "mandrel", partspec.PlainMandrel: "mandrel", partspec.ExpandingMandrel: "mandrel",
	}
	kind := f.holding.Kind
	if kind == partspec.GluedArbor && (g == "glued_bore" || g == "glued_face") {
		return f.machineFits()
	}
	if w, ok := want[kind]; !ok || w != g {
		f.failOp("grip", "%q is no way in which a %s holds flat work", g, kind)
		return false
	}
	return f.machineFits()
}

// machineFits holds that a holding stands on the machine it belongs to.
func (f *flatWalk) machineFits() bool {
	onTable := f.holding.Kind == partspec.Vice || f.holding.Kind == partspec.TableClamps || f.holding.Kind == partspec.VerticalSlide
	if onTable == f.onLathe() || (f.holding.Kind == partspec.VerticalSlide) != f.onSlide() {
		f.failOp("holding", "a %s does not belong on a %s", f.holding.Kind, f.setup.MachineKind)
		return false
	}
	if f.onLathe() {
		f.checkSwing()
	}
	return true
}

// checkSwing holds the work, and the clamps on it, against the lathe's swing.
func (f *flatWalk) checkSwing() {
	z0, z1 := f.body.Ends()
	far := f.body.Outer.Greatest(z0, z1)
	for _, c := range f.setup.Clamps {
		s := f.strap(c)
		far = math.Max(far, math.Hypot(s.X1-f.setup.CentreX, s.Y1-f.setup.CentreY)+s.Radius)
	}
	far = math.Max(far, f.ledgeFar())
	if swing := float64(f.machine.Swing); swing > 0 && 2*far > swing {
		f.failOp("machine", "work and clamps swing Ø%s; %s swings %s", mm(2*far), f.machine.Name, mm(swing))
	}
}

// checkVice holds that two jaws press against each other on straight parallel edges that are there, high enough and no further apart than the vice opens.
func (f *flatWalk) checkVice() {
	p, g := f.setup.Presses, f.setup.Grip
	if len(p) != 2 {
		f.failOp("grip", "a vice presses with two jaws; %d are given", len(p))
		return
	}
	if off := math.Abs(math.Remainder(p[0].AngleDeg-p[1].AngleDeg-180, 360)); off > angleFigure {
		f.failOp("grip", "the jaws do not press against each other: they stand at %s and %s degrees", mm(p[0].AngleDeg), mm(p[1].AngleDeg))
		return
	}
	for _, press := range p {
		f.checkPress(press, math.Min(leastJawContact, press.WidthMM))
	}
	sin, cos := math.Sincos(p[0].AngleDeg * math.Pi / 180)
	across := math.Abs((p[0].XMM-p[1].XMM)*cos + (p[0].YMM-p[1].YMM)*sin)
	if most := float64(f.holding.Opening); most > 0 && across > most+same {
		f.failOp("capacity", "the work is %s across the jaws; %s opens %s", mm(across), f.holding.Name, mm(most))
	}
	if beside := math.Abs((p[0].YMM-p[1].YMM)*cos - (p[0].XMM-p[1].XMM)*sin); beside > math.Min(p[0].WidthMM, p[1].WidthMM)/2 {
		f.failOp("grip", "the jaws press %s beside each other: the work would turn", mm(beside))
	}
	back, front, _ := f.work.faces()
	lo, hi := math.Max(back, math.Min(g.FromZ, g.ToZ)), math.Min(front, math.Max(g.FromZ, g.ToZ))
	if need := math.Max(math.Min(leastJawHeight, leastJawThin*(front-back)), leastJawShare*(front-back)); hi-lo < need-same && hi-lo < front-back-same {
		f.failOp("grip", "it grips %s of %s; at least %s is needed (rule B-33)", mm(hi-lo), mm(front-back), mm(need))
	}
	if held := float64(f.holding.JawHeight); held > 0 && hi-lo > held+same {
		f.failOp("grip", "it grips %s high; the jaws are %s", mm(hi-lo), mm(held))
	}
	metal := f.part.Material
	plate := mechanics.PlateBetweenJaws{ThicknessMM: front - back, AcrossMM: across, WidthMM: p[0].WidthMM, ModulusMPa: metal.ModulusGPa.Low * 1000, Poisson: metal.Poisson}
	if most := mostBowShare * plate.BowsAtN(); g.WorkingN > most {
		f.failOp("grip force", "%.0f N of the jaws would bow it; %.0f is the most (rule B-33)", g.WorkingN, most)
	}
}

// angleFigure is how far a printed direction may differ from the true one, in degrees.
const angleFigure = 0.1

// checkPress holds that a jaw presses on an edge that is there, square to it, over so much of its width.
func (f *flatWalk) checkPress(p plan.Press, need float64) {
	if !(p.WidthMM > 0) {
		f.failOp("grip", "a jaw %s wide presses on nothing", mm(p.WidthMM))
		return
	}
	sin, cos := math.Sincos(p.AngleDeg * math.Pi / 180)
	lo, hi := f.heights()
	touched := 0.0
	for _, e := range f.work.outer((lo + hi) / 2) {
		if e.IsArc() {
			if f.onCrown(e, p, cos, sin) {
				touched = p.WidthMM
			}
			continue
		}
		ox, oy := e.Outward(0)
		far := math.Max((e.X0-p.XMM)*cos+(e.Y0-p.YMM)*sin, (e.X1-p.XMM)*cos+(e.Y1-p.YMM)*sin)
		a, b := (e.Y0-p.YMM)*cos-(e.X0-p.XMM)*sin, (e.Y1-p.YMM)*cos-(e.X1-p.XMM)*sin
		over := math.Min(math.Max(a, b), p.WidthMM/2) - math.Max(math.Min(a, b), -p.WidthMM/2)
		switch {
		case over <= same:
		case math.Abs(far) <= figure && ox*cos+oy*sin > 1-same:
			touched += over
		case far > figure:
			f.failOp("grip", "a jaw at %s, %s would stand inside the work", mm(p.XMM), mm(p.YMM))
			return
		}
	}
	if touched < need-same {
		f.failOp("grip", "a jaw presses at %s, %s towards %s degrees; no edge lies there over %s", mm(p.XMM), mm(p.YMM), mm(p.AngleDeg), mm(need))
	}
}

// onCrown reports whether a jaw meets an arc square to it.
func (f *flatWalk) onCrown(e plane.Edge, p plan.Press, cos, sin float64) bool {
	return !e.Hollow && math.Hypot(e.CX+e.Radius*cos-p.XMM, e.CY+e.Radius*sin-p.YMM) <= figure
}

// heights are where the work is gripped along its thickness.
func (f *flatWalk) heights() (lo, hi float64) {
	back, front, _ := f.work.faces()
	g := f.setup.Grip
	return math.Max(back, math.Min(g.FromZ, g.ToZ)), math.Min(front, math.Max(g.FromZ, g.ToZ))
}

// checkClamps holds that clamps press on solid, carried metal of the face that is up, enough of them and spread.
func (f *flatWalk) checkClamps() {
	list := f.setup.Clamps
	if owned := f.holding.Clamps; owned > 0 && len(list) > owned {
		f.failOp("clamps", "%d clamps; %d are owned", len(list), owned)
	}
	if len(list) < leastClamps {
		f.failOp("clamps", "%d clamps; at least %d hold work (rule B-07)", len(list), leastClamps)
		return
	}
	back, front, _ := f.work.faces()
	for _, c := range list {
		if !(c.ToeMM > 0) || !(c.StudMM > 0) {
			f.failOp("clamps", "a clamp at %s, %s has no toe or no stud", mm(c.XMM), mm(c.YMM))
			return
		}
		if widest := float64(f.holding.ToeWidth); widest > 0 && c.ToeMM > widest+figure {
			f.failOp("clamps", "a toe %s wide; those of %s are %s", mm(c.ToeMM), f.holding.Name, mm(widest))
		}
		toe := plane.Round(c.XMM, c.YMM, c.ToeMM/2-figure)
		for _, z := range []float64{back + 2*same, front - 2*same} {
			if !f.work.solidAt(toe, z) {
				f.failOp("clamps", "the toe at %s, %s does not press on solid metal", mm(c.XMM), mm(c.YMM))
			}
		}
		f.checkStud(c, back, front)
		if !f.carried(c.XMM, c.YMM) {
			f.failOp("clamps", "nothing carries the work under the toe at %s, %s (rule B-07)", mm(c.XMM), mm(c.YMM))
		}
		if most := float64(f.holding.ClampForce); most > 0 && c.ForceN > most*(1+figure) {
			f.failOp("grip force", "a clamp is to press with %.0f N; those of %s give %.0f", c.ForceN, f.holding.Name, most)
		}
	}
	f.checkPressedInAll(list)
	cx, cy := f.clampedAbout(list)
	most := mostBetweenDeg
	if len(list) > leastClamps {
		most = mostCorneredDeg
	}
	if gap := widestBetween(list, cx, cy); gap > most {
		f.failOp("clamps", "two neighbouring clamps stand %.0f degrees apart, seen from the middle; at most %.0f (rule B-07)", gap, most)
	}
}

// clampedAbout is the middle that clamps are spread about: the spindle's axis, or the middle of the work as it was when they were put on. Where the dials alone are set
// anew they stay where they are, whatever has been cut away since.
func (f *flatWalk) clampedAbout(list []plan.Clamp) (x, y float64) {
	if f.onLathe() {
		return f.setup.CentreX, f.setup.CentreY
	}
	if c := f.clamped; f.setup.Number != c.setup+1 || f.setup.Holding != c.holding || f.setup.FreeEnd != c.freeEnd || !slices.Equal(list, c.list) {
		back, front, _ := f.work.faces()
		f.clamped.x, f.clamped.y = plane.Region{Edges: f.work.outer((back + front) / 2)}.Centroid()
	}
	f.clamped.setup, f.clamped.holding, f.clamped.freeEnd, f.clamped.list = f.setup.Number, f.setup.Holding, f.setup.FreeEnd, list
	return f.clamped.x, f.clamped.y
}

// carried reports whether the bed carries the work at a place.
func (f *flatWalk) carried(x, y float64) bool {
	if f.setup.Bed == nil {
		return true // flat on the plate or the table
	}
	for _, s := range f.setup.Bed.Under {
		if x >= math.Min(s.X0, s.X1)-figure && x <= math.Max(s.X0, s.X1)+figure && y >= math.Min(s.Y0, s.Y1)-figure && y <= math.Max(s.Y0, s.Y1)+figure {
			return true
		}
	}
	return len(f.setup.Bed.Under) == 0
}

// strap is a clamp's strap, from the front of its toe over the stud to its packing, three times as far (rule B-08).
func (f *flatWalk) strap(c plan.Clamp) plane.Capsule {
	sin, cos := math.Sincos(c.AngleDeg * math.Pi / 180)
	wide := math.Max(c.ToeMM, float64(f.holding.ToeWidth))
	back := (wide - c.ToeMM) / 2 // a strap wider than what it bites
	return plane.Capsule{X0: c.XMM + back*cos, Y0: c.YMM + back*sin, X1: c.XMM + 3*c.StudMM*cos, Y1: c.YMM + 3*c.StudMM*sin, Radius: wide / 2}
}

// checkStud holds that a clamp's stud stands clear of metal, and its packing beside the work.
func (f *flatWalk) checkStud(c plan.Clamp, back, front float64) {
	sin, cos := math.Sincos(c.AngleDeg * math.Pi / 180)
	s := f.strap(c)
	for _, place := range []struct {
		what   string
		figure plane.Set
	}{{"stud", plane.Round(c.XMM+c.StudMM*cos, c.YMM+c.StudMM*sin, studThick/2)}, {"packing", plane.Round(s.X1, s.Y1, s.Radius)}} {
		for _, z := range []float64{back + 2*same, front - 2*same} {
			if len(plane.Common([]plane.Set{f.work.stock, place.figure}, f.work.gone(z))) > 0 {
				f.failOp("clamps", "the %s of the clamp at %s, %s would stand in the work", place.what, mm(c.XMM), mm(c.YMM))
				return
			}
		}
	}
}

// checkPressedInAll holds that the force which the sheet gives is that of all clamps together.
func (f *flatWalk) checkPressedInAll(list []plan.Clamp) {
	total := 0.0
	for _, c := range list {
		total += c.ForceN
	}
	if said := f.setup.Grip.WorkingN; math.Abs(said-total) > sameForceN {
		f.failOp("grip force", "the clamps press with %.0f N in all, the plan says %.0f", total, said)
	}
}

// sameForceN is how far two printed forces may differ by rounding.
const sameForceN = 1.0

// widestBetween is the widest angle between two neighbouring clamps, seen from a place, in degrees.
func widestBetween(list []plan.Clamp, cx, cy float64) float64 {
	var at []float64
	for _, c := range list {
		at = append(at, math.Atan2(c.YMM-cy, c.XMM-cx)*180/math.Pi)
	}
	sort.Float64s(at)
	gap := at[0] + 360 - at[len(at)-1]
	for i := 1; i < len(at); i++ {
		gap = math.Max(gap, at[i]-at[i-1])
	}
	return gap
}

// checkBed holds that what carries the work carries it: strips that lie under metal.
func (f *flatWalk) checkBed() {
	b := f.setup.Bed
	if b == nil {
		return
	}
	if b.HeightMM < 0 || b.GapMM < 0 || b.GapMM > b.HeightMM+figure {
		f.failOp("bed", "the work stands %s high, %s of it clear: expected a clear depth within the height", mm(b.HeightMM), mm(b.GapMM))
	}
	back, front, _ := f.work.faces()
	z := back + 2*same
	if f.free() < 0 {
		z = front - 2*same
	}
	for _, s := range b.Under {
		x0, y0, x1, y1 := math.Min(s.X0, s.X1), math.Min(s.Y0, s.Y1), math.Max(s.X0, s.X1), math.Max(s.Y0, s.Y1)
		if x1-x0 <= same || y1-y0 <= same || len(plane.Common([]plane.Set{plane.Rectangle(x0, y0, x1, y1).Figure(), f.work.stock}, f.work.gone(z))) == 0 {
			f.failOp("bed", "the strip from %s, %s to %s, %s carries no metal", mm(x0), mm(y0), mm(x1), mm(y1))
		}
	}
}
