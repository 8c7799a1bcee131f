package mechanics

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func coverPlate() PlateGrip {
	return PlateGrip{LengthMM: 75, WidthMM: 90, ThicknessMM: 4, BoreDiameterMM: 60, ThinMM: 2, JawWidthMM: 15,
		ForceThinN: 500, ModulusMPa: 210000, Poisson: 0.3, YieldMPa: 300}
}

func plateDistortion(t *testing.T, g PlateGrip) Distortion {
	d, err := g.Distortion()
	require.NoError(t, err)
	return d
}

func TestPlateProperties(t *testing.T) {
	base := plateDistortion(t, coverPlate())
	assert.Equal(t, TrustGood, base.Trust)

	harder := coverPlate()
	harder.ForceThinN *= 1.3
	assert.InEpsilon(t, 1.3*base.ErrorMostMM, plateDistortion(t, harder).ErrorMostMM, rounding)

	thicker := coverPlate()
	thicker.ThinMM = 3
	assert.Less(t, plateDistortion(t, thicker).ErrorMostMM, base.ErrorMostMM)
	assert.Less(t, plateDistortion(t, thicker).StressMostMPa, base.StressMostMPa)

	sideways := coverPlate()
	sideways.ForceThinN, sideways.ForceSideN = 0, 500
	assert.Less(t, plateDistortion(t, sideways).ErrorMostMM, 0.6*base.ErrorMostMM, "never a jaw on the thin edge")

	double := coverPlate()
	for _, length := range []*float64{&double.LengthMM, &double.WidthMM, &double.ThicknessMM, &double.BoreDiameterMM, &double.ThinMM, &double.JawWidthMM} {
		*length *= 2
	}
	double.ForceThinN *= 4
	assert.InEpsilon(t, 2*base.ErrorMostMM, plateDistortion(t, double).ErrorMostMM, rounding)
	assert.InEpsilon(t, base.StressMostMPa, plateDistortion(t, double).StressMostMPa, rounding)
}

func TestPlateTrust(t *testing.T) {
	thick := coverPlate()
	thick.ThinMM = 8
	assert.Equal(t, TrustRough, plateDistortion(t, thick).Trust)
	yields := coverPlate()
	yields.ForceThinN = 800
	assert.Equal(t, TrustNone, plateDistortion(t, yields).Trust)
	gone := coverPlate()
	gone.BoreDiameterMM = 73
	_, err := gone.Distortion()
	assert.ErrorContains(t, err, "thin section (mm) is 2: expected small enough to leave metal beyond the bore")
}

func TestStrapsTrust(t *testing.T) {
	g := AxialStraps{60, 3, 24, 3, 12, 1000, 210000, 0.3, 300}
	d, err := g.Distortion()
	require.NoError(t, err)
	assert.Equal(t, TrustRough, d.Trust)
	assert.Less(t, d.ErrorMostMM, 0.004, "a few um a kN: far below any jaw")
	g.ForcePerStrapN = 20000
	d, err = g.Distortion()
	require.NoError(t, err)
	assert.Equal(t, TrustNone, d.Trust)
	g.LengthMM, g.ForcePerStrapN = 200, 100
	d, err = g.Distortion()
	require.NoError(t, err)
	assert.Equal(t, TrustNone, d.Trust)
	g.WallMM = 30
	_, err = g.Distortion()
	assert.ErrorContains(t, err, "less than half the diameter")
}
