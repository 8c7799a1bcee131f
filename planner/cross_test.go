package planner_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
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

// millHand is the example's workshop with a small mill, and what goes with it.
func millHand(w *partspec.Workshop) {
	dial := func(name string, graduation, turn float64) partspec.Dial {
		d := partspec.Dial{Name: name, Reads: partspec.ReadsTravel, Travel: 200}
		d.Graduation.Value, d.PerTurn.Value = units.Length(graduation), units.Length(turn)
		return d
	}
	w.Machines = append(append([]partspec.Machine(nil), w.Machines...), partspec.Machine{Kind: partspec.Mill, Name: "mill", Speeds: []units.Speed{100, 200, 400, 800, 1600},
		Dials: []partspec.Dial{dial("x", 0.02, 2), dial("y", 0.02, 2), dial("quill", 0.05, 2)}})
	w.Tools = append(append([]partspec.Tool(nil), w.Tools...), partspec.Tool{Kind: partspec.Scriber, Name: "scriber", Accuracy: 0.2})
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
	job := load(t, file, filepath.Join(examples, "workshop.hcl"))
	part := *job.Parts[0]
	part.Features = append(append([]partspec.Feature(nil), part.Features...), features...)
	return withShop(only(job, &part), millHand)
}

func TestARingOfHolesByDials(t *testing.T) {
	p := planner.Plan(turnedWith(t, ringOf("fixing", 46, 6, 4.5, 0.2)), planner.Options{})
	require.Empty(t, p.Parts[0].Refusals)
	var op plan.Operation
	for _, s := range p.Parts[0].Setups {
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
