package mechanics

import "math"

// Hold is what a holding resists, before any safety factor.
type Hold struct {
	TorqueNm float64
	AxialN   float64
	Confidence
}

// Reserve is the factor by which the holding resists a torque and an axial force that act together, which share the same
// friction or bond: 1/hypot(T/T hold, A/A hold). Infinite without a load. Compare it with the safety factor wanted.
func (h Hold) Reserve(torqueNm, axialN float64) float64 {
	return 1 / math.Hypot(share(torqueNm, h.TorqueNm), share(axialN, h.AxialN))
}

// share of a capacity that a load takes; any load on no capacity is beyond it.
func share(load, capacity float64) float64 {
	if load == 0 {
		return 0
	}
	return load / capacity
}
