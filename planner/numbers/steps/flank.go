package steps

import (
	"fmt"
	"math"
)

// flanksClear refuses a curve that is anywhere steeper than the flank on that side. Where it is not, a flank cannot rub: it leaves the
// nose over the curve and from there rises no slower than the curve does.
func flanksClear(s surface, c Cutter) error {
	for _, g := range s.own() {
		for _, x := range []float64{g.lo, g.hi} { // the slope of a line or arc is greatest at an end
			slope := g.slopeAt(x)
			if err := flankClear(slope, x, c.RightFlankDeg, "right"); err != nil {
				return err
			}
			if err := flankClear(-slope, x, c.LeftFlankDeg, "left"); err != nil {
				return err
			}
		}
	}
	if s.left == Wall && c.LeftFlankDeg > 0 || s.right == Wall && c.RightFlankDeg > 0 {
		return fmt.Errorf("a leaning flank rubs on a wall: use a cutter whose flank goes straight in on that side")
	}
	return nil
}

func flankClear(rise, x, leanDeg float64, side string) error {
	steepness := math.Atan(rise) * 180 / math.Pi
	if leanDeg == 0 || steepness <= 90-leanDeg {
		return nil
	}
	return fmt.Errorf("the %s flank leans %g degrees and rubs where the curve is steeper than %g: at %.3f mm across it is %.2f degrees; grind the flank to lean less than %.2f",
		side, leanDeg, 90-leanDeg, x, steepness, 90-steepness)
}
