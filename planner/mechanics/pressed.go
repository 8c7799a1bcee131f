package mechanics

import "math"

// PressedPlate is a round hole in a plate that is pressed together along its plane, as between the jaws of a vice.
type PressedPlate struct {
	ForceN     float64 // that presses it
	WidthMM    float64 // over which it presses, the hole's part too
	ThickMM    float64 // along the hole
	BoreMM     float64 // diameter of the hole
	RoundMM    float64 // metal there is all round the hole
	ModulusMPa float64
	Poisson    float64
	YieldMPa   float64 // 0 = not known
}

// wholeRound is how much metal there must be round a hole, in its radii, for a pressed plate: less is bent by the jaws themselves, which do not press evenly.
const wholeRound = 1.0

// Surrounded reports whether a hole has so much metal round it, and jaws so wide about it, that it counts as a hole in a plate.
func (g PressedPlate) Surrounded() bool {
	return g.RoundMM >= wholeRound*g.BoreMM/2 && g.WidthMM >= 2*g.BoreMM
}

// Distortion of the hole: the metal round it is a ring whose outside bears what a whole plate has there under an even pressure p along X, p/2 (1 + cos 2a) inward and
// p/2 sin 2a along it. In a wide plate that is Kirsch's hole: its edge moves by p r/E (1 + 2 cos 2a) towards the middle, 4 p r/E from peak to valley, and the
// pressure beside it is 3 p. Domain: even pressure, at least the hole's radius of metal round it (Surrounded). Error: an upper figure, for metal beyond the ring
// counts for nothing; rough, for jaws are taken to press evenly. Source: Timoshenko and Goodier, Theory of Elasticity (Kirsch 1898; Michell's series), from memory.
func (g PressedPlate) Distortion() (Distortion, error) {
	if err := firstFault(notNegative("force (N)", g.ForceN), positive("width (mm)", g.WidthMM), positive("thickness (mm)", g.ThickMM), positive("hole (mm)", g.BoreMM),
		positive("metal round the hole (mm)", g.RoundMM), positive("modulus (MPa)", g.ModulusMPa), within("Poisson's ratio", g.Poisson, 0, 0.49), notNegative("yield (MPa)", g.YieldMPa)); err != nil {
		return Distortion{}, err
	}
	p := g.ForceN / (g.WidthMM * g.ThickMM)
	ring := annulus{metal{g.ModulusMPa, g.Poisson}, g.BoreMM / 2, g.BoreMM/2 + g.RoundMM}
	outer, inner := ring.michell(2, ring.outside), ring.michell(2, ring.bore)
	constants := []float64{-p / 2, p / 2, 0, 0} // normal and shear outside; the hole is free
	equations := newBandMatrix(4, 3)
	for i, row := range [4]terms{outer.radial, outer.shear, inner.radial, inner.shear} {
		for j, v := range row {
			equations.add(i, j, v)
		}
	}
	equations.solve(constants)
	even := ring.evenPressure(onOutside)
	d := Distortion{ErrorMostMM: 2 * math.Abs(inner.move.of(constants)), StressMostMPa: math.Abs(even.boreHoop)*p/2 + math.Abs(inner.hoop.of(constants))}
	d.ErrorJawPlaneMM = d.ErrorMostMM
	switch {
	case !finite(d.ErrorMostMM, d.StressMostMPa):
		return Distortion{Confidence: unsettled}, nil
	case g.YieldMPa > 0 && d.StressMostMPa > g.YieldMPa:
		d.Confidence = none("the metal beside the hole would yield")
	default:
		d.Confidence = rough(bandBound, "a hole in a plate that is pressed evenly: an upper figure")
	}
	return d, nil
}
