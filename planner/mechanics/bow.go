package mechanics

import "math"

// A PlateBetweenJaws is flat work pressed across its width along two opposite edges that are free to turn, as in a vice.
type PlateBetweenJaws struct {
	ThicknessMM float64
	AcrossMM    float64 // from jaw to jaw
	WidthMM     float64 // over which the jaws press
	ModulusMPa  float64
	Poisson     float64
}

// BowsAtN is the force with which jaws bow a plate out of its plane: Euler's load of a wide strut hinged at both ends, pi^2 E t^3 w / (12 (1 - nu^2) b^2), in N.
// Metal beside the jaws makes it stiffer, so that it errs low. 0 where a measure is not positive. Source: Timoshenko and Gere, Theory of Elastic Stability, from
// memory.
func (p PlateBetweenJaws) BowsAtN() float64 {
	if !(p.ThicknessMM > 0 && p.AcrossMM > 0 && p.WidthMM > 0 && p.ModulusMPa > 0 && math.Abs(p.Poisson) < 1) {
		return 0
	}
	stiff := p.ModulusMPa * math.Pow(p.ThicknessMM, 3) / (12 * (1 - p.Poisson*p.Poisson))
	return math.Pi * math.Pi * stiff * p.WidthMM / (p.AcrossMM * p.AcrossMM)
}

// A PlateOnParallels is flat work that lies on two parallels and is pressed down between them.
type PlateOnParallels struct {
	ThicknessMM float64
	SpanMM      float64 // between the parallels
	WidthMM     float64 // along them
	ModulusMPa  float64
}

// SagMM is how far a force midway between the parallels bends the plate: as a beam F L^3 / (4 E w t^3), of which no more width helps than the span is long, in mm.
// 0 where a measure is not positive. Source: the beam is any handbook's; the width that helps is common practice, no source.
func (p PlateOnParallels) SagMM(forceN float64) float64 {
	if !(p.ThicknessMM > 0 && p.SpanMM > 0 && p.WidthMM > 0 && p.ModulusMPa > 0 && forceN > 0) {
		return 0
	}
	wide := math.Min(p.WidthMM, p.SpanMM)
	return forceN * math.Pow(p.SpanMM, 3) / (4 * p.ModulusMPa * wide * math.Pow(p.ThicknessMM, 3))
}
