package units_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec/units"
)

func TestPlacesLieOnEitherSideOfNought(t *testing.T) {
	for text, want := range map[string][2]units.Length{"0 ±0.2": {-0.2, 0.2}, "-12 ±0.1": {-12.1, -11.9}, "8 +0.05 -0": {8, 8.05}} {
		p, err := units.ParsePlace(text, units.MM)
		require.NoError(t, err, text)
		assert.InDelta(t, float64(want[0]), float64(p.Limits.Low), 1e-9, text)
		assert.InDelta(t, float64(want[1]), float64(p.Limits.High), 1e-9, text)
	}
	_, err := units.ParseToleranced("0 ±0.2", units.MM)
	assert.Error(t, err, "a size is never negative")
}
