package mechanics

import "math"

// ThinRing are the coefficients of a thin ring under n equal radial loads W, evenly spaced: movement x W R^3/(E I), moment
// x W R, R the mean radius, I = L h^3/12.
type ThinRing struct {
	InwardAtLoad  float64
	OutwardMidway float64
	MomentAtLoad  float64 // flattens: tension at the bore
	MomentMidway  float64 // tension outside
	PeakToValley  float64 // of the radial movement
	Confidence
}

// ThinRingUnder gives the closed form, with t = pi/n: [(t + s c)/(2 s^2) - 1/t]/2 and so on. Bending only, line loads.
// Domain: mean radius over wall of 20 and more, n of 2 to 4: within 0.5 % of finite elements. With real jaws and lengths it is
// 3 to 23 % high above R/h = 5, low below 3.5, and up to ten times high for jaws bored to size: a quick look, no more.
// Source: Roark's Formulas for Stress and Strain, circular rings, n equal radial loads.
func ThinRingUnder(loads int) (ThinRing, error) {
	if err := firstFault(within("number of loads", float64(loads), 2, mostJaws)); err != nil {
		return ThinRing{}, err
	}
	t := math.Pi / float64(loads)
	s, c := math.Sin(t), math.Cos(t)
	r := ThinRing{
		InwardAtLoad:  ((t+s*c)/(2*s*s) - 1/t) / 2,
		OutwardMidway: (1/t - (s+t*c)/(2*s*s)) / 2,
		MomentAtLoad:  (1/t - c/s) / 2,
		MomentMidway:  (1/s - 1/t) / 2,
		Confidence:    rough(bandBound, "thin ring, line loads: a quick look"),
	}
	r.PeakToValley = r.InwardAtLoad + r.OutwardMidway
	return r, nil
}
