package mechanics

import "math"

const (
	bondShare    = 0.2 // a fifth of the table's shear strength: makers' usual allowance for gap, cleaning and warmth
	bondCoverage = 0.5 // half the area wetted
)

// BondDesignShearMPa is the shear a glued joint may be reckoned with: a fifth of the tabled strength on half the area.
// Cyanoacrylate on steel 13.2 MPa after 10 minutes (22.8 after 48 h), aluminium 10.2 (15.7): Handbook of Adhesives and
// Sealants, table 10.16. The result, about 1 MPa, stays under B-16's 1.5; soft solder is reckoned at 4 MPa outright (B-18).
func BondDesignShearMPa(tabledMPa float64) float64 {
	return tabledMPa * bondShare * bondCoverage
}

var bondConfidence = rough(bandBound, "cold bond; heat lets go at 60 to 80 degrees, so no figure for a dry heavy cut")

// BondedSpigot is a bore glued or soldered on a close spigot: torque tau pi d^2 L/2, axial tau pi d L; mm, MPa.
// Domain: clearance within the adhesive's gap. Error: a factor of 2 by cleaning alone, already in the design shear.
func BondedSpigot(diameterMM, lengthMM, shearMPa float64) (Hold, error) {
	if err := firstFault(positive("diameter (mm)", diameterMM), positive("length (mm)", lengthMM),
		positive("design shear (MPa)", shearMPa)); err != nil {
		return Hold{}, err
	}
	area := math.Pi * diameterMM * lengthMM
	return Hold{shearMPa * area * diameterMM / 2 / 1000, shearMPa * area, bondConfidence}, nil
}

// BondedFace is a flat face glued or soldered to an arbor, solid (inside diameter 0) or ring: torque at the moment the
// whole face is at the design shear, tau (2 pi/3)(ro^3 - ri^3); axial is the same shear over the area, and peel at an edge
// lets go well before that.
func BondedFace(outsideDiameterMM, insideDiameterMM, shearMPa float64) (Hold, error) {
	if err := firstFault(positive("outside diameter (mm)", outsideDiameterMM), notNegative("inside diameter (mm)", insideDiameterMM),
		limit{"inside diameter (mm)", insideDiameterMM, insideDiameterMM < outsideDiameterMM, "less than the outside diameter"},
		positive("design shear (MPa)", shearMPa)); err != nil {
		return Hold{}, err
	}
	o, i := outsideDiameterMM/2, insideDiameterMM/2
	torque := shearMPa * 2 * math.Pi / 3 * (o*o*o - i*i*i) / 1000
	return Hold{torque, shearMPa * math.Pi * (o*o - i*i), bondConfidence}, nil
}
