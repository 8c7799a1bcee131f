package mechanics

import "math"

// AxialStraps is a ring standing on a flat face, pressed down by equal straps on its free end. Packing stands directly
// under every strap: without that the figures do not hold.
type AxialStraps struct {
	OutsideDiameterMM, WallMM, LengthMM float64
	Straps                              int
	StrapWidthMM                        float64
	ForcePerStrapN                      float64
	ModulusMPa, Poisson                 float64
	YieldMPa                            float64 // 0 = not known
}

// tallStraps is the length over mean radius up to which straps were checked; a tall thin tube moves ten times as much.
const tallStraps = 1.0

// Distortion of the bore under the straps: the shell of shell.go with no pressure and an axial line load on the end, plus
// the wall's own thickening, nu N/2E. The middle of the length counts as the jaw plane. Domain: length up to the mean radius.
// Error: an upper figure; 1.0 to 2.4 times finite elements at the loaded end, which is under 0.6 um a kN strap.
func (g AxialStraps) Distortion() (Distortion, error) {
	n := float64(g.Straps)
	radius := g.OutsideDiameterMM / 2
	if err := firstFault(
		positive("outside diameter (mm)", g.OutsideDiameterMM), positive("wall (mm)", g.WallMM),
		limit{"wall (mm)", g.WallMM, g.WallMM < radius, "less than half the diameter"},
		positive("length (mm)", g.LengthMM), within("number of straps", n, 2, mostJaws),
		positive("strap width (mm)", g.StrapWidthMM), notNegative("force per strap (N)", g.ForcePerStrapN),
		positive("modulus (MPa)", g.ModulusMPa), within("Poisson's ratio", g.Poisson, 0, 0.49), notNegative("yield (MPa)", g.YieldMPa),
	); err != nil {
		return Distortion{}, err
	}
	w := wall{annulus{metal{g.ModulusMPa, g.Poisson}, radius - g.WallMM, radius}, g.LengthMM, g.LengthMM, 0}
	pad := padOfWidth(g.Straps, g.StrapWidthMM, radius, g.LengthMM)
	line := g.ForcePerStrapN / (2 * pad.halfAngle * w.meanRadius()) // N per mm of circumference
	d := w.strapped(pad, line)
	if !finite(d.ErrorMostMM, d.StressMostMPa) {
		return Distortion{Confidence: unsettled}, nil
	}
	d.Confidence = g.confidence(w, d)
	return d, nil
}

// strapped sums the harmonics of the line load; the even squeeze leaves the bore round.
func (s wall) strapped(pad pad, line float64) Distortion {
	amplitudes := scaled(pad.amplitudes(fourierTerms), line)
	thickening := s.poisson * line / (2 * s.modulus)
	d := Distortion{StressMostMPa: line / s.thickness()}
	profiles := make([]profile, fourierTerms)
	for k := 1; k < fourierTerms; k++ {
		profiles[k] = s.spreadEndLoad(k*pad.jaws, amplitudes[k])
	}
	for step := range planeSteps + 1 {
		z := s.length * float64(step) / planeSteps
		moves := make([]float64, fourierTerms)
		for k := 1; k < fourierTerms; k++ {
			moves[k], _, _, _ = profiles[k].read(z)
		}
		low, high := math.Inf(1), math.Inf(-1)
		for _, u := range series(moves) {
			low, high = math.Min(low, u), math.Max(high, u)
		}
		error := high - low + thickening
		d.ErrorMostMM = math.Max(d.ErrorMostMM, error)
		if 2*step == planeSteps {
			d.ErrorJawPlaneMM = error
		}
	}
	return d
}

// spreadEndLoad is one harmonic of an axial load on the end z = length, the other end on a flat face. Its stretch is the
// movement itself, mm.
func (s wall) spreadEndLoad(m int, load float64) profile {
	stiffness := 1 / math.Abs(s.respond(m, onOutside).boreMove)
	f := s.assemble(m, stiffness)
	right := make([]float64, 4*len(f.nodes))
	h, r := s.thickness(), s.meanRadius()
	f.hold(f.last(), right, load*r*r/(f.m*f.m*s.modulus*h*h), 0)
	f.equations.fix(3)
	f.equations.solve(right)
	p := f.profile(right)
	p.stretch, p.slope = scaled(p.stretch, 1/stiffness), scaled(p.slope, 1/stiffness)
	return p
}

func (g AxialStraps) confidence(w wall, d Distortion) Confidence {
	slender := w.meanRadius() / w.thickness()
	switch {
	case g.YieldMPa > 0 && d.StressMostMPa*yieldReserve > g.YieldMPa:
		return none("the wall under the strap would yield")
	case slender > thinnestRing || g.LengthMM > longestRing*g.WallMM:
		return none("too thin or too tall for the range checked")
	case slender < thickestRing || g.LengthMM > tallStraps*w.meanRadius():
		return rough(bandBound, "straps were checked up to a length of one mean radius and walls from 1/40 to 1/2.5 of it")
	}
	return rough(bandBound, "an upper figure for straps with packing directly under each")
}
