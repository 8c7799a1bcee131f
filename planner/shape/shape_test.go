package shape_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// noise is what sums of lengths may be off.
const noise = 1e-9

func example(t *testing.T, part string) *partspec.Part {
	t.Helper()
	job, _, found := partspec.Load([]string{filepath.Join("..", "..", "examples", "tide-gauge")})
	require.False(t, found.HasErrors(), "%v", found)
	p := job.Part(part)
	require.NotNil(t, p)
	return p
}

// Blocks cover a part from end to end, from left to right.
func TestBlocksCoverThePart(t *testing.T) {
	for _, name := range []string{"bezel", "float_pulley", "gland_nut", "vent_tube", "lower_boss"} {
		p := example(t, name)
		at := 0.0
		for _, b := range shape.Blocks(p) {
			assert.InDelta(t, at, b.Z0, noise, "%s: %s", name, b.Name)
			assert.LessOrEqual(t, b.Least, b.Greatest)
			at = b.Z1
		}
		assert.InDelta(t, float64(p.Length.Value), at, noise, name)
	}
}

// Through holes come first, then deep before shallow.
func TestHolesFromDeepToShallow(t *testing.T) {
	holes := shape.Holes(example(t, "lower_boss"))
	require.Len(t, holes, 2)
	assert.Equal(t, "way", holes[0].Name)
	assert.True(t, holes[0].Through)
	assert.Equal(t, "seat", holes[1].Name)
	assert.InDelta(t, 16, holes[1].Depth, noise)
	assert.Equal(t, partspec.Left, holes[1].From)
}

// The shape after a set of operations does not hang on their order.
func TestOrderOfOperationsDoesNotChangeTheShape(t *testing.T) {
	ops := []shape.Op{
		{Process: plan.TurnRough, Z0: 10, Z1: 40, Outer: solid.Const(10, 40, 12)},
		{Process: plan.TurnFinish, Z0: 20, Z1: 40, Outer: solid.Const(20, 40, 9)},
		{Process: plan.Drill, Inside: true, Z0: 0, Z1: 40, Inner: solid.Const(0, 40, 4)},
		{Process: plan.BoreOut, Inside: true, Z0: 30, Z1: 40, Inner: solid.Const(30, 40, 6)},
		{Process: plan.Face, Z0: 38, Z1: 38, Keep: &shape.Stretch{Z0: 0, Z1: 38}},
	}
	stock := solid.Cylinder(0, 40, 15, 0)
	all := func(int) bool { return true }
	want := shape.After(stock, ops, all)
	turned := []shape.Op{ops[4], ops[3], ops[2], ops[1], ops[0]}
	got := shape.After(stock, turned, all)
	for _, z := range []float64{0.5, 9.5, 10.5, 19.5, 20.5, 29.5, 30.5, 37.5} {
		assert.InDelta(t, want.Outer.Least(z, z), got.Outer.Least(z, z), noise, "outside at %v", z)
		assert.InDelta(t, want.Inner.Greatest(z, z), got.Inner.Greatest(z, z), noise, "inside at %v", z)
	}
	assert.InDelta(t, 9, want.Outer.Least(20, 38), noise)
	assert.InDelta(t, 6, want.Inner.Greatest(30, 38), noise)
	_, end := want.Ends()
	assert.InDelta(t, 38, end, noise)
	none := shape.After(stock, ops, func(int) bool { return false })
	assert.InDelta(t, 15, none.Outer.Least(0, 40), noise)
}

// An operation touches the stretch that it works in, and not what it only meets.
func TestTouches(t *testing.T) {
	turn := shape.Op{Process: plan.TurnFinish, Z0: 10, Z1: 20}
	assert.True(t, turn.Touches(19, 25))
	assert.False(t, turn.Touches(20, 25))
	assert.False(t, turn.Touches(0, 10))
	face := shape.Op{Process: plan.Face, Z0: 20, Z1: 20, Keep: &shape.Stretch{Z0: 0, Z1: 20}}
	assert.True(t, face.Touches(10, 25))
	assert.False(t, face.Touches(20, 25))
}

// While it hangs on its bar the held end is the one that is not free, and the parting cut leaves its spare on that side.
func TestPlacement(t *testing.T) {
	p := shape.Placement{Free: partspec.Right, LeftZ: -25, RightZ: 31, PartWidth: 2, Spare: 0.4}
	assert.True(t, p.OnBar())
	assert.Equal(t, partspec.Left, p.Held())
	assert.InDelta(t, -0.4, p.BarEnd(30), noise)
	assert.InDelta(t, -2.4, p.BarSide(30), noise)
	p.Free = partspec.Left
	assert.InDelta(t, 30.4, p.BarEnd(30), noise)
	assert.InDelta(t, 32.4, p.BarSide(30), noise)
	assert.False(t, shape.Placement{}.OnBar())
}

// A hexagon is taken across its corners: 2/sqrt(3) of the flats.
func TestHexagonAcrossCorners(t *testing.T) {
	nut := example(t, "gland_nut")
	body := shape.Placement{LeftZ: 0, RightZ: 15}.Body(nut.Stock)
	assert.InDelta(t, 15.0/16*25.4*1.1547005/2, body.Outer.Greatest(0, 15), 1e-5)
}
