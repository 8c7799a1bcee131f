package dividing_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/planner/numbers/dividing"
)

// usual is a head with a ratio of 40 and three plates of six circles, as workshop handbooks tabulate it (from memory).
var usual = dividing.Head{Ratio: 40, Circles: []int{15, 16, 17, 18, 19, 20, 21, 23, 27, 29, 31, 33, 37, 39, 41, 43, 47, 49}}

// The steps are those of a handbook's table of simple indexing for a ratio of 40 (from memory).
func TestStepsOfTheHandbook(t *testing.T) {
	for n, want := range map[int]dividing.Step{
		2:  {Circle: 15, Turns: 20},
		7:  {Circle: 49, Turns: 5, Holes: 35},
		9:  {Circle: 27, Turns: 4, Holes: 12},
		13: {Circle: 39, Turns: 3, Holes: 3},
		17: {Circle: 17, Turns: 2, Holes: 6},
		22: {Circle: 33, Turns: 1, Holes: 27},
		24: {Circle: 39, Turns: 1, Holes: 26},
		41: {Circle: 41, Turns: 0, Holes: 40},
		48: {Circle: 18, Turns: 0, Holes: 15},
		50: {Circle: 20, Turns: 0, Holes: 16},
		64: {Circle: 16, Turns: 0, Holes: 10},
		86: {Circle: 43, Turns: 0, Holes: 20},
		98: {Circle: 49, Turns: 0, Holes: 20},
	} {
		steps, err := usual.Exact(n)
		require.NoError(t, err)
		assert.Contains(t, steps, want, "%d divisions", n)
	}
}

func TestWhatNoPlateDivides(t *testing.T) {
	for _, n := range []int{51, 53, 57, 127} {
		steps, err := usual.Exact(n)
		require.NoError(t, err)
		assert.Empty(t, steps, "%d divisions", n)
	}
	circle, off := usual.Best(dividing.Divisions(127))
	assert.NotZero(t, circle)
	assert.Greater(t, off, 0.0)
	assert.LessOrEqual(t, off, 180.0/(40*49)+1e-9, "half a hole of the largest circle at most")
}

func TestHeadsThatCannotBe(t *testing.T) {
	for want, h := range map[string]dividing.Head{
		"1 to 400 turns":                   {Circles: []int{15}},
		"needs the circles of holes":       {Ratio: 40},
		"a circle of a dividing plate has": {Ratio: 40, Circles: []int{1}},
	} {
		_, err := h.Exact(6)
		assert.ErrorContains(t, err, want)
	}
	_, err := usual.Exact(0)
	assert.ErrorContains(t, err, "divided into 1 to 2000")
}

// A circle that divides exactly has every place on a hole, the step adds up to the whole round, and every other circle is off by half a hole at most.
func TestCountsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := dividing.Head{Ratio: rapid.IntRange(1, 120).Draw(t, "ratio"), Circles: rapid.SliceOfN(rapid.IntRange(2, 120), 1, 6).Draw(t, "circles")}
		n := rapid.IntRange(1, 200).Draw(t, "divisions")
		steps, err := h.Exact(n)
		require.NoError(t, err)
		exact := map[int]bool{}
		for _, s := range steps {
			exact[s.Circle] = true
			require.Equal(t, h.Ratio*s.Circle, n*(s.Turns*s.Circle+s.Holes))
			require.Less(t, s.Holes, s.Circle)
		}
		for _, p := range h.Circles {
			worst := 0.0
			for _, a := range dividing.Divisions(n) {
				count, off := h.Count(p, a)
				worst = math.Max(worst, math.Abs(off))
				require.InDelta(t, 0, math.Remainder(float64(count)*360/float64(h.Ratio*p)-a-off, 360), 1e-6)
			}
			require.LessOrEqual(t, worst, 180/float64(h.Ratio*p)+1e-9)
			require.Equal(t, exact[p], worst == 0, "circle %d", p)
		}
	})
}
