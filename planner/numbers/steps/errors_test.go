package steps

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBadRequestsSayWhatIsWanted(t *testing.T) {
	for _, c := range []struct {
		change func(*Request)
		want   string
	}{
		{func(r *Request) { r.Curve = ConcaveSeat(1.5, 2) }, "a round nose of radius 2 cannot cut a hollow of radius 1.5: use a nose of radius 1.5 or less"},
		{func(r *Request) { r.Cutter = Cutter{Kind: SquareEnd, WidthMM: 8} }, "a flat 8 mm wide cannot get within 0.05 mm of the bottom of a hollow of radius 45: use one narrower than 4.241 mm"},
		{func(r *Request) { r.Curve = Curve{} }, "the curve has no pieces"},
		{func(r *Request) { r.Curve.Segments[0] = nil }, "piece 1 of the curve is missing"},
		{func(r *Request) { r.Curve.Left = 0 }, "what lies beyond each end: air, level or wall, not Beyond(0)"},
		{func(r *Request) { r.Curve = ConcaveSeat(10, 40) }, "piece 1 of the curve: an arc of radius 10 about 0 across does not reach from -20 to 20"},
		{func(r *Request) { r.Curve = ConcaveSeat(-45, 40) }, "an arc needs a radius above 0"},
		{func(r *Request) { r.Curve = ConcaveSeat(math.NaN(), 40) }, "an arc needs a radius above 0 and plain numbers within 10000 mm"},
		{func(r *Request) { r.Curve = ConcaveSeat(45, -40) }, "an arc from 20 to -20 across does not go forward"},
		{func(r *Request) { r.Curve = Cone(0, 4) }, "a line from 0 to 0 across does not go forward: give the pieces in order of rising across, none straight in"},
		{func(r *Request) { r.Curve = Cone(0.001, 4) }, "a line with a slope of -4000 goes all but straight in"},
		{func(r *Request) { r.Curve = Cone(math.Inf(1), 4) }, "a line needs four plain numbers"},
		{func(r *Request) { r.Curve.Segments = []Segment{Arc{RadiusMM: 5, ToAcrossMM: 1}} }, "an arc must be round or hollow, not Form(0)"},
		{func(r *Request) { r.Curve.Segments = append(r.Curve.Segments, Line{20, 1, 25, 1}) }, "pieces 1 and 2 of the curve: the first ends at depth -4.688711 and the next starts at 1.000000"},
		{func(r *Request) { r.Curve.Segments = append(r.Curve.Segments, Line{21, 0, 25, 0}) }, "the first ends at 20 across and the next starts at 21"},
		{func(r *Request) { r.Curve.Segments = make([]Segment, mostSegments+1) }, "the curve has 2001 pieces; the most is 2000"},
		{func(r *Request) { r.Cutter = Cutter{} }, "the cutter must be a round nose or a square end, not CutterKind(0)"},
		{func(r *Request) { r.Cutter.RadiusMM = 0 }, "a round nose needs a radius above 0"},
		{func(r *Request) { r.Cutter = Cutter{Kind: SquareEnd} }, "a square end needs a width above 0"},
		{func(r *Request) { r.Cutter = Cutter{Kind: SquareEnd, WidthMM: 3, CornerRadiusMM: 2} }, "a square end 3 wide cannot have corners of radius 2"},
		{func(r *Request) { r.Cutter.LeftFlankDeg = 90 }, "a flank must lean 0 to less than 90 degrees"},
		{func(r *Request) { r.Cutter.RightFlankDeg = 65 }, "the right flank leans 65 degrees and rubs where the curve is steeper than 25: at 20.000 mm across it is 26.39 degrees; grind the flank to lean less than 63.61"},
		{func(r *Request) { r.Cutter.LeftFlankDeg = 65 }, "the left flank leans 65 degrees"},
		{func(r *Request) { r.Cutter.LeftFlankDeg, r.Curve.Left = 5, Wall }, "a leaning flank rubs on a wall"},
		{func(r *Request) { r.Across.GraduationMM = 0 }, "the across dial needs a graduation of 0.0001 mm or more"},
		{func(r *Request) { r.Depth.Reads = 0 }, "the depth dial must read travel or diameter, not Reads(0)"},
		{func(r *Request) { r.LeftoverMM = 0 }, "the leftover must be 0.0001 mm or more, not 0"},
		{func(r *Request) { r.Curve, r.LeftoverMM = ConcaveSeat(3, 5), 3 }, "a leftover of 3 mm is as large as the curve itself"},
		{func(r *Request) { r.MostDepthMM = -1 }, "the most depth per cut and the stock above the curve must be 0 or more"},
		{func(r *Request) { r.MostDepthMM = 0.03 }, "the most depth per cut, 0.03 mm, must be two graduations of the depth dial (0.04 mm) or more"},
		{func(r *Request) { r.MostDepthMM, r.StockAboveMM = 0.04, 9000 }, "takes more than 5000 passes"},
		{func(r *Request) { r.Curve, r.Across.GraduationMM = Cone(100, 1), 0.0001 }, "readings across are too many"},
		{func(r *Request) { r.Across.GraduationMM = 3 }, "no cut on these graduations comes within 0.05 mm of the curve"},
		{func(r *Request) {
			r.Curve.Left, r.Curve.Right = Wall, Wall
			r.Cutter = Cutter{Kind: SquareEnd, WidthMM: 41}
		}, "the cutter is wider than the room between the walls"},
	} {
		r := seat()
		c.change(&r)
		_, err := Fewest(r)
		assert.ErrorContains(t, err, c.want)
	}
}

func TestOgeeOfImpossibleSizes(t *testing.T) {
	for _, drop := range []float64{0, -1, 15, math.NaN()} {
		_, err := Ogee(8, 6, drop)
		assert.ErrorContains(t, err, "an ogee needs two radii above 0")
	}
}
