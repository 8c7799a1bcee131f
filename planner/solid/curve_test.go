package solid

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCurveAt(t *testing.T) {
	c := Const(0, 5, 3).Join(Line(5, 4, 8, 1)).Join(Arc(8, 1, 10, 3, 10, 1, true))
	for _, k := range []struct{ z, left, right float64 }{
		{-1, math.NaN(), math.NaN()},
		{0, math.NaN(), 3},
		{2, 3, 3},
		{5, 3, 4},
		{6.5, 2.5, 2.5},
		{8, 1, 1},
		{10, 3, math.NaN()},
	} {
		left, right := c.At(k.z)
		assertSame(t, k.left, left, "left of %g", k.z)
		assertSame(t, k.right, right, "right of %g", k.z)
	}
	z0, z1, ok := c.Domain()
	require.True(t, ok)
	assert.Equal(t, 0.0, z0)
	assert.Equal(t, 10.0, z1)
	assert.InDelta(t, 1, c.Least(0, 10), Noise)
	assert.InDelta(t, 4, c.Greatest(0, 10), Noise)
}

func assertSame(t *testing.T, want, got float64, msg string, args ...any) {
	t.Helper()
	if math.IsNaN(want) {
		assert.True(t, math.IsNaN(got), append([]any{msg}, args...)...)
		return
	}
	assert.InDelta(t, want, got, Noise, append([]any{msg}, args...)...)
}

// A square shoulder, an empty stretch and an arc without radius have no width: they are empty, and everything takes an empty curve.
func TestEmptyCurves(t *testing.T) {
	for _, c := range []Curve{{}, Line(3, 1, 3, 9), Const(2, 2, 1), Arc(1, 1, 2, 1, 1.5, 1, true).Clip(9, 10), Arc(0, 0, 0, 0, 0, 0, true)} {
		_, _, ok := c.Domain()
		assert.False(t, ok)
		assert.True(t, Lower(c, Const(0, 1, 1)).Empty())
		assert.Equal(t, Const(0, 1, 1), Upper(Const(0, 1, 1), c))
		assert.True(t, math.IsInf(c.Least(0, 1), 1))
	}
}

// A half round groove of radius 2 in a cylinder: the extreme lies inside the arc.
func TestExtremeInsideAnArc(t *testing.T) {
	c := Arc(0, 10, 4, 10, 2, 10, false)
	assert.InDelta(t, 8, c.Least(0, 4), Noise)
	assert.InDelta(t, 10, c.Greatest(0, 4), Noise)
	assert.InDelta(t, 10-math.Sqrt(3), c.Least(0, 1), Noise)
}

func TestLowerAndUpperAgainstSampling(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for n := 0; n < 300; n++ {
		a, b := randomCurve(r), randomCurve(r)
		lower, upper := Lower(a, b), Upper(a, b)
		for k := 0; k < 200; k++ {
			z := 22*r.Float64() - 1
			va, clearA := value(a, z)
			vb, clearB := value(b, z)
			vl, clearL := value(lower, z)
			vu, clearU := value(upper, z)
			if !clearA || !clearB || !clearL || !clearU {
				continue
			}
			wantL, wantU := va, va
			if !math.IsNaN(va) && !math.IsNaN(vb) {
				wantL, wantU = math.Min(va, vb), math.Max(va, vb)
			}
			assertNear(t, wantL, vl, sampleTol)
			assertNear(t, wantU, vu, sampleTol)
		}
	}
}

func assertNear(t *testing.T, want, got, tol float64) {
	t.Helper()
	if math.IsNaN(want) != math.IsNaN(got) || math.Abs(want-got) > tol {
		t.Fatalf("want %v, got %v", want, got)
	}
}

func TestLowerIdentities(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for n := 0; n < 300; n++ {
		a, b := randomCurve(r), randomCurve(r)
		assertCurves(t, a, Lower(a, a))
		ab := Lower(a, b)
		assertCurves(t, ab, Lower(ab, b))
		assertCurves(t, ab, Lower(ab, a))
		assertCurves(t, a, Lower(a, Upper(a, b)))
		// Where both have a value, the order does not matter.
		assertValues(t, r, Lower(a, b), Lower(b, a))
	}
}

// assertCurves compares two curves that should be the same at the middle of every stretch.
func assertCurves(t *testing.T, want, got Curve) {
	t.Helper()
	eachStretch(stops(want, got), func(z0, z1 float64) {
		mid := (z0 + z1) / 2
		p, inWant := want.pieceOver(mid)
		q, inGot := got.pieceOver(mid)
		require.Equal(t, inWant, inGot, "at %g", mid)
		if inWant {
			require.InDelta(t, p.At(mid), q.At(mid), sampleTol, "at %g", mid)
		}
	})
}

// assertValues compares two curves where both have a value.
func assertValues(t *testing.T, r *rand.Rand, a, b Curve) {
	t.Helper()
	for k := 0; k < 50; k++ {
		z := 20 * r.Float64()
		va, clearA := value(a, z)
		vb, clearB := value(b, z)
		if clearA && clearB && !math.IsNaN(va) && !math.IsNaN(vb) {
			assertNear(t, va, vb, sampleTol)
		}
	}
}

// A cut in two steps gives the same pieces as the cut in one: nothing is left over where pieces meet.
func TestPiecesAreJoinedAgain(t *testing.T) {
	bar := Const(0, 50, 10)
	twice := Lower(Lower(bar, Const(20, 60, 7)), Const(10, 30, 7))
	assert.Equal(t, Const(0, 10, 10).Join(Const(10, 50, 7)), twice)
	arc := Arc(0, 10, 4, 10, 2, 10, false)
	assert.Equal(t, 1, len(arc.Clip(0, 1).Join(arc.Clip(1, 4)).Pieces()))
}
