package steps

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDecimalMeansWhatIsWritten(t *testing.T) {
	assert.Zero(t, decimal(0.02).Cmp(big.NewRat(1, 50)))
	assert.Zero(t, decimal(0.0254).Cmp(big.NewRat(254, 10000)))
	assert.Zero(t, decimal(-1e-7).Cmp(big.NewRat(-1, 10_000_000)))
}

func TestSignOfARoot(t *testing.T) {
	r := func(a int64) *big.Rat { return big.NewRat(a, 1) }
	for _, c := range []struct {
		a, b, p int64
		want    int
	}{
		{0, 0, 2, 0}, {3, 0, 2, 1}, {-3, 0, 2, -1}, {0, 1, 2, 1}, {0, -1, 2, -1}, {0, 1, 0, 0},
		{-3, 1, 9, 0}, {-3, 1, 10, 1}, {-3, 1, 8, -1}, {3, -1, 9, 0}, {3, -1, 10, -1}, {3, -1, 8, 1}, {6, -2, 9, 0},
		{-665857, 470832, 2, -1}, {665857, -470832, 2, 1}, // 665857/470832 is a convergent of sqrt 2, too near for float64 squares
	} {
		got := signRoot(r(c.a), r(c.b), r(c.p))
		assert.Equal(t, c.want, int(math.Copysign(1, float64(got)))*min(1, got*got), "%d + %d sqrt %d", c.a, c.b, c.p)
	}
}

// Against 400-bit floating point, on random sums of two roots and on exact ties.
func TestSurdAtMost(t *testing.T) {
	c := newCases(3)
	rat := func() *big.Rat { return big.NewRat(c.Int64N(2000)-1000, 1+c.Int64N(50)) }
	float := func(r *big.Rat) *big.Float { return new(big.Float).SetPrec(400).SetRat(r) }
	root := func(r *big.Rat) *big.Float { return new(big.Float).SetPrec(400).Sqrt(float(r)) }
	for range 2000 {
		p, q := rat(), rat()
		p.Abs(p)
		q.Abs(q)
		h := surd{rat(), p, c.IntN(3) - 1}
		sum := new(big.Float).SetPrec(400).Mul(big.NewFloat(float64(h.s)), root(p))
		sum.Add(sum, float(h.a)).Add(sum, root(q))
		y := rat()
		assert.Equal(t, float(y).Cmp(sum) >= 0, h.atMost(y, q), "%v >= %v + %d sqrt %v + sqrt %v", y, h.a, h.s, p, q)
		m, n := rat(), rat() // |m| + |n| against themselves as roots: a tie
		m.Abs(m)
		n.Abs(n)
		tie := surd{new(big.Rat), mul(m, m), 1}
		assert.True(t, tie.atMost(add(m, n), mul(n, n)))
		assert.False(t, tie.atMost(sub(add(m, n), big.NewRat(1, 1_000_000_000)), mul(n, n)))
	}
}

// A cutter that touches exactly is admitted, and one graduation more is not: the touch is at a place known without rounding.
func TestExactTouch(t *testing.T) {
	dial := Axis{GraduationMM: 0.01, Reads: ReadsTravel}
	for name, c := range map[string]struct {
		curve         Curve
		cutter        Cutter
		across, depth int64
	}{
		"nose in the bottom of a hollow": {ConcaveSeat(45, 40), Cutter{Kind: RoundNose, RadiusMM: 2}, 0, 0},
		// Centre of the nose 8 from the hollow's centre at 3-4-5: 4.8 across, 6.4 down; the hollow's centre is 10 over its bottom.
		"nose on a hollow at 3-4-5": {ConcaveSeat(10, 16), Cutter{Kind: RoundNose, RadiusMM: 2}, 480, -160},
		// Centre 15 from the back's centre: 9 across, 12 up; tip 3 lower, 1 below the crown.
		"nose on a back at 3-4-5":   {ConvexArc(12, 20), Cutter{Kind: RoundNose, RadiusMM: 3}, 900, 300},
		"corner on a cone at 3-4-5": {Cone(8, 6), Cutter{Kind: SquareEnd, WidthMM: 1}, 450, 300},
		// Nose 1 on a 3-4 slope: centre 1.25 above the slope, tip 0.25 above it.
		"nose on a cone at 3-4-5": {Cone(8, 6), Cutter{Kind: RoundNose, RadiusMM: 1}, 400, 275},
		"flat on a crown":         {ConvexArc(12, 20), Cutter{Kind: SquareEnd, WidthMM: 3}, 100, 0},
		// The slope ends 6 up at 8 across; the centre of the nose is 3 past that and 4 over it.
		"nose on a corner": {Cone(8, -6), Cutter{Kind: RoundNose, RadiusMM: 5}, 1100, -500},
	} {
		j, err := newJob(Request{Curve: c.curve, Cutter: c.cutter, Across: dial, Depth: dial, LeftoverMM: 0.05})
		require.NoError(t, err, name)
		depth, ok := j.feeler.deepest(c.across)
		assert.True(t, ok, name)
		assert.Equal(t, c.depth, depth, name)
		assert.True(t, j.feeler.clear(c.across, c.depth), name)
		assert.False(t, j.feeler.clear(c.across, c.depth+1), name)
	}
}

// The quick answer by spans is the exact one: the depth found is clear and the next is not.
func TestDeepestIsDeepest(t *testing.T) {
	c := newCases(5)
	for tried := 0; tried < 300; {
		j, err := newJob(c.request())
		if err != nil {
			continue
		}
		tried++
		for range 10 {
			p := j.places[c.IntN(len(j.places))]
			require.True(t, j.feeler.clear(p.across, p.depth), "%+v at %d, %d", j.request, p.across, p.depth)
			require.False(t, j.feeler.clear(p.across, p.depth+1) && meets(j, p), "%+v at %d, %d", j.request, p.across, p.depth+1)
		}
	}
}

// meets reports whether a place is over the curve by more than a touch of its end, where a cut may go deeper but clears nothing.
func meets(j *job, p place) bool {
	half := j.request.Cutter.halfWidthMM()
	return p.x+half > j.feeler.surface.lo+tieMM && p.x-half < j.feeler.surface.hi-tieMM
}

// A face whose depth is worked out lies where the decimals put it: a nose that just touches it goes down to it, though the sum of the ogee's figures ends short of 1.09.
func TestFaceIsTouchedOnItsGraduation(t *testing.T) {
	curve, err := Ogee(4.53, 3.13, 1.09)
	require.NoError(t, err)
	table, err := Fewest(Request{Curve: curve, Cutter: Cutter{Kind: RoundNose, RadiusMM: 1.12}, LeftoverMM: 0.09,
		Across: Axis{GraduationMM: 0.25, Reads: ReadsTravel, OriginMM: -0.04}, Depth: Axis{GraduationMM: 0.1, Reads: ReadsTravel, OriginMM: -0.81}})
	require.NoError(t, err)
	require.Equal(t, 1.09, table.Cuts[len(table.Cuts)-1].DepthMM)
}
