package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

func TestChain(t *testing.T) {
	job := read(t, brassPart(`
spigot "a" {
  diameter = 20
  length = "10 +0.1 -0"
}
spigot "end" {
  diameter = 18
  length = 5
  from = "right"
}
flange "b" {
  diameter = 30
  from = "a.right"
  length = 4
}
spigot "c" {
  diameter = 25
  from = "end.left"
  length = 15
}
spigot "rest" { # gets what is left before c
  diameter = 22
  from = "b.right"
}`))
	for name, want := range map[string]partspec.Span{"a": span(0, 10), "b": span(10, 14), "rest": span(14, 20), "c": span(20, 35), "end": span(35, 40)} {
		assert.Equal(t, want, feature[*partspec.Spigot](t, job, "p", name).Span, name)
	}
}

// The length that is left has the limits that all the others leave it.
func TestLeftOverLength(t *testing.T) {
	job := read(t, `part "p" {
  material = "brass"
  length = "40 ±0.1"
  stock "bar" {
    diameter = 60
  }
  spigot "a" {
    diameter = 20
    length = "15 +0.2 -0.05"
  }
  spigot "b" {
    diameter = 18
  }
}`)
	b := feature[*partspec.Spigot](t, job, "p", "b")
	assert.Equal(t, units.Length(25), b.Length.Value)
	assert.Equal(t, units.Length(24.7), b.Length.Low)
	assert.Equal(t, units.Length(25.15), b.Length.High)
	assert.Contains(t, b.Length.Basis, "other lengths leave")
}
