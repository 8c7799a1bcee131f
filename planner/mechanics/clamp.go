package mechanics

import "math"

// nutFactor is torque over preload x diameter for an unlubricated bolt (handbook practice); oil takes it to 0.15.
const nutFactor = 0.2

// BoltPreloadN is the pull of a bolt tightened to a torque: T/(0.2 d). M6 at 6 N m: 5 kN. Error: 30 % either way.
func BoltPreloadN(torqueNm, boltDiameterMM float64) (float64, error) {
	err := firstFault(notNegative("torque (N m)", torqueNm), positive("bolt diameter (mm)", boltDiameterMM))
	return torqueNm * 1000 / (nutFactor * boltDiameterMM), err
}

// StrapForceN is what a strap presses on the work: the bolt's pull shared between work and packing by their distances.
// With the stud at one third of the strap from the work the work gets 2/3 (B-08).
func StrapForceN(boltN, studToWorkMM, studToPackingMM float64) (float64, error) {
	err := firstFault(notNegative("bolt pull (N)", boltN), positive("stud to work (mm)", studToWorkMM),
		positive("stud to packing (mm)", studToPackingMM))
	return boltN * studToPackingMM / (studToWorkMM + studToPackingMM), err
}

// ClampedFace is what straps, or a nut on a stub mandrel, hold by friction on one face: torque mu F r, side force mu F.
// totalN is the sum of all straps, radiusMM their distance from the axis (a ring face: FaceRadiusMM). The strap's own face
// is not counted. Error: friction 0.15 metal on metal, 0.25 on paper (B-07); bolts within 30 %.
func ClampedFace(totalN, radiusMM, friction float64) (Hold, error) {
	if err := firstFault(notNegative("clamping force (N)", totalN), positive("radius (mm)", radiusMM),
		within("friction", friction, 0, 1)); err != nil {
		return Hold{}, err
	}
	return Hold{friction * totalN * radiusMM / 1000, friction * totalN, rough(bandBound, "bolt pull within 30 %, friction a guess")}, nil
}

// FaceRadiusMM is the radius at which friction on an evenly pressed ring face acts: (2/3)(ro^3 - ri^3)/(ro^2 - ri^2).
func FaceRadiusMM(outsideDiameterMM, insideDiameterMM float64) (float64, error) {
	o, i := outsideDiameterMM/2, insideDiameterMM/2
	err := firstFault(notNegative("inside diameter (mm)", insideDiameterMM),
		limit{"outside diameter (mm)", outsideDiameterMM, o > i, "more than the inside diameter"})
	return 2. / 3 * (o*o + o*i + i*i) / (o + i), err
}

// ClampDemand is a cut as straps on a face feel it.
type ClampDemand struct {
	MainN, PassiveN float64 // cutting force; the feed presses the work on the face
	CutRadiusMM     float64
	ClampRadiusMM   float64 // of the straps
	Friction        float64 // 0.15 metal on metal, 0.25 on paper
	Safety          float64 // 2.5 usual
}

// LeastClampForce is the least total strap force: S hypot(Fc r/rc, Fp)/mu, one face. N. Domain: cuts inside the straps' circle
// or not far outside it, packing directly under each strap. Error: friction; the safety factor covers it. Source: B-07, statics.
func LeastClampForce(d ClampDemand) (float64, error) {
	if err := firstFault(notNegative("main cutting force (N)", d.MainN), notNegative("passive force (N)", d.PassiveN),
		notNegative("radius of the cut (mm)", d.CutRadiusMM), positive("radius of the straps (mm)", d.ClampRadiusMM),
		within("friction", d.Friction, 0.01, 1), within("safety factor", d.Safety, 1, 20)); err != nil {
		return 0, err
	}
	return d.Safety * math.Hypot(d.MainN*d.CutRadiusMM/d.ClampRadiusMM, d.PassiveN) / d.Friction, nil
}
