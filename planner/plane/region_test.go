package plane

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// roundTopped is 60 wide, straight to 70 up, with a half circle of radius 30 on top.
func roundTopped() Region {
	return Region{[]Edge{
		{X0: 0, Y0: 0, X1: 60, Y1: 0}, {X0: 60, Y0: 0, X1: 60, Y1: 70},
		{X0: 60, Y0: 70, X1: 0, Y1: 70, CX: 30, CY: 70, Radius: 30}, {X0: 0, Y0: 70, X1: 0, Y1: 0},
	}}
}

const exact = 1e-9

func TestRegionMoments(t *testing.T) {
	d := Disc(3, -2, 5)
	assert.InDelta(t, math.Pi*25, d.Area(), exact)
	x, y := d.Centroid()
	assert.InDelta(t, 3, x, exact)
	assert.InDelta(t, -2, y, exact)
	r := roundTopped()
	assert.InDelta(t, 60*70+math.Pi*900/2, r.Area(), exact)
	_, y = r.Centroid()
	// A half disc's centre of area lies 4r/3π from its diameter (any table of plane figures).
	assert.InDelta(t, (60*70*35+math.Pi*450*(70+4*30/(3*math.Pi)))/r.Area(), y, exact)
	x0, y0, x1, y1 := r.Bounds()
	assert.InDeltaSlice(t, []float64{0, 0, 60, 100}, []float64{x0, y0, x1, y1}, exact)
}

func TestRegionInside(t *testing.T) {
	r := roundTopped()
	for _, c := range []struct{ x, y, want float64 }{
		{30, 70, 30}, {30, 95, 5}, {30, 105, -5}, {5, 10, 5}, {-2, 50, -2}, {1, 99, 30 - math.Hypot(29, 29)}, {63, -4, -5},
	} {
		assert.InDelta(t, c.want, r.Inside(c.x, c.y), exact, "%v, %v", c.x, c.y)
	}
	hollow := Region{[]Edge{{X0: 0, Y0: 0, X1: 20, Y1: 0}, {X0: 20, Y0: 0, X1: 20, Y1: 10},
		{X0: 20, Y0: 10, X1: 0, Y1: 10, CX: 10, CY: 15, Radius: math.Sqrt(125), Hollow: true}, {X0: 0, Y0: 10, X1: 0, Y1: 0}}}
	assert.Negative(t, hollow.Inside(10, 5))
	assert.Positive(t, hollow.Inside(10, 2))
	assert.Less(t, hollow.Area(), 200.0)
}

func TestRegionMoved(t *testing.T) {
	r, err := roundTopped().Moved([]float64{1, 2, 2, 2})
	require.NoError(t, err)
	x0, y0, x1, y1 := r.Bounds()
	assert.InDeltaSlice(t, []float64{-2, -1, 62, 102}, []float64{x0, y0, x1, y1}, exact)
	assert.InDelta(t, 64*71+math.Pi*32*32/2, r.Area(), exact)
	stepped, err := roundTopped().Moved([]float64{0, 0, 1, 0})
	require.NoError(t, err)
	assert.InDelta(t, roundTopped().Area()+math.Pi*(31*31-30*30)/2, stepped.Area(), exact)
}

func TestRegionMovedAllRoundKeepsItsDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		by := rapid.Float64Range(0.1, 10).Draw(t, "by")
		grown, err := roundTopped().Moved([]float64{by, by, by, by})
		if err != nil {
			t.Fatal(err)
		}
		share, k := rapid.Float64Range(0.01, 0.99).Draw(t, "share"), rapid.IntRange(0, 3).Draw(t, "edge")
		x, y := roundTopped().Edges[k].At(share)
		if d := grown.Inside(x, y); math.Abs(d-by) > 1e-6 {
			t.Fatalf("edge %d at %v lies %v inside, not %v", k, share, d, by)
		}
	})
}

// A round end that turns exactly from bottom to top lies on the side where it bulges.
func TestInsideAtRoundEnds(t *testing.T) {
	slot := Region{Capsule{0, 5, 20, 5, 5}.Rim()}
	for _, p := range [][3]float64{{-4, 5, 1}, {24, 5, 1}, {-6, 5, -1}, {26, 5, -1}, {-3, 7, 5 - math.Hypot(3, 2)}, {10, 1, 1}} {
		assert.InDelta(t, p[2], slot.Inside(p[0], p[1]), 1e-9, "%v", p)
	}
}

// One edge may go all the way round: the rim of a disc that ends where it begins.
func TestOneEdgeAllRound(t *testing.T) {
	r := Region{[]Edge{{X0: 7, Y0: 0, X1: 7, Y1: 0, CX: 0, CY: 0, Radius: 7}}}
	assert.InDelta(t, math.Pi*49, r.Area(), exact)
	for _, c := range []struct{ x, y, want float64 }{{0, 0, 7}, {3, 4, 2}, {-3, -4, 2}, {-6, 1, 7 - math.Hypot(6, 1)}, {-8, 1, 7 - math.Hypot(8, 1)}, {9, 1, 7 - math.Hypot(9, 1)}} {
		assert.InDelta(t, c.want, r.Inside(c.x, c.y), exact, "%v, %v", c.x, c.y)
	}
	wider, err := r.Moved([]float64{1})
	require.NoError(t, err)
	assert.InDelta(t, math.Pi*64, wider.Area(), exact)
}

// Edges that were cut out of others meet within rounding only: a place level with such a corner is inside none the less.
func TestInsideLevelWithACornerThatGapes(t *testing.T) {
	r := Region{[]Edge{
		{X0: 0, Y0: 0, X1: 60, Y1: 0}, {X0: 60, Y0: 0, X1: 60, Y1: 54.5}, {X0: 60, Y0: 54.500000000000014, X1: 60, Y1: 80},
		{X0: 60, Y0: 80, X1: 0, Y1: 80}, {X0: 0, Y0: 80, X1: 0, Y1: 54.5}, {X0: 0, Y0: 54.5, X1: 0, Y1: 0},
	}}
	assert.Equal(t, 25.5, r.Inside(30, 54.5))
	assert.Equal(t, -10.0, r.Inside(-10, 54.5))
}
