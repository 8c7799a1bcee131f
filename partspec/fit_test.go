package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// 18 H8/f7 (ISO 286-2): hole 18.000 to 18.027, shaft 17.966 to 17.984, so
// 0.016 to 0.061 of clearance.
func TestFits(t *testing.T) {
	pair := func(hole, shaft string) *partspec.Job {
		return read(t, `
part "boss" {
  material = "brass"
  length = 20
  stock "bar" {
    diameter = 32
  }
  spigot "outside" {
    diameter = 30
  }
  bore "seat" {
`+hole+`
  }
}
part "tube" {
  material = "brass"
  length = 20
  stock "bar" {
    diameter = 32
  }
  spigot "lower" {
`+shaft+`
  }
}
fit "f" {
  hole  = "boss.seat"
  shaft = "tube.lower"
  class = "H8/f7"
}`)
	}
	limits := func(job *partspec.Job) []units.Length {
		hole, shaft := feature[*partspec.Bore](t, job, "boss", "seat").Diameter, feature[*partspec.Spigot](t, job, "tube", "lower").Diameter
		return []units.Length{hole.Low, hole.High, shaft.Low, shaft.High}
	}
	assert.Equal(t, []units.Length{18, 18.027, 17.966, 17.984}, limits(pair("diameter = 18", "diameter = 18")))
	assert.Equal(t, []units.Length{18, 18.027, 17.966, 17.984}, limits(pair(`diameter = "18 H8"`, "diameter = part.boss.bore.seat.diameter")))
	made := pair("diameter = 18\nmeasured = 18.04", "diameter = part.boss.bore.seat.diameter")
	assert.Equal(t, []units.Length{17.979, 18.024}, limits(made)[2:])
	assert.Equal(t, units.Length(18.04), feature[*partspec.Spigot](t, made, "tube", "lower").Diameter.Value)
	assert.Contains(t, feature[*partspec.Spigot](t, made, "tube", "lower").Diameter.Basis, "to suit boss.seat, measured 18.04 mm")
	assert.Equal(t, []units.Length{17.986, 18.031}, limits(pair("diameter = 18", "diameter = 18\nmeasured = 17.97"))[:2])
	require.Len(t, made.Fits, 1)
	assert.Equal(t, partspec.FeatureRef{Part: "boss", Feature: "seat"}, made.Fits[0].Hole)
}
