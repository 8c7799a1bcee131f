package steps

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fine is a dial so fine that rounding to graduations does not show in the figures compared.
func fine(originMM float64) Axis {
	return Axis{GraduationMM: 0.0001, Reads: ReadsTravel, OriginMM: originMM}
}

// crestBetween cuts a curve at the given readings across and returns the crest between the first two.
func crestBetween(t *testing.T, r Request, readings ...int64) float64 {
	t.Helper()
	j, err := newJob(r)
	require.NoError(t, err)
	var cuts []place
	for _, i := range readings {
		n, ok := j.placeAt(i)
		require.True(t, ok)
		cuts = append(cuts, j.places[n])
	}
	return j.feeler.leftBetween(cuts[0], cuts[1])
}

// Ridge of a round nose on a flat, f^2/(8r): 0.2 mm steps with a nose of 0.8 leave 6.25 micrometres (formula and use as printed
// on a cutting-tool maker's pages on turned finish). The formula is the parabola in place of the circle:
// r - sqrt(r^2 - f^2/4) = 6.274 micrometres.
func TestRidgeOnAFlat(t *testing.T) {
	r := Request{Curve: Cone(4, 0), Cutter: Cutter{Kind: RoundNose, RadiusMM: 0.8}, Across: fine(0), Depth: fine(0), LeftoverMM: 0.05}
	const exact = 0.8 - 0.79372539331937717718 // sqrt(0.63)
	crest := crestBetween(t, r, 10000, 12000)
	assert.InDelta(t, exact, crest, tieMM)
	assert.InEpsilon(t, 0.00625, crest, 0.005)
}

// Ridge of a ball or round nose stepping p along an arc: p^2/8 (1/r + 1/R) on a round, p^2/8 (1/r - 1/R) in a hollow (cusp geometry; house rule
// C-17 gives 0.046 and 0.038 for r 3, p 1, R 30).
func TestRidgeOnAnArc(t *testing.T) {
	cutter := Cutter{Kind: RoundNose, RadiusMM: 3}
	// A step of p on the arc moves the nose's centre p (R +- r)/R.
	round := Request{Curve: ConvexArc(30, 8), Cutter: cutter, Across: fine(0), Depth: fine(0), LeftoverMM: 0.1}
	assert.InDelta(t, 0.046, crestBetween(t, round, -5500, 5500), 0.0005)
	hollow := Request{Curve: ConcaveSeat(30, 8), Cutter: cutter, Across: fine(0), Depth: fine(0), LeftoverMM: 0.1}
	assert.InDelta(t, 0.038, crestBetween(t, hollow, -4500, 4500), 0.0005)
}

// Steps a by b with a sharp corner leave a corner a b / sqrt(a^2 + b^2) high, square to the slope (house rule C-16; plain geometry).
func TestCornerOfASharpStep(t *testing.T) {
	r := Request{Curve: Cone(4, 3), Cutter: Cutter{Kind: SquareEnd, WidthMM: 1}, Across: fine(0.5), Depth: fine(0), LeftoverMM: 0.1}
	assert.InDelta(t, 0.04*0.03/0.05, crestBetween(t, r, 10000, 10400), tieMM)
}

// Ball turning by a sharp tool: depth from the end R(1 - cos), radius R sin (the usual ball-turning increment table; figures
// computed for R 10). The tool's inner corner stands at the radius; its depth is the table's, rounded to leave metal.
func TestBallTurningTable(t *testing.T) {
	const width = 2.0
	dial := Axis{GraduationMM: 0.001, Reads: ReadsTravel}
	across := dial
	across.OriginMM = width / 2 // the dial reads the corner
	r := Request{Curve: QuarterRound(10), Cutter: Cutter{Kind: SquareEnd, WidthMM: width}, Across: across, Depth: dial, LeftoverMM: 0.05}
	j, err := newJob(r)
	require.NoError(t, err)
	for _, row := range []struct {
		degrees       float64
		depth, radius float64
	}{
		{10, 0.152, 1.736}, {20, 0.603, 3.420}, {30, 1.340, 5.000}, {40, 2.340, 6.428}, {50, 3.572, 7.660},
		{60, 5.000, 8.660}, {70, 6.580, 9.397}, {80, 8.264, 9.848}, {90, 10.000, 10.000},
	} {
		n, ok := j.placeAt(int64(math.Round(row.radius * 1000)))
		require.True(t, ok)
		depth := float64(j.places[n].depth) / 1000
		slope := math.Tan(min(row.degrees, 85) * math.Pi / 180)
		assert.InDelta(t, row.depth, depth, 0.0015+0.0005*slope, "%v degrees: the radius is rounded to 0.0005 and so is the depth", row.degrees)
	}
}

// Sagitta s = R - sqrt(R^2 - c^2/4), (c^2 + 4 s^2)/(8 s) = R (second form printed in an old pocket-book): a flat of width c over a hollow of
// radius R leaves s under its middle.
func TestFlatOverAHollowLeavesTheSagitta(t *testing.T) {
	for _, row := range []struct{ radius, chord, sagitta float64 }{
		{25, 10, 0.50510}, {25, 20, 2.08712}, {50, 20, 1.01021}, {50, 40, 4.17424}, {100, 30, 1.13140}, {12.7, 6.35, 0.40328},
	} {
		r := Request{Curve: ConcaveSeat(row.radius, row.chord), Cutter: Cutter{Kind: SquareEnd, WidthMM: row.chord},
			Across: Axis{GraduationMM: row.chord, Reads: ReadsTravel}, Depth: fine(0), LeftoverMM: row.sagitta + 0.001}
		table, err := Fewest(r)
		require.NoError(t, err)
		require.Len(t, table.Cuts, 1)
		assert.InDelta(t, row.sagitta, table.WorstLeftoverMM, 0.0001+0.000005, "one graduation and the rounding of the table")
	}
}
