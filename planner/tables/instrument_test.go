package tables

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec/units"
)

func TestInstrumentsAreAsSureAsTheirKindAndTheirDivisions(t *testing.T) {
	for _, c := range []struct {
		kind        string
		reads, want units.Length
	}{
		{"micrometer", 0, 0.004}, {"micrometer", 0.01, 0.005}, {"micrometer", 0.002, 0.002}, {"micrometer", 0.001, 0.002},
		{"caliper", 0.02, 0.03}, {"caliper", 0.1, 0.05}, {"rule", 1, 0.5}, {"rule", 0.5, 0.25}, {"plug_gauge", 0, 0.002}, {"eye", 1, 0.5},
	} {
		assert.Equal(t, c.want, UncertaintyOf(c.kind, c.reads), "%s reading to %v", c.kind, c.reads)
	}
}
