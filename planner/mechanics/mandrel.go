package mechanics

import "math"

// FrictionDrive is a cylinder pressed on by an even pressure (plain taper mandrel, press fit, shrunk ring): torque
// mu p pi d^2 L/2, axial mu p pi d L; mm, MPa. The pressure comes from PressFit.
// Error: that of the interference and of friction (0.1 oiled, 0.15 dry steel; common practice, no source).
func FrictionDrive(diameterMM, lengthMM, pressureMPa, friction float64) (Hold, error) {
	if err := firstFault(positive("diameter (mm)", diameterMM), positive("length (mm)", lengthMM),
		notNegative("pressure (MPa)", pressureMPa), within("friction", friction, 0, 1)); err != nil {
		return Hold{}, err
	}
	axial := friction * pressureMPa * math.Pi * diameterMM * lengthMM
	return Hold{axial * diameterMM / 2 / 1000, axial, rough(bandBound, "friction and the true interference are guesses")}, nil
}

// WedgeRadialN is the total radial force of a collet, taper plug or expanding mandrel from its draw force:
// draw / tan(half angle + friction angle). Domain: half angle 0.01 to 45 degrees (taper pin 1:16: 1.8; collet 8 to 15),
// sliding as it tightens. Error: friction in the taper, 0.1 oiled to 0.2 dry, changes a slow taper's force by nearly as much.
func WedgeRadialN(drawN, halfAngleDeg, friction float64) (float64, error) {
	if err := firstFault(notNegative("draw force (N)", drawN), within("half angle (deg)", halfAngleDeg, 0.01, 45),
		within("friction", friction, 0, 1)); err != nil {
		return 0, err
	}
	return drawN / math.Tan(halfAngleDeg*math.Pi/180+math.Atan(friction)), nil
}

// WedgeDrawN is the draw force for a wanted radial force, the inverse of WedgeRadialN.
func WedgeDrawN(radialN, halfAngleDeg, friction float64) (float64, error) {
	unit, err := WedgeRadialN(1, halfAngleDeg, friction)
	if err != nil {
		return 0, err
	}
	return radialN / unit, firstFault(notNegative("radial force (N)", radialN))
}

// RadialDrive is what a total radial force holds by friction at a diameter: chuck, collet, expanding mandrel.
func RadialDrive(diameterMM, totalRadialN, friction float64) (Hold, error) {
	if err := firstFault(positive("diameter (mm)", diameterMM), notNegative("radial force (N)", totalRadialN),
		within("friction", friction, 0, 1)); err != nil {
		return Hold{}, err
	}
	axial := friction * totalRadialN
	return Hold{axial * diameterMM / 2 / 1000, axial, rough(bandBound, "the friction is the weak figure")}, nil
}
