package planner_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
)

// bezelOf is the bezel of the example with another outside, from a tube 3 mm larger, in a workshop changed by swaps of words.
func bezelOf(t *testing.T, outside float64, swaps ...string) *partspec.Job {
	t.Helper()
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(examples, name))
		require.NoError(t, err)
		return string(text)
	}
	ring := strings.NewReplacer("diameter = 72", fmt.Sprintf("diameter = %g", outside), "outside = 75", fmt.Sprintf("outside = %g", outside+3)).Replace(read("bezel-ring.hcl"))
	shop := strings.NewReplacer(swaps...).Replace(read("workshop.hcl"))
	job, _, found := partspec.Parse([]partspec.Source{{Name: "bezel-ring.hcl", Text: []byte(ring)}, {Name: "workshop.hcl", Text: []byte(shop)}})
	require.False(t, found.HasErrors(), "%v", found)
	return job
}

// rebateMM is the widest hole of the bezel: the wall is thinnest around it.
const rebateMM = 68.5

// held is a row of the table: the wall, the holding of each side, and the figures that decide.
func held(t *testing.T, job *partspec.Job, outside float64) string {
	t.Helper()
	p, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	part := p.Parts[0]
	row := fmt.Sprintf("wall %.2f", (outside-rebateMM)/2)
	for _, s := range part.Setups {
		row += " | " + s.HoldingKind + " on " + s.Grip.Surface
		for _, h := range part.MakeFirst {
			if h.ForSetup == s.Number {
				row += " (" + strings.ToLower(h.Title) + ")"
			}
		}
		if s.Grip.LimitMM > 0 {
			row += fmt.Sprintf(", lobed %.3f of %.3f", s.Grip.ErrorMM, s.Grip.LimitMM)
		}
	}
	for _, r := range part.Refusals {
		row += " | refused: " + r.What
	}
	for _, r := range part.Rejected {
		if strings.HasPrefix(r.Holding, "three_jaw on outside, left") {
			row += " | three-jaw: " + r.Reason
		}
	}
	return row + "\n"
}

// The wall decides how the second side of the bezel is held: glued while the lip is thin, then in bored soft jaws, in four jaws, in three.
func TestBezelHeldByItsWall(t *testing.T) {
	var table strings.Builder
	for _, outside := range []float64{70, 72, 74, 76, 78, 80} {
		table.WriteString(held(t, bezelOf(t, outside), outside))
	}
	// Without glue and soft jaws a plug is made for what the hard jaws would crush.
	table.WriteString("neither glue nor soft jaws, but a plug\n")
	for _, outside := range []float64{70, 72, 74, 76, 78, 80} {
		table.WriteString(held(t, bezelOf(t, outside, `holding "glued_arbor" {
    capacity = [10, 80]
  }`, `holding "plug" {}`, `holding "soft_jaws" {
    capacity   = [10, 80]
    jaw_width  = 25
    jaw_length = 20
    run_out    = 0.02
    grip_force = [150, 4000]
  }`, ""), outside))
	}
	t.Log("\n" + table.String())
	golden(t, "wall.txt", table.String())
}
