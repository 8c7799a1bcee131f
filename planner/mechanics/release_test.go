package mechanics

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Worked releases: error left in um with a chuck of 20 and of 200 N/um, and with rigid jaws.
func TestReleasedWorkedFigures(t *testing.T) {
	steelRing := RingGrip{OutsideDiameterMM: 60, WallMM: 3, LengthMM: 24, GripLengthMM: 24, Jaws: 3, JawWidthMM: 8,
		ForcePerJawN: 1000, ModulusMPa: 210000, Poisson: 0.3}
	aluRing := RingGrip{OutsideDiameterMM: 40, WallMM: 1.5, LengthMM: 20, GripLengthMM: 20, Jaws: 3, JawWidthMM: 6,
		ForcePerJawN: 500, ModulusMPa: 70000, Poisson: 0.33}
	pie := RingGrip{OutsideDiameterMM: 60, WallMM: 1.5, LengthMM: 30, GripLengthMM: 30, Jaws: 3, JawArcDeg: 100,
		ForcePerJawN: 300, ModulusMPa: 70000, Poisson: 0.33}
	two := RingGrip{OutsideDiameterMM: 120, WallMM: 4, LengthMM: 30, GripLengthMM: 30, Jaws: 2, JawWidthMM: 15,
		ForcePerJawN: 1000, ModulusMPa: 210000, Poisson: 0.3}
	tests := []struct {
		name                         string
		ring                         RingGrip
		raw                          float64
		constant, at20, at200, rigid float64
	}{
		{"steel ring", steelRing, 5, 57.2, 40.0, 18.5, 12.2},
		{"aluminium ring", aluRing, 3, 244.6, 64.2, 33.7, 29.6},
		{"pie jaws", pie, 2.5, 76.5, 33.8, 19.2, 16.9},
		{"two jaws", two, 10, 801, 127, 54.7, 45.7},
	}
	for _, test := range tests {
		soft, err := test.ring.Released(test.raw, 20)
		require.NoError(t, err)
		stiff, err := test.ring.Released(test.raw, 200)
		require.NoError(t, err)
		um := func(d Distortion) float64 { return 1000 * d.ErrorJawPlaneMM }
		assert.InEpsilon(t, test.constant, um(soft.ErrorSoftest), worked, test.name)
		assert.InEpsilon(t, test.at20, um(soft.Error), worked, test.name)
		assert.InEpsilon(t, test.at200, um(stiff.Error), worked, test.name)
		assert.InEpsilon(t, test.rigid, um(stiff.ErrorStiffest), worked, test.name)
		assert.Less(t, stiff.ForceLeftN, soft.ForceLeftN)
	}
}

// Nothing cut away, nothing lost: the force stays whatever the chuck.
func TestReleasedWithoutACut(t *testing.T) {
	for _, chuck := range []float64{0, 20, 200} {
		r, err := bezel().Released(3, chuck)
		require.NoError(t, err)
		assert.InEpsilon(t, 1000, r.ForceLeftN, rounding)
		assert.InEpsilon(t, r.ErrorSoftest.ErrorMostMM, r.ErrorStiffest.ErrorMostMM, rounding)
	}
	_, err := bezel().Released(2, 20)
	assert.ErrorContains(t, err, "raw wall (mm) is 2: expected the finished wall or more")
}
