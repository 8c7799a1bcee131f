package draw

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
)

// A pin about an axis 3 off stands 3 farther out on the side of the throw and 3 less on the other; the rest of the part is left as it is.
func TestEccentricSection(t *testing.T) {
	s := plan.Section{Outer: []plan.Segment{{Z0: 0, R0: 18, Z1: 26, R1: 18}}}
	axes := []plan.Axis{{ThrowMM: 3, Eccentrics: []plan.Eccentric{{Z0: 18, Z1: 26, RadiusMM: 10}, {Z0: 0, Z1: 26, RadiusMM: 5, Inside: true}}}}
	for side, want := range map[half]float64{upper: 13, lower: 7} {
		got := eccentric(s, axes, side)
		assert.InDelta(t, want, radiusAt(got.Outer, 22), touching)
		assert.InDelta(t, 18, radiusAt(got.Outer, 10), touching)
	}
	assert.InDelta(t, 18, radiusAt(s.Outer, 22), touching, "the section itself is left alone")
}

// Of a pair of jaws along the throw one stands out by the throw and one in, and meets the work on either side.
func TestJawsSetOver(t *testing.T) {
	sc := &scene{setup: &plan.Setup{ThrowMM: 3}, gripR: 36, v: view{scale: 2}}
	assert.InDelta(t, 42, sc.gripOn(upper), touching)
	assert.InDelta(t, 30, sc.gripOn(lower), touching)
	far, near := plan.Section{Outer: []plan.Segment{{R0: 21, R1: 21, Z1: 9}}, Near: []plan.Segment{{R0: 15, R1: 15, Z1: 9}}}, 15.0
	assert.InDelta(t, near, nearSide(far, lower).Outer[0].R0, touching)
	assert.InDelta(t, 21, nearSide(far, upper).Outer[0].R0, touching)
}
