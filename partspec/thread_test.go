package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// M6: major 6, pitch 1, minor of the nut 4.917 (ISO 724).
func TestThreads(t *testing.T) {
	job := read(t, brassPart(`
spigot "head" {
  diameter = 20
  length = 10
}
spigot "stem" {
  length = 30
}
bore "hole" {
  depth = 12
  flat = true
}
thread "outer" {
  on = "stem"
  size = "M10"
  length = 12
  class = "6g"
}
thread "inner" {
  on = "hole"
  size = "M6"
  length = 9
  hand = "left"
}`))
	outer, inner := feature[*partspec.Thread](t, job, "p", "outer"), feature[*partspec.Thread](t, job, "p", "inner")
	assert.Equal(t, partspec.Right, outer.From)
	assert.Equal(t, span(28, 40), outer.Span)
	assert.Equal(t, "6g", outer.Class)
	assert.False(t, outer.Inside)
	assert.Equal(t, span(0, 9), inner.Span)
	assert.True(t, inner.Inside && inner.LeftHand)
	stem, hole := feature[*partspec.Spigot](t, job, "p", "stem").Diameter, feature[*partspec.Bore](t, job, "p", "hole").Diameter
	assert.Equal(t, []units.Length{10, 9.775, 10}, []units.Length{stem.Value, stem.Low, stem.High})
	assert.InDelta(t, 4.917, float64(hole.Value), micrometre)
	assert.LessOrEqual(t, hole.Low, inner.Thread.TapDrill)
	assert.GreaterOrEqual(t, hole.High, inner.Thread.TapDrill)
}
