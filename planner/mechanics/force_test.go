package mechanics

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// printed is the rounding of a worked figure with three or four digits.
const printed = 0.003

// Worked figures of Kienzle's law, computed by hand from the formula.
func TestCuttingForceWorkedFigures(t *testing.T) {
	tests := []struct {
		name string
		cut  Cut
		main float64
	}{
		{"mild steel, square edge", Cut{1350, 0.21, 1, 0.1, 90, 1, 0}, 218.9},
		{"mild steel, 45 degrees", Cut{1350, 0.21, 1, 0.1, 45, 1, 0}, 235.5},
		{"stainless", Cut{2150, 0.20, 0.25, 0.05, 90, 1, 0}, 48.9},
		{"brass", Cut{700, 0.27, 0.5, 0.08, 90, 1, 0}, 55.4},
		{"aluminium ring, worn edge", Cut{800, 0.25, 0.25, 0.08, 90, 1.3, 0}, 39},
		{"steel tube, worn edge", Cut{1500, 0.22, 1, 0.15, 90, 1.3, 0}, 444},
	}
	for _, test := range tests {
		f, err := CuttingForce(test.cut)
		require.NoError(t, err, test.name)
		assert.InEpsilon(t, test.main, f.MainN, printed, test.name)
		assert.InDelta(t, f.MainN/2, f.FeedN, 1e-12, test.name)
	}
}

func TestCuttingForceMarksThinChipsRough(t *testing.T) {
	thin, err := CuttingForce(Cut{1350, 0.21, 1, 0.03, 90, 1, 0})
	require.NoError(t, err)
	assert.Equal(t, TrustRough, thin.Trust)
	usual, err := CuttingForce(Cut{1350, 0.21, 1, 0.1, 90, 1, 0})
	require.NoError(t, err)
	assert.Equal(t, TrustGood, usual.Trust)
	_, err = CuttingForce(Cut{1350, 0.21, 1, 0, 90, 1, 0})
	assert.ErrorContains(t, err, "feed (mm/rev) is 0: expected a number from")
}

// The five worked grips: rings and tube by hand calculation from makers' tables of force and friction.
func TestLeastGripWorkedFigures(t *testing.T) {
	tests := []struct {
		name   string
		demand GripDemand
		total  float64
	}{
		{"aluminium ring, bored", GripDemand{39.1, 19.55, 19.55, 27, 30, 24, 0, 3, 0.095, 2.5, false}, 1060},
		{"steel tube, roughed on a short grip", GripDemand{444, 222, 222, 45, 50, 15, 30, 3, 0.20, 2.5, false}, 14320},
		{"brass ring", GripDemand{15.33, 7.66, 7.66, 18.5, 20, 20, 0, 3, 0.09, 2.5, false}, 448},
		{"plate on four jaws", GripDemand{142.3, 71.2, 71.2, 30, 37.5, 4, 0, 4, 0.10, 2.5, false}, 4 * 839},
	}
	for _, test := range tests {
		f, err := LeastGripPerJaw(test.demand)
		require.NoError(t, err, test.name)
		assert.InEpsilon(t, test.total, f.TotalN, printed, test.name)
		assert.InEpsilon(t, test.total/float64(test.demand.Jaws), f.PerJawN, printed, test.name)
	}
}

// A tool maker's printed figure: depth 3, feed 0.2, 120 m/min, 3100 MPa, efficiency 0.8: 4.65 kW.
func TestCuttingPower(t *testing.T) {
	assert.InEpsilon(t, 4.65, CuttingPowerKW(3*0.2*3100, 120)/0.8, rounding)
}
