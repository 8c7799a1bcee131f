package mechanics

// MostForce is the upper end of a grip window.
type MostForce struct {
	PerJawN float64
	RuledBy string // "tolerance", "yield" or "range" (the elastic figure ends at 0.5 % of the diameter)
	Confidence
}

const (
	// mostForceSteps halves the search for the force to better than a thousandth of it.
	mostForceSteps = 11
	// mostForceDoublings bounds the search for a force that is too much.
	mostForceDoublings = 20
)

// MostForcePerJaw is the largest force on each jaw that keeps the out of round within a tolerance and the stress below yield
// (with the reserve of the stress figure). The force of g itself does not matter. Even pressure answers in proportion; stiff
// jaws and plugs do not, and the force is found by halving, on the safe side. Domain, error: as Distortion.
// A force of 0 means that the work is spoilt already by the jaws' mismatch or is never within tolerance.
func (g RingGrip) MostForcePerJaw(toleranceMM float64) (MostForce, error) {
	if err := firstFault(positive("tolerance (mm)", toleranceMM)); err != nil {
		return MostForce{}, err
	}
	g.ForcePerJawN = 1
	if err := g.check(); err != nil {
		return MostForce{}, err
	}
	even := g
	even.Rigid, even.Plug = nil, nil
	unit, _ := even.elastic()
	force, ruledBy := even.limits(unit, toleranceMM)
	if g.Rigid != nil || g.Plug != nil {
		force, ruledBy = g.search(force, toleranceMM)
	}
	at, err := g.at(force)
	if err != nil {
		return MostForce{}, err
	}
	return MostForce{force, ruledBy, at.Confidence}, nil
}

// limits is the least of the forces at which a unit figure reaches a limit.
func (g RingGrip) limits(unit Distortion, toleranceMM float64) (force float64, ruledBy string) {
	force, ruledBy = mostNumber, "range"
	note := func(limit, figure float64, by string) {
		if figure > 0 && limit/figure < force {
			force, ruledBy = limit/figure, by
		}
	}
	note(toleranceMM, unit.ErrorMostMM, "tolerance")
	note(largestError*g.OutsideDiameterMM, unit.ErrorMostMM, "range")
	if g.YieldMPa > 0 {
		note(g.YieldMPa, unit.StressMostMPa*g.stressReserve(), "yield")
	}
	return force * justBelow, ruledBy
}

// justBelow keeps a limit force inside its own limit against rounding.
const justBelow = 1 - 1e-9

// search finds the force by doubling and halving; from is a first guess.
func (g RingGrip) search(from, toleranceMM float64) (force float64, ruledBy string) {
	low, high := 0.0, from
	for range mostForceDoublings {
		by := g.beyond(high, toleranceMM)
		if by != "" {
			ruledBy = by
			break
		}
		low, high = high, 2*high
	}
	for range mostForceSteps {
		middle := (low + high) / 2
		if by := g.beyond(middle, toleranceMM); by != "" {
			high, ruledBy = middle, by
		} else {
			low = middle
		}
	}
	return low, ruledBy
}

// beyond names the limit that a force breaks, or nothing.
func (g RingGrip) beyond(force, toleranceMM float64) string {
	g.ForcePerJawN = force
	d, settled := g.elastic()
	switch {
	case !settled || d.ErrorMostMM > largestError*g.OutsideDiameterMM:
		return "range"
	case d.ErrorMostMM > toleranceMM:
		return "tolerance"
	case g.YieldShare(d.StressMostMPa) > 1:
		return "yield"
	}
	return ""
}
