package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// TestWhereAHoleMayLie: two edges found each by itself have each their share of the error; what a whole ring has off alike counts against its middle.
func TestWhereAHoleMayLie(t *testing.T) {
	within := func(v float64) partspec.Size { return partspec.Size{Low: units.Length(-v), High: units.Length(v)} }
	for name, c := range map[string]struct {
		zone, ring float64
		t          taken
		together   bool
		lies       bool
	}{
		"edges, along an axis":              {t: taken{off: 0.108, less: 0.008, shared: 0.028}, lies: true},
		"edges, too far":                    {t: taken{off: 0.112, less: 0.008, shared: 0.028}},
		"a zone is radial":                  {zone: 0.1, t: taken{off: 0.108, less: 0.008, shared: 0.028}},
		"a ring moved as one":               {ring: 0.1, t: taken{off: 0.18, shared: 0.1}, together: true, lies: true},
		"a ring made in two settings":       {ring: 0.1, t: taken{off: 0.18, shared: 0.1}},
		"a ring whose own holes are astray": {ring: 0.1, t: taken{off: 0.15, shared: 0.02}, together: true},
		"a ring beyond what its middle may": {ring: 0.1, t: taken{off: 0.25, shared: 0.2}, together: true},
	} {
		col := column{x: within(0.1), y: within(0.1), within: c.zone, ring: c.ring}
		assert.Equal(t, c.lies, col.lies(c.t, 0, 0, c.together), name)
	}
}
