package plane

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCrossing(t *testing.T) {
	_, _, _, crosses := roundTopped().Crossing()
	assert.False(t, crosses, "smooth corners do not cross")
	_, _, _, crosses = Rectangle(0, 0, 5, 4).Crossing()
	assert.False(t, crosses)
	_, _, _, crosses = Region{Capsule{0, 0, 20, 7, 5}.Rim()}.Crossing()
	assert.False(t, crosses)
	bow := Region{[]Edge{{X0: 0, Y0: 0, X1: 10, Y1: 10}, {X0: 10, Y0: 10, X1: 10, Y1: 0}, {X0: 10, Y0: 0, X1: 0, Y1: 10}, {X0: 0, Y0: 10, X1: 0, Y1: 0}}}
	i, k, at, crosses := bow.Crossing()
	assert.True(t, crosses)
	assert.Equal(t, []int{0, 2}, []int{i, k})
	assert.InDeltaSlice(t, []float64{5, 5}, at[:], exact)
	// A hollow arc in the top that dips through the bottom.
	dip := Region{[]Edge{{X0: 0, Y0: 0, X1: 20, Y1: 0}, {X0: 20, Y0: 0, X1: 20, Y1: 5},
		{X0: 20, Y0: 5, X1: 0, Y1: 5, CX: 10, CY: 5, Radius: 10, Hollow: true}, {X0: 0, Y0: 5, X1: 0, Y1: 0}}}
	_, _, _, crosses = dip.Crossing()
	assert.True(t, crosses)
	// A vertex that touches another edge.
	touch := Region{[]Edge{{X0: 0, Y0: 0, X1: 10, Y1: 0}, {X0: 10, Y0: 0, X1: 10, Y1: 8}, {X0: 10, Y0: 8, X1: 5, Y1: 0}, {X0: 5, Y0: 0, X1: 0, Y1: 8}, {X0: 0, Y0: 8, X1: 0, Y1: 0}}}
	_, _, _, crosses = touch.Crossing()
	assert.True(t, crosses)
}
