package planner_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// sheaveOf is a sheave with a vee and both edges rounded; its neck stands on the left, on the right, or nowhere.
func sheaveOf(t *testing.T, neck string, angle, bottom, depth, radius float64) *partspec.Job {
	t.Helper()
	rim, shank := "spigot \"rim\" {\n diameter = 36.4\n length = 17.3\n}\n", "spigot \"neck\" {\n diameter = 16\n length = 12\n}\n"
	outside := map[string]string{"left": shank + rim, "right": rim + shank, "": rim}[neck]
	length := map[bool]float64{true: 17.3, false: 29.3}[neck == ""]
	hcl := fmt.Sprintf("part \"p\" {\n material = \"brass\"\n length = %g\n stock \"bar\" { diameter = 40 }\n%s", length, outside)
	hcl += fmt.Sprintf("groove \"vee\" {\n on = \"rim\"\n at = 3.15\n depth = %g\n angle = %g\n bottom_width = %g\n}\n", depth, angle, bottom)
	for _, end := range []string{"left", "right"} {
		hcl += fmt.Sprintf("fillet \"%s_edge\" {\n edge = \"rim.%s\"\n radius = %g\n}\n", end, end, radius)
	}
	job, _, found := partspec.Parse([]partspec.Source{{Name: "p.hcl", Text: []byte(hcl + "}\n")}})
	require.False(t, found.HasErrors(), "%v", found)
	return job
}

// Whatever the sizes, the blades' corners and the saddle's graduations: what is planned is proved, and what is not says why.
func TestVeesAndEdgesOfManySizes(t *testing.T) {
	planned := 0
	for k, c := range []struct {
		neck                          string
		angle, bottom, depth, radius  float64
		nose, graduation, formDegrees float64
	}{
		{"left", 38, 2.2, 4, 1, 0, 0.1, 0},
		{"right", 38, 2.2, 4, 2, 0.15, 0.1, 0},
		{"", 38, 1.3, 3.5, 1.5, 0.15, 0.25, 0},
		{"left", 60, 1, 3.3, 1.7, 0, 0.02, 0},
		{"right", 60, 0, 3, 1, 0, 0.1, 60},
		{"", 60, 0, 3, 1, 0, 0.1, 0},
		{"left", 90, 2.5, 2.2, 2.3, 0.15, 0.5, 0},
		{"right", 100, 1.3, 1.5, 1, 0, 0.25, 0},
		{"", 120, 3.5, 1.5, 2, 0.15, 0.1, 30},
		{"left", 40, 0.2, 4, 1.5, 0, 0.02, 70},
		{"right", 30, 3.5, 4.5, 1, 0.1, 0.25, 75},
	} {
		t.Run(fmt.Sprint(k), func(t *testing.T) {
			job := withShop(sheaveOf(t, c.neck, c.angle, c.bottom, c.depth, c.radius), func(w *partspec.Workshop) {
				w.Tools, w.Machines = slices.Clone(w.Tools), slices.Clone(w.Machines)
				for i := range w.Tools {
					if w.Tools[i].Kind == partspec.Grooving {
						w.Tools[i].NoseRadius = units.Length(c.nose)
					}
				}
				if c.formDegrees > 0 {
					w.Tools = append(w.Tools, partspec.Tool{Kind: partspec.ChamferTool, Name: "form tool", Angle: units.Angle(c.formDegrees)})
				}
				w.Machines[0].Dials = slices.Clone(w.Machines[0].Dials)
				for i := range w.Machines[0].Dials {
					if d := &w.Machines[0].Dials[i]; d.Name == "saddle" {
						d.Graduation.Value = units.Length(c.graduation)
					}
				}
			})
			if p := answered(t, job); len(p.Parts[0].Refusals) == 0 {
				planned++
			}
		})
	}
	assert.GreaterOrEqual(t, planned, 7, "most of them can be made")
}
