package partspec_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

func TestGrooves(t *testing.T) {
	job := read(t, brassPart(`
spigot "hub" {
  diameter = 20
  length = 10
}
flange "rim" {
  diameter = 50
}
groove "square" {
  on = "rim"
  at = 3
  width = 8
  depth = 4
}
groove "inner" {
  on = "rim"
  at = 5
  width = 4
  diameter = 36
}
groove "vee" {
  on = "rim"
  from = "right"
  at = 2
  depth = 5
  angle = 60
  bottom_width = 1
}
groove "from_hub" {
  on = "rim"
  from = "rim.left"
  at = 14
  width = 2
  depth = 1
}`))
	square := feature[*partspec.Groove](t, job, "p", "square")
	assert.Equal(t, span(13, 21), square.Span)
	assert.Equal(t, units.Length(42), square.Bottom.Value)
	assert.Equal(t, units.Length(8), square.BottomWidth)
	assert.Equal(t, span(15, 19), feature[*partspec.Groove](t, job, "p", "inner").Span)
	vee := feature[*partspec.Groove](t, job, "p", "vee")
	assert.InDelta(t, 1+2*5*math.Tan(math.Pi/6), float64(vee.Width.Value), micrometre)
	assert.InDelta(t, 38, float64(vee.Span.Right), micrometre)
	assert.Equal(t, units.Length(1), vee.BottomWidth)
	assert.Equal(t, span(24, 26), feature[*partspec.Groove](t, job, "p", "from_hub").Span)
}
