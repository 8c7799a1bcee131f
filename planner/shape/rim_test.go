package shape_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plane"
	"catchplate/planner/shape"
)

// areaNoise is far below what anything is cut to, in square mm.
const areaNoise = 1e-6

// roundTopped is 60 wide, straight to 70, with half a circle on top.
func roundTopped() plane.Region {
	return plane.Region{Edges: []plane.Edge{
		{X0: 0, Y0: 0, X1: 60, Y1: 0}, {X0: 60, Y0: 0, X1: 60, Y1: 70},
		{X0: 60, Y0: 70, X1: 0, Y1: 70, CX: 30, CY: 70, Radius: 30}, {X0: 0, Y0: 70, X1: 0, Y1: 0}}}
}

func TestRimOfABlankIsItsRectangle(t *testing.T) {
	blank := plane.Rectangle(-5, -4, 65, 106)
	f := shape.FlatStock(roundTopped(), blank, 0, 4)
	assert.InDelta(t, blank.Area(), f.Rim().Area(), areaNoise)
	assert.Greater(t, f.Metal(1, 104), 0.0, "the corner over the round top is metal while the blank stands there")
}

func TestRimFollowsEveryCut(t *testing.T) {
	blank := plane.Rectangle(-5, -4, 65, 106)
	f := shape.FlatStock(roundTopped(), blank, 0, 4)
	f = shape.FlatCut{Edges: []shape.EdgeCut{{Edge: 0, Left: 0}, {Edge: 3, Left: 0}}}.Apply(f)
	assert.InDelta(t, 65*106.0, f.Rim().Area(), areaNoise, "bottom and left milled on the blank")
	f = shape.FlatCut{Edges: []shape.EdgeCut{{Edge: 1, Left: 0}}}.Apply(f)
	assert.InDelta(t, 60*106.0, f.Rim().Area(), areaNoise)
	f = shape.FlatCut{Edges: []shape.EdgeCut{{Edge: 2, Left: 1.5}}}.Apply(f)
	// The part of a half circle of 31.5 that lies within 30 of its middle: the sides are milled right along, and nothing of the sawn top stands out beyond them.
	assert.InDelta(t, 60*70+30*math.Sqrt(31.5*31.5-30*30)+31.5*31.5*math.Asin(30/31.5), f.Rim().Area(), areaNoise, "the top sawn to 1.5")
	assert.Less(t, f.Metal(1, 104), 0.0)
	f = shape.FlatCut{Edges: []shape.EdgeCut{{Edge: 2, Left: 0}}}.Apply(f)
	assert.InDelta(t, f.Drawn.Area(), f.Rim().Area(), areaNoise)
}

func TestRimOfRoundedCornersAndDiscs(t *testing.T) {
	corner := plane.Region{Edges: []plane.Edge{ // 40 x 30 with one corner rounded
		{X0: 0, Y0: 0, X1: 40, Y1: 0}, {X0: 40, Y0: 0, X1: 40, Y1: 20}, {X0: 40, Y0: 20, X1: 30, Y1: 30, CX: 30, CY: 20, Radius: 10},
		{X0: 30, Y0: 30, X1: 0, Y1: 30}, {X0: 0, Y0: 30, X1: 0, Y1: 0}}}
	f := shape.FlatStock(corner, plane.Rectangle(-1, -2, 43, 34), 0, 5)
	assert.InDelta(t, 44*36.0, f.Rim().Area(), areaNoise)
	f = shape.FlatCut{Edges: []shape.EdgeCut{{Edge: 0}, {Edge: 1}, {Edge: 3}, {Edge: 4}}}.Apply(f)
	assert.InDelta(t, 40*30.0, f.Rim().Area(), areaNoise, "the corner is still square")
	disc := shape.FlatStock(plane.Disc(0, 0, 20), plane.Rectangle(-22, -23, 24, 25), 0, 3)
	assert.InDelta(t, 46*48.0, disc.Rim().Area(), areaNoise)
}

func TestRawRunsThatWrapRoundTheStart(t *testing.T) {
	top := roundTopped()
	top.Edges = append(top.Edges[2:], top.Edges[:2]...) // the arc comes first
	f := shape.FlatStock(top, plane.Rectangle(-5, -4, 65, 106), 0, 4)
	assert.InDelta(t, 70*110.0, f.Rim().Area(), areaNoise)
}

// One straight edge alone: the raw edges go all the way round from its end to its beginning. Two on one side with a hollow between are no such thing.
func TestRawRunsFromASideBackToIt(t *testing.T) {
	lever := plane.Region{Edges: []plane.Edge{{X0: 0, Y0: 0, X1: 30, Y1: 0}, {X0: 30, Y0: 0, X1: 20, Y1: 10}, {X0: 20, Y0: 10, X1: 0, Y1: 0}}}
	f := shape.FlatStock(lever, plane.Rectangle(-2, -2, 32, 12), 0, 4)
	assert.InDelta(t, 34*14.0, f.Rim().Area(), areaNoise)
	notched := plane.Region{Edges: []plane.Edge{{X0: 0, Y0: 0, X1: 10, Y1: 0}, {X0: 10, Y0: 0, X1: 15, Y1: 5}, {X0: 15, Y0: 5, X1: 20, Y1: 0},
		{X0: 20, Y0: 0, X1: 30, Y1: 0}, {X0: 30, Y0: 0, X1: 30, Y1: 10}, {X0: 30, Y0: 10, X1: 0, Y1: 10}, {X0: 0, Y0: 10, X1: 0, Y1: 0}}}
	f = shape.FlatStock(notched, plane.Rectangle(-2, -2, 32, 12), 0, 4)
	assert.InDelta(t, 34*14.0, f.Rim().Area(), areaNoise)
}

func TestSlotsAreNoMetal(t *testing.T) {
	f := shape.FlatStock(plane.Rectangle(0, 0, 50, 20), plane.Rectangle(0, 0, 50, 20), 0, 5)
	f = shape.FlatCut{Slots: []shape.Groove{{Capsule: plane.Capsule{X0: 10, Y0: 10, X1: 30, Y1: 10, Radius: 3}, Z0: 0, Z1: 5}}}.Apply(f)
	assert.InDelta(t, -3, f.Metal(20, 10), areaNoise)
	assert.InDelta(t, 2, f.Metal(20, 15), areaNoise)
}

func TestASawnRimNeverStandsOutsideItsBlank(t *testing.T) {
	disc := shape.FlatStock(plane.Disc(0, 0, 20), plane.Rectangle(-20.5, -20.5, 20.5, 20.5), 0, 3)
	cut := shape.FlatCut{}
	for i := range disc.Drawn.Edges {
		cut.Edges = append(cut.Edges, shape.EdgeCut{Edge: i, Left: 1.5})
	}
	disc = cut.Apply(disc)
	x0, y0, x1, y1 := disc.Rim().Bounds()
	assert.InDeltaSlice(t, []float64{-20.5, -20.5, 20.5, 20.5}, []float64{x0, y0, x1, y1}, areaNoise)
	assert.Less(t, disc.Metal(21, 0), 0.0, "beyond the blank")
	assert.Greater(t, disc.Metal(15, 15), 0.0, "the saw leaves 1.5 on the slant")
	segment := func(r, h float64) float64 { return r*r*math.Acos(h/r) - h*math.Sqrt(r*r-h*h) }
	assert.InDelta(t, math.Pi*21.5*21.5-4*segment(21.5, 20.5), disc.Rim().Area(), areaNoise)
}
