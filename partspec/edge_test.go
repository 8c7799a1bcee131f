package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
)

func TestEdges(t *testing.T) {
	job := read(t, brassPart(`
spigot "stem" {
  diameter = 20
  length = 15
}
flange "rim" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
counterbore "seat" {
  diameter = 16
  depth = 5
  from = "right"
}
chamfer "a" {
  edge = "stem.left"
  size = 1
}
fillet "b" {
  edge = "stem.right"
  radius = 2
}
chamfer "c" {
  edge = "rim.left"
  size = 1
  angle = 30
}
chamfer "d" {
  edge = "way.left"
  size = 1
}
chamfer "e" {
  edge = "way.right"
  size = 1
}
fillet "f" {
  edge = "seat.left"
  radius = 0.5
}`))
	edge := func(f partspec.Feature) partspec.Edge {
		switch f := f.(type) {
		case *partspec.Chamfer:
			return f.Edge
		case *partspec.Fillet:
			return f.Edge
		}
		return partspec.Edge{}
	}
	want := map[string]partspec.Edge{
		"a": {Feature: "stem", End: partspec.Left, Z: 0, R: 10, Convex: true, Axial: partspec.Right},
		"b": {Feature: "stem", End: partspec.Right, Z: 15, R: 10, Axial: partspec.Left},
		"c": {Feature: "rim", End: partspec.Left, Z: 15, R: 25, Convex: true, Axial: partspec.Right},
		"d": {Feature: "way", End: partspec.Left, Z: 0, R: 5, Inside: true, Convex: true, Axial: partspec.Right},
		"e": {Feature: "way", End: partspec.Right, Z: 35, R: 5, Inside: true, Convex: true, Axial: partspec.Left},
		"f": {Feature: "seat", End: partspec.Left, Z: 35, R: 8, Inside: true, Axial: partspec.Right},
	}
	for name, e := range want {
		assert.Equal(t, e, edge(job.Part("p").Feature(name)), name)
	}
}
