package mechanics

import "math"

// GripDemand is a cut as the jaws feel it.
type GripDemand struct {
	MainN, FeedN, PassiveN float64 // cutting force
	CutRadiusMM            float64 // where the cut is
	GripRadiusMM           float64 // where the jaws are
	GripLengthMM           float64
	OverhangMM             float64 // from the middle of the grip to the cut; 0 with the tailstock up
	Jaws                   int
	Friction               float64 // jaw on work: 0.07 ground smooth, 0.10 turned, 0.15 raw, 0.25 serrated on rough, 0.1 oily
	Safety                 float64 // 2.5 usual, 4 for an interrupted cut
	AxialStop              bool    // the feed pushes the work on jaw steps or a stop
}

// GripForce is the least force that holds, and what asks for it.
type GripForce struct {
	PerJawN, TotalN float64
	SlipN           float64 // total against turning and pulling out, without the safety factor
	TiltN           float64 // total against tilting by pressure under the jaws alone, without the safety factor
	RuledBy         string  // "slip", "slip and tilt" or "tipping"
	Confidence
}

// LeastGripPerJaw is the larger of two demands, S the safety factor, n the jaws, g the grip radius, Lg its length:
//
//	total  >= S [hypot(Fc r/g, Fa)/mu + M/(c Lg/2)],  M = hypot(Fc, Fp) x overhang, c = least mean |cos| (0.577 for 3)
//	W/jaw  >= S M / (Lg/4 + n mu g/2)                  rule B-42's tipping condition
//
// With an axial stop Fa = 0 and the tilting moment is halved. N, mm. Domain: jaws, collet segments or vice jaws with
// Coulomb friction, standing still. Error: friction is known within a factor of 1.5 at best; S covers it.
// Source: statics after VDI 3106 as chuck makers quote it; the tilt term is plain statics of our own; friction from a
// chuck maker's table (Roehm RN-1391, table 4), factors B-42.
func LeastGripPerJaw(d GripDemand) (GripForce, error) {
	if err := d.check(); err != nil {
		return GripForce{}, err
	}
	n := float64(d.Jaws)
	axial, moment := d.FeedN, math.Hypot(d.MainN, d.PassiveN)*d.OverhangMM
	if d.AxialStop {
		axial, moment = 0, moment/2
	}
	slip := math.Hypot(d.MainN*d.CutRadiusMM/d.GripRadiusMM, axial) / d.Friction
	f := GripForce{SlipN: slip, RuledBy: "slip"}
	if share := tiltShare(d.Jaws); share > 0 {
		f.TiltN = moment / (share * d.GripLengthMM / 2)
	}
	if f.TiltN > 0 {
		f.RuledBy = "slip and tilt"
	}
	f.TotalN = d.Safety * (f.SlipN + f.TiltN)
	if tipping := n * d.Safety * moment / (d.GripLengthMM/4 + n*d.Friction*d.GripRadiusMM/2); tipping > f.TotalN {
		f.TotalN, f.RuledBy = tipping, "tipping"
	}
	f.PerJawN = f.TotalN / n
	f.Confidence = good(bandBound, "statics with friction; the friction is the weak figure, the safety factor covers it")
	return f, nil
}

// tiltShare is the least mean of |cos| over the jaws, whatever the direction of the tilt; 0 for two jaws, which cannot
// resist a tilt along their faces by pressure.
func tiltShare(jaws int) float64 {
	n := float64(jaws)
	least := 1.0
	for _, direction := range [2]float64{0, math.Pi / (2 * n)} {
		for _, turn := range [2]float64{0, math.Pi / n} {
			sum := 0.0
			for i := range jaws {
				sum += math.Abs(math.Cos(2*math.Pi*float64(i)/n + direction + turn))
			}
			least = math.Min(least, sum/n)
		}
	}
	if jaws == 2 {
		return 0
	}
	return least
}

func (d GripDemand) check() error {
	return firstFault(
		notNegative("main cutting force (N)", d.MainN),
		notNegative("feed force (N)", d.FeedN),
		notNegative("passive force (N)", d.PassiveN),
		notNegative("radius of the cut (mm)", d.CutRadiusMM),
		positive("radius of the grip (mm)", d.GripRadiusMM),
		positive("grip length (mm)", d.GripLengthMM),
		notNegative("overhang (mm)", d.OverhangMM),
		within("number of jaws", float64(d.Jaws), 2, mostJaws),
		within("friction", d.Friction, 0.01, 1),
		within("safety factor", d.Safety, 1, 20),
	)
}
