package mechanics

import "math"

// Weight is a mass on a faceplate with its centre at a place in the plate's plane.
type Weight struct {
	MassKG float64
	XMM    float64
	YMM    float64
}

// Unbalance is the sum of mass x distance, as a length and an angle.
type Unbalance struct {
	KGMM     float64
	AngleDeg float64 // anticlockwise from x, 0 to 360
}

// forcePerSpeed turns U n^2 into newtons: kg mm (2 pi n/60)^2 / 1000, so 1/91 189 for rev/min.
var forcePerSpeed = math.Pow(2*math.Pi/60, 2) / 1000

// UnbalanceOf adds up weights; a weight turned away (a hole) is a negative mass. Error: that of the masses; the real check is
// by hand, the plate out of gear, until it stops anywhere.
func UnbalanceOf(weights []Weight) (Unbalance, error) {
	x, y := 0.0, 0.0
	for _, w := range weights {
		x, y = x+w.MassKG*w.XMM, y+w.MassKG*w.YMM
	}
	u := Unbalance{math.Hypot(x, y), math.Mod(math.Atan2(y, x)*180/math.Pi+360, 360)}
	return u, firstFault(within("unbalance (kg mm)", u.KGMM, 0, 1e6))
}

// Counterweight is the mass that cancels an unbalance at a radius, and the angle to fix it at.
func (u Unbalance) Counterweight(radiusMM float64) (massKG, angleDeg float64, err error) {
	if err := firstFault(positive("radius of the counterweight (mm)", radiusMM)); err != nil {
		return 0, 0, err
	}
	return u.KGMM / radiusMM, math.Mod(u.AngleDeg+180, 360), nil
}

// ShakingForceN is the force that turns with the plate: U n^2/91 189, kg mm and rev/min.
func (u Unbalance) ShakingForceN(rpm float64) float64 {
	return u.KGMM * rpm * rpm * forcePerSpeed
}

// SpeedCapRPM is the speed at which the shaking force reaches a limit: 30 N on a bench lathe up to 100 kg, 100 N on a heavier
// one (opinion). Infinite for work in balance.
func (u Unbalance) SpeedCapRPM(limitN float64) (float64, error) {
	if err := firstFault(positive("limit of the shaking force (N)", limitN)); err != nil {
		return 0, err
	}
	return math.Sqrt(limitN / (u.KGMM * forcePerSpeed)), nil
}

// PermissibleUnbalanceGMM is the unbalance a balance grade allows, g mm: 9549 G m/n, kg and rev/min (ISO 21940-11).
func PermissibleUnbalanceGMM(grade, massKG, rpm float64) (float64, error) {
	err := firstFault(positive("balance grade (mm/s)", grade), positive("mass (kg)", massKG), positive("speed (rev/min)", rpm))
	return grade * massKG / (2 * math.Pi * rpm / 60) * 1000, err
}
