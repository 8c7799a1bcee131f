package replay

import (
	"math"

	"catchplate/planner/mechanics"
	"catchplate/planner/plane"
)

// leans is how far a ledge out of parallel with the spindle takes one face of the work to the side of the other.
func (f *flatWalk) leans() float64 {
	if f.setup.Grip.Kind != "ledge" {
		return 0
	}
	return given(float64(f.holding.Squareness), ledgeSlope) * float64(f.part.Length.Mid()) / 100
}

// ledgeFar is how far an angle plate and its straps get from the spindle's axis.
func (f *flatWalk) ledgeFar() float64 {
	s, ok := f.standing()
	if !ok {
		return 0
	}
	far := 0.0
	away := func(x, y float64) { far = math.Max(far, math.Hypot(x-f.setup.CentreX, y-f.setup.CentreY)) }
	for _, a := range []float64{0, s.long} {
		away(s.place(a, -s.LegMM))
	}
	for _, c := range s.Straps {
		away(s.end(c))
	}
	return far
}

// ledgeWeights add the unbalance of an angle plate, its straps and studs, kg mm, and their mass.
func (f *flatWalk) ledgeWeights() (ux, uy, mass float64) {
	s, ok := f.standing()
	if !ok {
		return 0, 0, 0
	}
	add := func(kg, x, y float64) {
		ux, uy, mass = ux+kg*(x-f.setup.CentreX), uy+kg*(y-f.setup.CentreY), mass+kg
	}
	x, y := s.place(s.long/2, -s.ThickMM/2)
	add(steelKgMM3*s.long*s.ReachMM*s.ThickMM, x, y)
	x, y = s.place(s.long/2, -(s.LegMM+s.ThickMM)/2)
	add(steelKgMM3*s.long*(s.LegMM-s.ThickMM)*s.ThickMM, x, y)
	for _, c := range s.Straps {
		ex, ey := s.end(c)
		add(steelKgMM3*strapThick*c.ToeMM*math.Hypot(ex-c.XMM, ey-c.YMM), (c.XMM+ex)/2, (c.YMM+ey)/2)
		sin, cos := math.Sincos(c.AngleDeg * math.Pi / 180)
		a, up := s.sees(c.XMM+c.StudMM*cos, c.YMM+c.StudMM*sin)
		x, y = s.place(a, up/2)
		add(steelKgMM3*math.Pi/4*studThick*studThick*(up+studBeyond), x, y)
	}
	return ux, uy, mass
}

// checkLedgeForce holds the straps on a ledge against every cut, and what they do to the bore against its roundness.
func (f *flatWalk) checkLedgeForce() {
	s, ok := f.standing()
	if !ok {
		return // told already
	}
	from, to, _ := f.foot(s)
	axis, height := s.sees(f.setup.CentreX, f.setup.CentreY)
	total, middle := 0.0, 0.0
	for _, c := range s.Straps {
		a, _ := s.sees(c.XMM, c.YMM)
		total, middle = total+c.ForceN, middle+a/ledgeStraps
	}
	if g := f.setup.Grip; g.WorkingN > total*(1+figure)+1 || g.WorkingN < total*(1-figure)-ledgeStraps {
		f.failOp("grip force", "the straps press with %.0f N in all; the grip says %.0f", total, g.WorkingN)
	}
	for _, l := range f.loads {
		d := mechanics.LedgeDemand{SideN: math.Hypot(l.force.MainN, l.force.PassiveN), TorqueNmm: l.force.MainN * l.radius, HeightMM: height, BesideMM: math.Max(to-axis, axis-from),
			ArmMM: math.Min(middle-from, to-middle), Friction: frictionFinished, Safety: safety}
		if l.axial {
			d.SideN = 0
		}
		if need, err := mechanics.LeastLedgeForce(d); err != nil || total < gripShare*need {
			f.fail(l.at, "grip force", "cut %q needs %.0f N of the straps; they press with %.0f in all (rule B-10)", l.name, need, total)
			return
		}
	}
	f.checkPressedBeside(total)
}

func (f *flatWalk) checkPressedBeside(total float64) {
	limit, of := f.boreLimit()
	back, front, ok := f.work.faces()
	h, there := f.holeAt(f.setup.CentreX, f.setup.CentreY)
	if math.IsInf(limit, 1) || !ok || !there {
		return
	}
	x, y, bore := h.centred((back + front) / 2)
	web := plane.Region{Edges: f.work.outer((back + front) / 2)}.Inside(x, y) - bore
	m := f.part.Material
	d, err := mechanics.PressedBeside{ForceN: total, BoreMM: 2 * bore, WebMM: web, ThickMM: front - back, ModulusMPa: m.ModulusGPa.Low * 1000, YieldMPa: m.YieldMPa.Low}.Distortion()
	g := f.setup.Grip
	switch {
	case err != nil || d.Trust == mechanics.TrustNone:
		f.failOp("distortion", "what the straps do to %s cannot be told: %s", of, d.Why)
	case d.ErrorMostMM > limit+figure:
		f.failOp("distortion", "the straps leave %s out of round by %s; %s is allowed (rule B-23)", of, mm(d.ErrorMostMM), mm(limit))
	case g.ErrorMM < d.ErrorMostMM*(1-errorFigure)-figure:
		f.failOp("distortion", "the straps leave %s out of round by %s; the plan says %s", of, mm(d.ErrorMostMM), mm(g.ErrorMM))
	}
}

// checkStrapsClear holds a tool's way against the straps on a ledge, and their studs.
func (f *flatWalk) checkStrapsClear(name string, way func(by float64) plane.Set) {
	s, ok := f.standing()
	if !ok {
		return
	}
	for _, c := range s.Straps {
		a, up := s.sees(c.XMM, c.YMM)
		e, _ := s.sees(s.end(c))
		low, high := math.Min(a, e), math.Max(a, e)
		if s.Bar { // it goes over to the other toe
			low, high = math.Min(low, f.alongOf(s, 0)), math.Max(high, f.alongOf(s, 1))
		}
		if plane.Meet(s.block(low, up, high, up+strapThick), way(clearance-figure)) {
			f.failOp("clearance", "cut %q comes within %s of the strap at %s, %s (rule B-45)", name, mm(clearance), mm(c.XMM), mm(c.YMM))
			return
		}
	}
}

func (f *flatWalk) alongOf(s standing, strap int) float64 {
	a, _ := s.sees(s.Straps[strap].XMM, s.Straps[strap].YMM)
	return a
}
