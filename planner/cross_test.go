package planner_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// size is a dimension within so much on either side.
func size(v, within float64) partspec.Size {
	s := partspec.Size{Low: units.Length(v - within), High: units.Length(v + within), Basis: "as drawn"}
	s.Value = units.Length(v)
	return s
}

// ringOf is a ring of like holes through a part, in its right end.
func ringOf(name string, circle float64, count int, drill, within float64) *partspec.Holes {
	h := &partspec.Holes{FeatureHead: partspec.FeatureHead{Word: "holes", Name: name}, Make: partspec.PlainHole, Diameter: size(drill, 0.1), From: partspec.Right, Through: true, Within: units.Length(within),
		Circle: &partspec.Circle{Diameter: size(circle, within), Count: count}}
	for i := range count {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(count))
		h.Places = append(h.Places, partspec.Point{X: size(circle/2*cos, within), Y: size(circle/2*sin, within)})
	}
	return h
}

// turnedWith is a disc with a bore and what is cut beside its axis.
func turnedWith(t testing.TB, features ...partspec.Feature) *partspec.Job {
	t.Helper()
	file := filepath.Join(t.TempDir(), "flange.hcl")
	require.NoError(t, os.WriteFile(file, []byte(`part "flange" {
  material = "mild steel"
  length = 14
  stock "bar" { diameter = 65 }
  flange "rim" {
    diameter = 60
    length = 14
  }
  bore "main" { diameter = "20 H9" }
}
`), 0o644))
	job := load(t, file, filepath.Join(worked, "workshop.hcl"))
	part := *job.Parts[0]
	part.Features = append(append([]partspec.Feature(nil), part.Features...), features...)
	return only(job, &part)
}

func TestARingOfHolesByDials(t *testing.T) {
	p := planned(t, turnedWith(t, ringOf("fixing", 46, 6, 4.5, 0.2)))
	var op plan.Operation
	for _, s := range p.Setups {
		for _, o := range s.Operations {
			if o.Feature == "fixing" {
				op = o
				assert.Equal(t, "mill", s.MachineKind)
				assert.Len(t, s.Beside, 6)
			}
		}
	}
	require.Len(t, op.Holes, 6)
	assert.Len(t, op.Cuts, 12, "six spotted, six drilled")
}

// seatOn57 is a seat across the left end of Ø60 for a pipe of R57, its axis along Y.
func seatOn57() *partspec.Seat {
	s := &partspec.Seat{FeatureHead: partspec.FeatureHead{Word: "seat", Name: "pipe"}, On: partspec.Left, Radius: size(57, 0.3), Angle: 90, Across: 60, Finish: true, Leftover: 0.1}
	root := math.Sqrt(57*57 - 30*30)
	s.Depth, s.AxisZ = units.Length(57-root), units.Length(-root)
	return s
}

func TestASeatInSteps(t *testing.T) {
	job := turnedWith(t, ringOf("fixing", 46, 6, 4.5, 0.2), seatOn57())
	p := planned(t, job)
	w := timeline(p)
	at := func(name string) int {
		found, err := w.find(name)
		require.NoError(t, err)
		return found[0].at
	}
	assert.Less(t, at("bore.main/drill"), at("seat.pipe/steps"))
	assert.Less(t, at("seat.pipe/mark"), at("seat.pipe/steps"))
	assert.Less(t, at("holes.fixing/drill"), at("seat.pipe/steps"))
	assert.Less(t, at("seat.pipe/steps"), at("seat.pipe/file"))
}

// shaftWith is a plain shaft with a bore and what is cut across it.
func shaftWith(t testing.TB, features ...partspec.Feature) *partspec.Job {
	t.Helper()
	file := filepath.Join(t.TempDir(), "shaft.hcl")
	require.NoError(t, os.WriteFile(file, []byte(`part "shaft" {
  material = "mild steel"
  length = 40
  stock "bar" { diameter = 30 }
  spigot "body" {
    diameter = 24
    length = 40
  }
  bore "main" { diameter = "10 H8" }
}
`), 0o644))
	job := load(t, file, filepath.Join(worked, "workshop.hcl"))
	part := *job.Parts[0]
	part.Features = append(append([]partspec.Feature(nil), part.Features...), features...)
	return only(job, &part)
}

func head(word, name string) partspec.FeatureHead {
	return partspec.FeatureHead{Word: word, Name: name}
}

// made finds the operations of a plan by their names, with * for anything, in the order of work; it must find so many.
func made(t testing.TB, p plan.Part, name string, count int) work {
	t.Helper()
	found, err := timeline(p).find(name)
	require.NoError(t, err)
	require.Len(t, found, count)
	return found
}

func TestAHoleAcross(t *testing.T) {
	oil := &partspec.CrossHole{FeatureHead: head("cross_hole", "oil"), Make: partspec.PlainHole, Z: size(30, 0.2), Angle: 90, Diameter: size(4, 0.1), Into: "main", On: "body"}
	p := planned(t, shaftWith(t, oil))
	drill := made(t, p, "cross_hole.oil/drill", 1)[0]
	assert.True(t, drill.setup.Across)
	assert.InDelta(t, 90, drill.setup.AcrossDeg, 0)
	assert.Less(t, made(t, p, "bore.main/ream", 1)[0].at, drill.at, "the bore is finished before it is crossed")
	assert.Less(t, drill.at, made(t, p, "cross_hole.oil/deburr", 1)[0].at)
}

// A hole over a quarter of the round it enters wants a flat first (rule A-31): an end mill no wider than the hole, or a refusal that names one.
func TestAWideHoleAcrossWantsAFlat(t *testing.T) {
	pin := &partspec.CrossHole{FeatureHead: head("cross_hole", "pin"), Make: partspec.PlainHole, Z: size(30, 0.2), Diameter: size(8, 0.1), Through: true, On: "body"}
	p := planned(t, shaftWith(t, pin))
	assert.Less(t, made(t, p, "cross_hole.pin/spot_face", 1)[0].at, made(t, p, "cross_hole.pin/drill", 1)[0].at)
	bare := withShop(shaftWith(t, pin), func(w *partspec.Workshop) {
		w.Tools = slices.DeleteFunc(slices.Clone(w.Tools), func(t partspec.Tool) bool { return t.Kind == partspec.EndMill })
	})
	refused := answered(t, bare).Parts[0].Refusals
	require.NotEmpty(t, refused)
	assert.Contains(t, refused[0].Reasons[0], "end mill")
}

func TestAFlat(t *testing.T) {
	flat := &partspec.Flat{FeatureHead: head("flat", "key"), On: "body", Distance: size(10, 0.1), Angle: 90, Count: 2, Span: partspec.Span{Left: 28, Right: 40}}
	p := planned(t, shaftWith(t, flat))
	cuts := made(t, p, "flat.key/mill_*", 2)
	assert.NotEqual(t, cuts[0].setup.AcrossDeg, cuts[1].setup.AcrossDeg)
	assert.Less(t, made(t, p, "spigot.body/turn", 1)[0].at, cuts[0].at, "round before interruptions")
}

func TestASlot(t *testing.T) {
	slot := &partspec.Slot{FeatureHead: head("slot", "key"), On: "body", Width: size(6, 0.05), Depth: size(2.5, 0.1), Angle: 90, Span: partspec.Span{Left: 22, Right: 38}}
	p := planned(t, shaftWith(t, slot))
	assert.InDelta(t, 6, made(t, p, "slot.key/mill", 1)[0].Tool.SizeMM, 0)
}
