package steps

import (
	"fmt"
	"math"
)

// The shapes below are drawn with across 0 and depth 0 where each comment says. A shape whose numbers make no sense comes back
// as a curve that Fewest refuses with a reason.

// ConcaveSeat is a hollow of the given radius, width across, cut in work of that width. Across 0 is the centre line and depth 0
// the bottom of the hollow: the flanks lie at negative depths.
func ConcaveSeat(radiusMM, widthMM float64) Curve {
	return Curve{Left: Air, Right: Air, Segments: []Segment{
		Arc{CentreDepthMM: -radiusMM, RadiusMM: radiusMM, FromAcrossMM: -widthMM / 2, ToAcrossMM: widthMM / 2, Form: Hollow},
	}}
}

// ConvexArc is a round back of the given radius, width across, on work of that width. Across 0 is the centre line and depth 0 the
// crown.
func ConvexArc(radiusMM, widthMM float64) Curve {
	return Curve{Left: Air, Right: Air, Segments: []Segment{
		Arc{CentreDepthMM: radiusMM, RadiusMM: radiusMM, FromAcrossMM: -widthMM / 2, ToAcrossMM: widthMM / 2, Form: Round},
	}}
}

// QuarterRound rounds the edge of a face: from the face, which stays, at across 0 and depth 0 to the side at across radius.
func QuarterRound(radiusMM float64) Curve {
	return Curve{Left: Level, Right: Air, Segments: []Segment{
		Arc{CentreDepthMM: radiusMM, RadiusMM: radiusMM, FromAcrossMM: 0, ToAcrossMM: radiusMM, Form: Round},
	}}
}

// Bead is a round of the given radius standing between two faces at its foot, which stay. Across 0 is the centre line and depth 0
// the crown.
func Bead(radiusMM, widthMM float64) Curve {
	c := ConvexArc(radiusMM, widthMM)
	c.Left, c.Right = Level, Level
	return c
}

// Neck is a hollow of the given radius cut into a face or bar, which stays beside it. Across 0 is the centre line and depth 0 the
// bottom.
func Neck(radiusMM, widthMM float64) Curve {
	c := ConcaveSeat(radiusMM, widthMM)
	c.Left, c.Right = Level, Level
	return c
}

// Cone is a straight slope from across 0, depth 0 to across length, depth drop, open at both ends.
func Cone(lengthMM, dropMM float64) Curve {
	return Curve{Left: Air, Right: Air, Segments: []Segment{Line{ToAcrossMM: lengthMM, ToDepthMM: dropMM}}}
}

// Ogee is a round arc and a hollow arc, tangent to each other and level at both ends: from across 0, depth 0 down to depth drop.
// With turn the angle that each arc turns through, (round + hollow)(1 - cos turn) = drop; drop is at most round + hollow.
func Ogee(roundMM, hollowMM, dropMM float64) (Curve, error) {
	sum := roundMM + hollowMM
	if !inReach(roundMM, hollowMM, dropMM) || roundMM <= 0 || hollowMM <= 0 || dropMM <= 0 || dropMM > sum {
		return Curve{}, fmt.Errorf("an ogee needs two radii above 0 and a drop above 0 and no more than their sum, not %g, %g and %g", roundMM, hollowMM, dropMM)
	}
	run := math.Sqrt(dropMM * (2*sum - dropMM)) // sum * sin(turn)
	joint := run * roundMM / sum
	return Curve{Left: Level, Right: Level, Segments: []Segment{
		Arc{CentreDepthMM: roundMM, RadiusMM: roundMM, FromAcrossMM: 0, ToAcrossMM: joint, Form: Round},
		Arc{CentreAcrossMM: run, CentreDepthMM: dropMM - hollowMM, RadiusMM: hollowMM, FromAcrossMM: joint, ToAcrossMM: run, Form: Hollow},
	}}, nil
}
