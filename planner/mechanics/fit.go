package mechanics

import "math"

// PressFit is a hub on a shaft with interference.
type PressFit struct {
	DiameterMM     float64 // of the joint
	HubOutsideMM   float64 // outside diameter of the hub
	ShaftBoreMM    float64 // 0 for a solid shaft
	LengthMM       float64
	InterferenceMM float64 // on DIAMETER
	HubModulusMPa  float64
	HubPoisson     float64
	ShaftModulus   float64 // MPa
	ShaftPoisson   float64
	Friction       float64 // 0.1 oiled, 0.15 dry
}

// FitLoad is what a press fit does.
type FitLoad struct {
	PressureMPa  float64
	HubHoopMPa   float64 // tension at the hub's bore: the largest
	ShaftHoopMPa float64 // compression at the shaft's bore, or in the solid shaft; negative
	HubGrowthMM  float64 // of the hub's outside diameter
	Hold                 // torque and axial force; the axial one is also the force to press home
}

// Load solves the joint by Lamé's thick cylinders: interference/D = p[(Do^2+D^2)/(Do^2-D^2) + nu_h]/E_h
// + p[(D^2+Di^2)/(D^2-Di^2) - nu_s]/E_s. Diameters and interference on diameter: the same formula with radii needs radial
// interference, do not mix them. Domain: elastic, hub about as long as the joint. Error: rounding; the real interference loses the
// height of the roughness, and the friction is a guess.
// Source: Shigley 7-40, Lamé; check: radial interference 0.01, radii 50 and 80, E 207 GPa gives 12.6 MPa (Marks).
func (f PressFit) Load() (FitLoad, error) {
	d, o, i := f.DiameterMM, f.HubOutsideMM, f.ShaftBoreMM
	if err := firstFault(
		positive("joint diameter (mm)", d),
		limit{"hub outside (mm)", o, o > d, "more than the joint diameter"},
		limit{"shaft bore (mm)", i, i >= 0 && i < d, "0, or less than the joint diameter"},
		positive("length (mm)", f.LengthMM), notNegative("interference (mm)", f.InterferenceMM),
		limit{"interference (mm)", f.InterferenceMM, f.InterferenceMM < d/20, "less than a twentieth of the diameter"},
		positive("hub modulus (MPa)", f.HubModulusMPa), within("hub Poisson's ratio", f.HubPoisson, 0, 0.49),
		positive("shaft modulus (MPa)", f.ShaftModulus), within("shaft Poisson's ratio", f.ShaftPoisson, 0, 0.49),
	); err != nil {
		return FitLoad{}, err
	}
	hub, shaft := (o*o+d*d)/(o*o-d*d), (d*d+i*i)/(d*d-i*i)
	p := f.InterferenceMM / d / ((hub+f.HubPoisson)/f.HubModulusMPa + (shaft-f.ShaftPoisson)/f.ShaftModulus)
	hold, err := FrictionDrive(d, f.LengthMM, p, f.Friction)
	load := FitLoad{PressureMPa: p, HubHoopMPa: p * hub, ShaftHoopMPa: -p, Hold: hold}
	if i > 0 {
		load.ShaftHoopMPa = -2 * p * d * d / (d*d - i*i)
	}
	load.HubGrowthMM = 2 * p * d * d / (o*o - d*d) * o / f.HubModulusMPa
	return load, err
}

// TaperMandrelInterferenceMM is the interference on diameter of a plain mandrel driven on by travel from first touch; a taper
// of 0.5 mm a metre is 0.0005. At the small end of the bore it is 0: half of it is the mean.
func TaperMandrelInterferenceMM(travelMM, taper float64) (float64, error) {
	err := firstFault(notNegative("travel (mm)", travelMM), within("taper", taper, 0, 0.1))
	return math.Max(0, travelMM) * taper, err
}
