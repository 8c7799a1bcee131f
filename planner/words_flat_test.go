package planner_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
)

// Marks on a disc are told from its middle, for it has no datum edges; those on a plate from the edges it has. A table's place is found from these, whatever holds the work.
func TestFlatWorkIsToldFromWhatItHas(t *testing.T) {
	disc := `part "end" {
  material  = "aluminium-6082"
  thickness = 3
  stock "sheet" {
    thickness = 3
    width     = 80
    length    = 80
  }
  outline "disc" { diameter = "70 h8" }
  bore "spindle" {
    at       = ["0 ±0.2", "0 ±0.2"]
    diameter = "12 H7"
  }
}
`
	plate := `part "plate" {
  material  = "mild steel"
  thickness = 6
  stock "plate" {
    thickness         = 6
    faces_as_supplied = true
  }
  outline "rectangle" {
    width         = 60
    height        = 40
    corner_radius = 10
  }
  holes "fixing" {
    at       = [[10, 10], [50, 30]]
    diameter = 4.5
  }
}
`
	told := func(text string) (notes, places, titles string) {
		job, _, diags := partspec.Parse([]partspec.Source{{Name: "part.hcl", Text: []byte(text)}})
		require.False(t, diags.HasErrors(), "%v", diags)
		p := planner.Plan(job, planner.Options{})
		require.Empty(t, p.Parts[0].Refusals)
		for _, s := range p.Parts[0].Setups {
			titles += s.Title + "\n"
			if s.MachineKind == "mill" {
				places += s.Locates + "\n"
			}
			for _, o := range s.Operations {
				notes += strings.Join(o.Notes, "\n") + "\n"
			}
		}
		return notes, places, titles
	}
	notes, places, titles := told(disc)
	assert.Contains(t, notes, "the middle of the piece")
	assert.NotContains(t, notes, "datum")
	assert.NotContains(t, places, "left and bottom")
	assert.NotContains(t, titles, "by its sides")
	notes, places, titles = told(plate)
	assert.Contains(t, notes, "Measure everything from the left and bottom edges.")
	assert.Contains(t, places, "its left and bottom edges")
	assert.NotContains(t, titles, "across")
}
