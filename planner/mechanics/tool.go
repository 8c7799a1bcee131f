package mechanics

import "math"

// BoringBar is a round bar that stands out from its clamp with the tool at its end: steel 207 000 MPa, solid carbide 600 000.
func BoringBar(diameterMM, overhangMM, modulusMPa float64) Shaft {
	return Shaft{Sections: []Section{{overhangMM, diameterMM, 0}}, ModulusMPa: modulusMPa}
}

// DrillCut is a twist drill at work in the solid.
type DrillCut struct {
	DiameterMM    float64
	FeedMM        float64 // per revolution
	PointAngleDeg float64 // 118 usual
	KC11MPa       float64
	MC            float64
	WearFactor    float64
	PilotMM       float64 // hole already there; 0 = none
}

// DrillForce is what a drill asks of machine and holding.
type DrillForce struct {
	TorqueNm float64
	ThrustN  float64
	Confidence
}

// lipThrust is thrust of the lips over their cutting force (tool makers' 0.5); the web's chisel edge doubles it in the solid.
const lipThrust = 0.5

// Force by Kienzle's law on two lips: h = f/2 sin(point/2), torque kc f (d^2 - d0^2)/8, thrust 0.5 kc f (d - d0)/2 sin(point/2)
// for the lips, doubled without a pilot hole for the chisel edge. N m, N. Domain: sharp ordinary drills 1 to 25 mm. Error: 40 %;
// a blunt drill takes twice as much. Source: tool makers' drilling formulas, from memory; the doubling is handbook practice.
func (d DrillCut) Force() (DrillForce, error) {
	if err := firstFault(
		positive("drill diameter (mm)", d.DiameterMM), within("feed (mm/rev)", d.FeedMM, leastChipMM, mostChipMM),
		within("point angle (deg)", d.PointAngleDeg, 60, 180), positive("specific cutting force kc1.1 (MPa)", d.KC11MPa),
		within("exponent mc", d.MC, 0, 0.9), within("wear factor", d.WearFactor, 1, 5),
		limit{"pilot hole (mm)", d.PilotMM, d.PilotMM >= 0 && d.PilotMM < d.DiameterMM, "0, or less than the drill"},
	); err != nil {
		return DrillForce{}, err
	}
	sin := math.Sin(d.PointAngleDeg / 2 * math.Pi / 180)
	kc := d.KC11MPa * math.Pow(d.FeedMM/2*sin, -d.MC) * d.WearFactor
	f := DrillForce{
		TorqueNm:   kc * d.FeedMM * (d.DiameterMM*d.DiameterMM - d.PilotMM*d.PilotMM) / 8 / 1000,
		ThrustN:    lipThrust * kc * d.FeedMM * (d.DiameterMM - d.PilotMM) / 2 * sin,
		Confidence: rough(40, "two sharp lips by Kienzle's law; the chisel edge is a handbook doubling"),
	}
	if d.PilotMM == 0 {
		f.ThrustN *= 2
	}
	return f, nil
}

const (
	// drillCore: the section of a twist drill bends like a round bar of this share of its diameter (from memory).
	drillCore = 0.7
	// freeEnd is Euler's factor pi^2 / 0.7^2 for one end built in, the other guided by the hole it has begun.
	freeEnd = 2.045 * math.Pi * math.Pi
)

// DrillBuckleN is the thrust at which a drill bows: Euler's load, one end held, the point guided. N. Domain: overhang of five
// diameters and more. Error: 40 %; a drill without a centred start wanders at a quarter of it.
func DrillBuckleN(diameterMM, overhangMM, modulusMPa float64) (float64, error) {
	err := firstFault(positive("drill diameter (mm)", diameterMM), positive("overhang (mm)", overhangMM), positive("modulus (MPa)", modulusMPa))
	inertia := math.Pi / 64 * math.Pow(drillCore*diameterMM, 4)
	return freeEnd * modulusMPa * inertia / (overhangMM * overhangMM), err
}
