package mechanics

import "math"

// RingGrip is a ring, tube, cup or bar held by equal jaws that push it inward from outside, or outward from its bore.
type RingGrip struct {
	OutsideDiameterMM float64
	WallMM            float64 // half the diameter or more: a solid bar
	LengthMM          float64 // whole length along the axis
	GripLengthMM      float64 // from the gripped end, at most the length
	Jaws              int     // 2 or more, equally spaced, equal force
	JawWidthMM        float64 // straight width of one jaw; or
	JawArcDeg         float64 // the arc one jaw covers (pie and bored jaws, collet segments); 360/Jaws wraps all round
	ForcePerJawN      float64 // radial
	ModulusMPa        float64
	Poisson           float64
	YieldMPa          float64 // 0 = not known, and then not checked
	WebMM             float64 // thickness of a web closing the gripped end; 0 = open
	Inside            bool    // the jaws (or mandrel segments) push outward in the bore

	// Departure says what keeps the work from being a plain ring (a flange, a step); the wall given is then its thinnest
	// uniform wall and the figures are a bound. A slot or cross hole breaks the ring: no figure here covers it.
	Departure string

	// Rigid says that the jaws are bored and stiff, and how well they fit; nil = even pressure under each jaw.
	Rigid *RigidJaws
	// Plug is a disc or plug inside the bore over the length of the grip; nil = none.
	Plug *Plug
}

// RigidJaws are bored jaws that do not yield.
type RigidJaws struct {
	MismatchMM float64 // radius of the jaws less radius of the work; positive = jaws too large
}

// Plug supports the bore under the jaws.
type Plug struct {
	ClearanceMM float64 // radial, before gripping
	ModulusMPa  float64 // 0 = rigid
	Poisson     float64
}

// Distortion is what the grip does to the work. Errors are peak-to-valley radial out of round of the face that will be
// cut: the bore, or the outside of a bar and of work held from its bore. Work cut round in this grip springs by the
// same amount when let go, if the wall is the finished one. Three lobes do not show on a two-point gauge.
type Distortion struct {
	ErrorJawPlaneMM float64 // at the middle of the grip
	ErrorMostMM     float64 // at the worst place along the length
	StressMostMPa   float64 // von Mises
	Confidence
}

// Limits of the range in which the figures were checked against finite elements (testdata/cases.csv).
const (
	thickestRing        = 2.5   // mean radius over wall: below, a thick ring
	thinnestRing        = 40.0  // mean radius over wall: above, foil
	longestRing         = 50.0  // length over wall
	largestError        = 0.005 // of the diameter: above, the linear figure is low
	widestEvenPad       = 0.5   // of the sector: above, how the jaws fit decides
	yieldReserve        = 1.1   // predicted stress was up to 9 % low
	yieldReserveCup     = 1.25  // with a web, up to 18 % low
	yieldReserveContact = 1.27  // stiff jaws and plugs, up to 21 % low
	fourierTerms        = 24    // harmonics of the pressure, 0 included
	mostJaws            = 24
	longWave            = 1.0 // jaws x wall over mean radius: below, the flare of the open end is within 5 %
	bandFull            = 5.0 // per cent
	bandShortWave       = 12.0
	bandPart            = 10.0
	bandWebAndContact   = 20.0
	bandBound           = 50.0
)

// Distortion computes the elastic error and the stress of the grip.
//
// Formula: pressure in harmonics; plane annulus for each (annulus.go), spread along the axis (shell.go), closed by a web
// (web.go), contact of stiff jaws or a plug (jaws.go, plug.go). Domain: mean radius 2.5 to 40 walls, length to 50 walls, 2, 3,
// 4 or 6 equal jaws, plain round rings, steel, brass, aluminium. Outside it the figure is a bound marked rough, or none; a bar never
// fails. Error of the out of round against finite elements (median/90 %/worst, per cent; TestRingsAgainstFiniteElements):
//
//	full length   jaw plane 0.1/0.2/0.3   largest 0.6/2.9/10.1
//	part length             1.2/3.0/4.6           2.4/5.5/8.9
//	web                     2.5/7.1/9.1           2.2/5.4/10.4
//	stiff jaws              3.2/5.9/9.3           7.7/8.9/12.5
//	plug                    0.5/1.8/1.9           1.4/2.4/5.2
//	from the bore           0.4/0.4/0.4           0.3/2.2/2.2
//
// It returns an error only for dimensions that cannot be.
func (g RingGrip) Distortion() (Distortion, error) {
	if err := g.check(); err != nil {
		return Distortion{}, err
	}
	d, settled := g.elastic()
	if !settled || !finite(d.ErrorJawPlaneMM, d.ErrorMostMM, d.StressMostMPa) {
		return Distortion{Confidence: unsettled}, nil
	}
	d.Confidence = g.confidence(d)
	return d, nil
}

func (g RingGrip) check() error {
	jaws := float64(g.Jaws)
	radius := g.OutsideDiameterMM / 2
	list := []limit{
		positive("outside diameter (mm)", g.OutsideDiameterMM),
		positive("wall (mm)", g.WallMM),
		positive("length (mm)", g.LengthMM),
		within("grip length (mm)", g.GripLengthMM, leastNumber, g.LengthMM),
		within("number of jaws", jaws, 2, mostJaws),
		notNegative("force per jaw (N)", g.ForcePerJawN),
		positive("modulus (MPa)", g.ModulusMPa),
		within("Poisson's ratio", g.Poisson, 0, 0.49),
		notNegative("yield (MPa)", g.YieldMPa),
		{"web (mm)", g.WebMM, g.WebMM >= 0 && g.WebMM < g.LengthMM, "0, or less than the length"},
		{"wall (mm)", g.WallMM, !g.Inside || g.WallMM < radius, "less than half the diameter: a bar has no bore to grip in"},
	}
	if g.JawArcDeg != 0 {
		list = append(list, within("arc of one jaw (deg)", g.JawArcDeg, leastNumber, 360/jaws))
	} else {
		list = append(list, positive("jaw width (mm)", g.JawWidthMM))
	}
	if g.Plug != nil {
		list = append(list,
			notNegative("plug clearance (mm)", g.Plug.ClearanceMM),
			notNegative("plug modulus (MPa)", g.Plug.ModulusMPa),
			within("plug Poisson's ratio", g.Plug.Poisson, 0, 0.49),
			limit{"wall (mm)", g.WallMM, g.WallMM < radius && !g.Inside, "a bore, gripped from outside, for the plug to sit in"})
	}
	if g.Rigid != nil {
		list = append(list, limit{"jaw mismatch (mm)", g.Rigid.MismatchMM, math.Abs(g.Rigid.MismatchMM) < radius, "less than the radius"},
			limit{"stiff jaws in a bore", 1, !g.Inside, "even pressure (leave the mismatch out)"},
			limit{"stiff jaws with a plug", 1, g.Plug == nil, "one of the two"})
	}
	return firstFault(list...)
}

// elastic computes the figures, whatever the domain; settled is false if a contact was not found.
func (g RingGrip) elastic() (d Distortion, settled bool) {
	w := g.wall()
	switch {
	case g.ForcePerJawN == 0:
		return Distortion{}, true
	case g.Rigid != nil:
		return g.heldByRigidJaws(w)
	case g.Plug != nil:
		return g.heldOnPlug(w)
	}
	return g.heldByEvenPads(w), true
}

// wall is the ring that stands for the work: itself, or a shorter one as a bound for a very long tube.
func (g RingGrip) wall() wall {
	outside := g.OutsideDiameterMM / 2
	h := math.Min(g.WallMM, outside)
	w := wall{annulus{metal{g.ModulusMPa, g.Poisson}, outside - h, outside}, g.LengthMM, g.GripLengthMM, g.WebMM}
	if long := longestRing * h; w.bore > 0 && w.length > long {
		w.length = long
		w.grip = math.Min(w.grip, long)
		w.web = math.Min(w.web, long/2)
	}
	return w
}

// pad is the patch of one jaw; its force is spread over the real grip length even where the wall stands in for a longer one.
func (g RingGrip) pad(w wall) pad {
	radius := w.outside
	if g.Inside {
		radius = w.bore
	}
	if g.JawArcDeg > 0 {
		return pad{g.Jaws, g.JawArcDeg / 2 * math.Pi / 180, radius, g.GripLengthMM}
	}
	return padOfWidth(g.Jaws, g.JawWidthMM, radius, g.GripLengthMM)
}

func (g RingGrip) heldByEvenPads(w wall) Distortion {
	p := g.pad(w)
	pressure := p.pressure(g.ForcePerJawN)
	amplitudes := scaled(p.amplitudes(fourierTerms), pressure)
	var l loads
	var f *field
	var outside, bore []float64
	if g.Inside {
		f = w.field(g.Jaws, fourierTerms, false, onBore)
		l.bore, bore = amplitudes, p.shape(pressure)
	} else {
		f = w.field(g.Jaws, fourierTerms, w.bore == 0, onOutside)
		l.outside, outside = amplitudes, p.shape(pressure)
	}
	d := f.errors(l, g.cutFace(w))
	d.StressMostMPa = f.stressMost(l, outside, bore)
	return d
}

// cutFace is the face that is free to be cut in this grip.
func (g RingGrip) cutFace(w wall) face {
	if g.Inside || w.bore == 0 {
		return onOutside
	}
	return onBore
}

func (f *field) errors(l loads, seen face) Distortion {
	d := Distortion{ErrorJawPlaneMM: f.outOfRound(l, f.middle(), seen)}
	d.ErrorMostMM = d.ErrorJawPlaneMM
	for _, z := range f.planes() {
		if z >= f.web {
			d.ErrorMostMM = math.Max(d.ErrorMostMM, f.outOfRound(l, z, seen))
		}
	}
	return d
}
