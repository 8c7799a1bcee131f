package mechanics

import "math"

// LedgeDemand is a cut as work feels it that stands by an edge on a ledge along the spindle, and turns with it. The tool's push comes from every side in turn.
type LedgeDemand struct {
	SideN     float64 // all of the cut's force across the spindle, hypot(Fc, Fp); 0 for a tool that only twists the work
	TorqueNmm float64 // about the spindle
	HeightMM  float64 // of the spindle's axis over the ledge
	BesideMM  float64 // along the ledge from the axis to the farther end of what stands on it
	ArmMM     float64 // along the ledge from the middle of the straps' toes to the nearer end of what stands on it
	Friction  float64 // 0.15 metal on metal
	Safety    float64 // 2.5 usual
}

// LeastLedgeForce is what straps have to press the work down with in all: S max(F/mu, (F hypot(h, b) + T)/a), so that it neither slides along the ledge nor tips
// over an end of its foot. N. The straps' own friction is not counted, and a stop behind the work takes the feed. Domain: the toes' middle lies between the ends
// of the foot. Error: that of the friction, which the safety factor covers. Source: statics.
func LeastLedgeForce(d LedgeDemand) (float64, error) {
	if err := firstFault(notNegative("force across the spindle (N)", d.SideN), notNegative("torque (N mm)", d.TorqueNmm), notNegative("height of the axis (mm)", d.HeightMM),
		notNegative("end of the foot from the axis (mm)", d.BesideMM), positive("straps from the end of the foot (mm)", d.ArmMM),
		within("friction", d.Friction, 0.01, 1), within("safety factor", d.Safety, 1, 20)); err != nil {
		return 0, err
	}
	return d.Safety * math.Max(d.SideN/d.Friction, (d.SideN*math.Hypot(d.HeightMM, d.BesideMM)+d.TorqueNmm)/d.ArmMM), nil
}

// PressedBeside is a bore between two columns of metal that straps press together along their length; no strap presses over the bore.
type PressedBeside struct {
	ForceN     float64 // of all straps
	BoreMM     float64 // diameter
	WebMM      float64 // of the thinner column beside the bore
	ThickMM    float64 // along the bore
	ModulusMPa float64
	YieldMPa   float64 // 0 = not known
}

// Distortion of the bore: a hole in a plate under the even pressure p of the columns, p = F/(2 w t). Its rim moves by p r/E (1 + 2 cos 2a), 4 p r/E from peak to
// valley in radius; the pressure beside it is 3 p. Domain: the metal above the bore is not pressed. Error: an upper figure, for both columns count as thin as the
// thinner and the pressure is that of the net section; rough, for the columns are taken to be pressed evenly. Source: Kirsch (1898), from memory.
func (g PressedBeside) Distortion() (Distortion, error) {
	if err := firstFault(notNegative("force of the straps (N)", g.ForceN), positive("bore (mm)", g.BoreMM), positive("web (mm)", g.WebMM), positive("thickness (mm)", g.ThickMM),
		positive("modulus (MPa)", g.ModulusMPa), notNegative("yield (MPa)", g.YieldMPa)); err != nil {
		return Distortion{}, err
	}
	p := g.ForceN / (2 * g.WebMM * g.ThickMM)
	d := Distortion{ErrorMostMM: 2 * p * g.BoreMM / g.ModulusMPa, StressMostMPa: 3 * p}
	d.ErrorJawPlaneMM = d.ErrorMostMM
	d.Confidence = rough(bandBound, "a plate with a hole under the pressure of its net section: an upper figure")
	if g.YieldMPa > 0 && d.StressMostMPa > g.YieldMPa {
		d.Confidence = none("the columns beside the bore would yield")
	}
	return d, nil
}
