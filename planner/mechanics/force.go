package mechanics

import "math"

// Cut is one cut with a turning or boring tool.
type Cut struct {
	KC11MPa      float64 // specific force for a chip 1 mm x 1 mm
	MC           float64 // its exponent: thin chips cost more
	DepthMM      float64 // radial
	FeedMM       float64 // per revolution
	EdgeAngleDeg float64 // between cutting edge and feed: 90 for a square shoulder (the tool's lead is 90 less this)
	WearFactor   float64 // 1 for a fresh edge, 1.3 usual
	RakeDeg      float64 // each degree takes off 1 %
}

// CutForce is the force of a cut and its parts.
type CutForce struct {
	MainN       float64 // along the surface speed
	FeedN       float64 // along the feed; push to the headstock
	PassiveN    float64 // square to the surface, pushes work and tool apart
	SpecificMPa float64 // main force over the chip's section
	ChipMM      float64 // thickness of the chip, h
	Confidence
}

const (
	// feedShare and passiveShare are the upper ends of the usual 0.3 to 0.5 of the main force for a sharp tool with a
	// small nose (handbook ratio, from memory). A blunt edge or a chip thinner than the edge is sharp exceeds them.
	feedShare    = 0.5
	passiveShare = 0.5
	// rakeShare is the change of force per degree of rake.
	rakeShare = 0.01
	// thinChipMM: below it the edge radius ploughs and the published exponents are extrapolated.
	thinChipMM = 0.05
	// forceBand: published specific forces for one metal differ by up to 1.6.
	forceBand     = 30.0
	thinChipBand  = 60.0
	leastChipMM   = 1e-4 // no feed is set finer than a tenth of a micrometre
	mostChipMM    = 10.0
	steepestAngle = 150.0
)

// CuttingForce is Kienzle's law: Fc = kc1.1 b h^(1-mc) x wear x (1 - 0.01 rake), h = f sin(edge angle),
// b = depth/sin(edge angle); N, mm, MPa. Feed and passive force are each taken as half the main force, the upper end of
// the usual range. Domain: h 0.05 to 1 mm (below: rough). Error: the tables of kc1.1 differ by up to 1.6 among makers.
// Source: Kienzle's law, standard text; wear factor 1.3 and rake 1 % a degree, handbook practice from memory.
func CuttingForce(c Cut) (CutForce, error) {
	if err := c.check(); err != nil {
		return CutForce{}, err
	}
	sin := math.Sin(c.EdgeAngleDeg * math.Pi / 180)
	h, b := c.FeedMM*sin, c.DepthMM/sin
	kc := c.KC11MPa * math.Pow(h, -c.MC) * c.WearFactor * (1 - rakeShare*c.RakeDeg)
	main := kc * b * h
	f := CutForce{MainN: main, FeedN: feedShare * main, PassiveN: passiveShare * main, SpecificMPa: kc, ChipMM: h,
		Confidence: good(forceBand, "Kienzle's law; makers' figures for one metal differ by up to 1.6")}
	if h < thinChipMM {
		f.Confidence = rough(thinChipBand, "a chip under 0.05 mm: the edge ploughs and the force is extrapolated")
	}
	return f, nil
}

func (c Cut) check() error {
	return firstFault(
		positive("specific cutting force kc1.1 (MPa)", c.KC11MPa),
		within("exponent mc", c.MC, 0, 0.9),
		positive("depth of cut (mm)", c.DepthMM),
		within("feed (mm/rev)", c.FeedMM, leastChipMM, mostChipMM),
		within("edge angle (deg)", c.EdgeAngleDeg, 180-steepestAngle, steepestAngle),
		within("wear factor", c.WearFactor, 1, 5),
		within("rake (deg)", c.RakeDeg, -30, 45),
	)
}

// CuttingPowerKW is the power at the spindle, Fc v / 60 000; N and m/min. Divide by the drive's efficiency (0.7 to 0.8
// through belts, common practice) for the motor.
func CuttingPowerKW(mainN, speedMPerMin float64) float64 {
	return mainN * speedMPerMin / 60000
}
