package partspec_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// A ball of radius 10 on a stem: centre and ends by plain geometry.
func TestProfile(t *testing.T) {
	job := read(t, brassPart(`
profile "knob" {
  finish_by = "file"
  zone = [-0.05, 0.1]
  start {
    diameter = 12
  }
  arc {
    length = 16
    diameter = 12
    radius = 10
    bulge = "out"
  }
  line {
    length = 4
    diameter = 12
  }
  arc {
    length = 8
    diameter = 20
    tangent = true
  }
  arc {
    length = 12
    diameter = 20
    through {
      at = 6
      diameter = 16
    }
  }
}`))
	f := feature[*partspec.Profile](t, job, "p", "knob")
	require.Len(t, f.Segments, 4)
	ball, tangent, hollow := f.Segments[0], f.Segments[2], f.Segments[3]
	assert.Equal(t, span(0, 40), f.Span)
	assert.True(t, ball.Arc && ball.Convex)
	assert.InDelta(t, 8, float64(ball.CentreZ), micrometre)
	assert.InDelta(t, 0, float64(ball.CentreR), micrometre) // 10^2 = 8^2 + 6^2
	assert.False(t, tangent.Convex)
	assert.InDelta(t, 20, float64(tangent.CentreZ), micrometre) // straight above the end of the line
	assert.InDelta(t, (64.0+16)/8, float64(tangent.Radius), micrometre)
	assert.False(t, hollow.Convex)
	assert.InDelta(t, (36.0+4)/4, float64(hollow.Radius), micrometre) // chord 12, rise 2
	assert.InDelta(t, 34, float64(hollow.CentreZ), micrometre)
	assert.Equal(t, units.Length(-0.05), f.Zone.Low)
	assert.Equal(t, units.Length(0.1), f.Zone.High)
	assert.True(t, f.FinishFile)
	for _, g := range f.Segments { // every arc passes through its ends
		if g.Arc {
			for _, end := range [][2]units.Length{{g.Z0, g.R0}, {g.Z1, g.R1}} {
				assert.InDelta(t, float64(g.Radius), math.Hypot(float64(end[0]-g.CentreZ), float64(end[1]-g.CentreR)), micrometre)
			}
		}
	}
}
