package steps

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

const (
	// fuzzWideMM and fuzzGraduationMM keep one fuzzed table to a few thousand readings: finer ones are no different, and so slow under a fuzzer that
	// it calls them hung.
	fuzzWideMM, fuzzGraduationMM = 50, 0.02
	// fuzzPieces is how many pieces a fuzzed chain has at most.
	fuzzPieces = 6
)

// Whatever is asked, an answer or an error comes, and an answer passes its own check.
func FuzzFewest(f *testing.F) {
	f.Add(45.0, 40.0, 2.0, 0.0, 0.02, 0.05, 0.0, uint8(0))
	f.Add(10.0, 8.0, 3.0, 0.4, 0.025, 0.1, 0.3, uint8(77))
	f.Add(6.0, 12.0, 2.0, 1.0, 0.1, 0.4, -1.0, uint8(200))
	f.Fuzz(func(t *testing.T, radius, width, cutter, corner, graduation, leftover, origin float64, kinds uint8) {
		r := Request{
			Curve:      [](func(a, b float64) Curve){ConcaveSeat, ConvexArc, Neck, Bead, Cone, func(a, b float64) Curve { return QuarterRound(a) }}[kinds%6](radius, width),
			Cutter:     Cutter{Kind: SquareEnd, WidthMM: cutter, CornerRadiusMM: corner},
			Across:     Axis{GraduationMM: graduation, Reads: Reads(kinds / 64), OriginMM: origin},
			Depth:      Axis{GraduationMM: graduation, Reads: ReadsTravel, OriginMM: origin},
			LeftoverMM: leftover,
		}
		if kinds&16 != 0 {
			r.Cutter = Cutter{Kind: RoundNose, RadiusMM: cutter}
		}
		answers(t, r)
	})
}

// The same for chains of lines and arcs between air, faces and walls, on two dials that are not alike: six bytes make a piece.
func FuzzChain(f *testing.F) {
	f.Add([]byte{0, 40, 20, 0, 0, 0, 1, 60, 80, 30, 1, 0}, 0.8, 0.0, 0.02, 0.0254, 0.08, 0.013, uint8(0))
	f.Add([]byte{1, 90, 120, 64, 0, 0, 0, 10, 200, 0, 0, 0, 1, 30, 33, 128, 1, 0}, 2.0, 0.2, 0.05, 0.02, 0.1, -0.4, uint8(91))
	f.Add([]byte{0, 100, 0, 0, 0, 0}, 1.0, 0.5, 0.25, 0.1, 0.2, 0.0, uint8(38))
	f.Fuzz(func(t *testing.T, pieces []byte, cutter, corner, across, depth, leftover, origin float64, kinds uint8) {
		r := Request{
			Curve:      chainOf(pieces),
			Cutter:     Cutter{Kind: SquareEnd, WidthMM: cutter, CornerRadiusMM: corner},
			Across:     Axis{GraduationMM: across, Reads: ReadsTravel, OriginMM: origin},
			Depth:      Axis{GraduationMM: depth, Reads: ReadsTravel, OriginMM: -origin},
			LeftoverMM: leftover,
		}
		r.Curve.Left, r.Curve.Right = Beyond(1+kinds%3), Beyond(1+kinds/3%3)
		if kinds&32 != 0 {
			r.Cutter = Cutter{Kind: RoundNose, RadiusMM: cutter}
		}
		if kinds&64 != 0 {
			r.Depth.Reads = ReadsDiameter
		}
		if kinds&128 != 0 {
			r.Across.Reads = ReadsDiameter
		}
		answers(t, r)
	})
}

// answers asks for the fewest where that is not slow, and holds the answer to its check.
func answers(t *testing.T, r Request) {
	t.Helper()
	first, last := r.Curve.Segments[0], r.Curve.Segments[len(r.Curve.Segments)-1]
	from, _ := segmentEnds(first)
	_, to := segmentEnds(last)
	if to-from > fuzzWideMM || r.Cutter.halfWidthMM() > fuzzWideMM || math.Min(r.Across.GraduationMM, r.Depth.GraduationMM) < fuzzGraduationMM {
		return
	}
	if table, err := Fewest(r); err == nil {
		assert.NoError(t, table.Check(r), "%+v", r)
	}
}

// chainOf reads pieces that join: kind, length across, fall, centre, form, radius; some are no arcs at all, which is for Fewest to say.
func chainOf(pieces []byte) Curve {
	var curve Curve
	x, depth := 0.0, 0.0
	for ; len(pieces) >= 6 && len(curve.Segments) < fuzzPieces; pieces = pieces[6:] {
		p := pieces[:6]
		to := x + float64(1+int(p[1]))*0.02
		if p[0]%2 == 0 {
			next := depth + (float64(p[2])-128)*0.02
			curve.Segments = append(curve.Segments, Line{x, depth, to, next})
			x, depth = to, next
			continue
		}
		arc := Arc{RadiusMM: (to-x)/2 + float64(p[2])*0.05 + float64(p[5])*float64(p[5]), FromAcrossMM: x, ToAcrossMM: to, Form: Form(1 + p[4]%2)}
		share := float64(p[3]) / math.MaxUint8
		arc.CentreAcrossMM = (to-arc.RadiusMM)*share + (x+arc.RadiusMM)*(1-share)
		arc.CentreDepthMM = depth + segmentHeight(arc, x)
		curve.Segments = append(curve.Segments, arc)
		x, depth = to, -segmentHeight(arc, to)
	}
	if len(curve.Segments) == 0 {
		return Cone(1, 0.5)
	}
	return curve
}
