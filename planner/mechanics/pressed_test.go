package mechanics

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func pressedPlate() PressedPlate {
	return PressedPlate{ForceN: 8000, WidthMM: 80, ThickMM: 5, BoreMM: 10, RoundMM: 35, ModulusMPa: 70000, Poisson: 0.33, YieldMPa: 200}
}

// In a wide plate the figures are Kirsch's: 4 p r/E from peak to valley, and three times the pressure beside the hole (Timoshenko and Goodier). With half the width of
// a strip in its hole the pressure beside it is known to be 4.3 of that far off (Howland 1930); a ring, which is less metal than a strip, is pressed more.
func TestPressedPlateAgainstPublishedFigures(t *testing.T) {
	wide := pressedPlate()
	wide.RoundMM = 2000
	d, err := wide.Distortion()
	require.NoError(t, err)
	const p, r = 20, 5
	assert.InEpsilon(t, 4*p*r/70000.0, d.ErrorMostMM, 1e-3)
	assert.InEpsilon(t, 3*p, d.StressMostMPa, 1e-3)
	wide.Poisson = 0.1
	other, err := wide.Distortion()
	require.NoError(t, err)
	assert.InEpsilon(t, d.ErrorMostMM, other.ErrorMostMM, 1e-3, "it does not hang on Poisson's ratio")

	half := pressedPlate()
	half.RoundMM = 5
	d, err = half.Distortion()
	require.NoError(t, err)
	assert.Greater(t, d.StressMostMPa, 4.3*p)
	assert.Less(t, d.StressMostMPa, 8.0*p)
}

// Less metal round the hole gives more, and twice the force twice as much.
func TestPressedPlateProperties(t *testing.T) {
	last := 0.0
	for _, round := range []float64{100, 35, 20, 10, 7, 5} {
		g := pressedPlate()
		g.RoundMM = round
		d, err := g.Distortion()
		require.NoError(t, err)
		assert.Greater(t, d.ErrorMostMM, last, "%g round it", round)
		last = d.ErrorMostMM
		g.ForceN *= 2
		double, err := g.Distortion()
		require.NoError(t, err)
		assert.InEpsilon(t, 2*d.ErrorMostMM, double.ErrorMostMM, rounding)
	}
}

func TestPressedPlateTrust(t *testing.T) {
	g := pressedPlate()
	d, err := g.Distortion()
	require.NoError(t, err)
	assert.Equal(t, TrustRough, d.Trust)
	g.ForceN *= 4
	d, err = g.Distortion()
	require.NoError(t, err)
	assert.Equal(t, TrustNone, d.Trust, "over three times 80 MPa")
	g.BoreMM = 0
	_, err = g.Distortion()
	assert.ErrorContains(t, err, "hole (mm)")
	for round, whole := range map[float64]bool{4.9: false, 5: true} {
		g := pressedPlate()
		g.RoundMM = round
		assert.Equal(t, whole, g.Surrounded())
	}
	narrow := pressedPlate()
	narrow.WidthMM = 19
	assert.False(t, narrow.Surrounded(), "jaws hardly wider than the hole")
}
