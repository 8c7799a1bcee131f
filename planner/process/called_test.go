package process

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

func TestAFlangeOfThatNameIsCalledOnce(t *testing.T) {
	assert.Equal(t, "flange", called(partspec.FeatureHead{Word: "flange", Name: "flange"}))
	assert.Equal(t, "flange rim", called(partspec.FeatureHead{Word: "flange", Name: "rim"}))
}

func TestASizeNobodyWroteIsShownByItsLimits(t *testing.T) {
	core := partspec.Size{Dimension: units.Dimension{Value: 14.376}, Low: 14.376, High: 14.676}
	assert.Equal(t, ", 14.376 to 14.676 mm", aimedAt(core))
	core.Written = "14.4"
	assert.Contains(t, aimedAt(core), " to 14.4")
}
