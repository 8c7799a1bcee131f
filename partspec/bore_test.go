package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
)

func TestBoresNest(t *testing.T) {
	job := read(t, brassPart(`
spigot "body" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
counterbore "left_seat" {
  diameter = 20
  depth = 8
}
bore "left_inner" {
  diameter = 15
  depth = 12
}
counterbore "right_seat" {
  diameter = 30
  depth = 6
  from = "right"
}`))
	for name, want := range map[string]partspec.Span{"way": span(12, 34), "left_seat": span(0, 8), "left_inner": span(8, 12), "right_seat": span(34, 40)} {
		assert.Equal(t, want, feature[*partspec.Bore](t, job, "p", name).Span, name)
	}
	assert.True(t, feature[*partspec.Bore](t, job, "p", "left_seat").FlatBottom)
	assert.False(t, feature[*partspec.Bore](t, job, "p", "left_inner").FlatBottom)
	assert.True(t, feature[*partspec.Bore](t, job, "p", "way").Through)
}
