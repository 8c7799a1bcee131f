package planner_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
)

// What cannot be made is refused with what failed, for which feature, and with what would make it possible.
func TestRefusalsSayWhatFailedAndWhatHelps(t *testing.T) {
	for name, c := range map[string]struct{ part, feature, reason, remedy string }{
		"too big to swing": {`length = 40
  stock "bar" { diameter = 200 }
  spigot "rim" { diameter = 195 }`, "", "Ø200 mm is over the 180 mm that the lathe swings", "smaller stock"},
		"too slender": {`length = 120
  stock "bar" { diameter = 9 }
  spigot "needle" { diameter = "6 h11" }`, "needle", "over 10 diameters needs a steady (B-28)", "a shorter or a thicker part"},
		"too fine to measure": {`length = 30
  stock "bar" { diameter = 12 }
  spigot "pin" { diameter = "10 h4" }`, "pin", "an instrument certain within 0.0010 is wanted", "other limits"},
		"no reamer and no gauge": {`length = 20
  stock "bar" { diameter = 30 }
  spigot "rim" { diameter = 28 }
  bore "eye" { diameter = "12.3 H6" }`, "eye", `no reamer owned between 12.300 and 12.311 (tool "reamers" { sizes = [...] })`, "what is wanting"},
		"drilled holes bound closely": {`thickness = 6
  stock "plate" { thickness = 8 }
  outline "chain" {
    arc "boss" {
      centre = [0, 0]
      radius = 12
    }
    line "lower" {}
    arc "eye" {
      centre = [50, 0]
      radius = 8
    }
    line "upper" {}
  }
  bore "pivot" {
    at       = "boss.centre"
    diameter = "10 H7"
  }
  bore "pin" {
    at       = "eye.centre"
    diameter = 5
  }
  position {
    of     = "pin"
    to     = "pivot"
    within = 0.1
  }`, "pin", "it may lie 0.050 off its place from pivot, two drilled holes lie within 0.160 of where they should from each other", "what is wanting"},
		"no tap": {`length = 20
  stock "bar" { diameter = 30 }
  spigot "rim" { diameter = 28 }
  bore "eye" {}
  thread "screw" {
    on   = "eye"
    from = "right"
    size = "M7"
  }`, "screw", `no tap or die for M7 is owned (tool "taps" or "dies" { threads = [...] })`, "what is wanting"},
		"groove too narrow": {`length = 30
  stock "bar" { diameter = 30 }
  spigot "rim" { diameter = 28 }
  groove "clip" {
    on       = "rim"
    at       = 10
    width    = 0.6
    diameter = 26
  }`, "clip", "no grooving or parting tool owned is at most 0.70 wide", "what is wanting"},
		"groove finer than the saddle": {`length = 30
  stock "bar" { diameter = 30 }
  spigot "rim" { diameter = 28 }
  groove "clip" {
    on       = "rim"
    at       = 10
    width    = "2.02..2.04"
    diameter = 26
  }`, "clip", "it cuts 2.00 wide on the saddle's graduations, wanted are 2.020 to 2.040", "what is wanting"},
		"taper too long": {`length = 60
  stock "bar" { diameter = 30 }
  taper "nose" {
    large    = 28
    small    = 12
    large_at = "left"
  }`, "nose", "60 long and clear at both ends: the top slide does not travel that far", "other limits, sizes or stock"},
		"stock too short to be held": {`length = 6
  stock "bar" {
    diameter = 40
    length   = 7
  }
  spigot "rim" { diameter = "38 h7" }
  bore "eye" { diameter = "6 H7" }`, "", "grip 3.0 long, at least 4.0 wanted on Ø38.0 (B-27)", "longer stock"},
		"truth lost between settings": {`length = 4
  stock "bar" { diameter = 60 }
  spigot "rim" { diameter = 58 }
  bore "eye" { diameter = "50 H8" }
  parallel {
    of     = "face.right"
    to     = "face.left"
    within = 0.003
  }`, "", "is made in another setting; sitting on it, this face comes out within 0.010 parallel to it, and half of the 0.003 asked may go on that (A-06)", "a wider relation"},
		"holes placed too finely": {`thickness = 5
  stock "plate" {
    thickness         = 5
    width             = 62
    length            = 62
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 60
    height = 60
  }
  holes "ring" {
    at       = [[10, 10], [50, 10]]
    diameter = 4
    position = 0.01
  }`, "ring", "off its place, 0.01 may pass (C-24)", "wider limits for its place"},
	} {
		t.Run(name, func(t *testing.T) {
			job := load(t, "../examples/tide-gauge/workshop.hcl", written(t, "part \"piece\" {\n  material = \"mild steel\"\n  "+c.part+"\n}\n"))
			refused := planner.Plan(job, planner.Options{}).Parts[0].Refusals
			require.NotEmpty(t, refused)
			var reasons, remedies []string
			for _, r := range refused {
				assert.NotEmpty(t, r.Reasons, r.What)
				assert.NotEmpty(t, r.Remedies, r.What)
				assert.LessOrEqual(t, len(r.Reasons), 8, "%s: %v", r.What, r.Reasons)
				if r.Feature == c.feature || c.feature == "" && isNoFeature(job, r.Feature) {
					reasons, remedies = append(reasons, r.Reasons...), append(remedies, r.Remedies...)
				}
			}
			assert.Contains(t, strings.Join(reasons, "\n"), c.reason)
			assert.Contains(t, strings.Join(remedies, "\n"), c.remedy)
		})
	}
}

func isNoFeature(job *partspec.Job, name string) bool { return job.Parts[0].Feature(name) == nil }

// Edges that all want the same are told of once.
func TestLikeRefusalsAreToldOnce(t *testing.T) {
	job := load(t, written(t, `workshop "hut" {
  machine "drill" { speeds = [500, 1000] }
  machine "bench" {}
  tool "drills" { sizes = [3, 4, 5, 6] }
}
part "strap" {
  material  = "mild steel"
  thickness = 3
  stock "plate" {
    thickness         = 3
    width             = 22
    length            = 62
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 20
    height = 60
  }
}
`))
	var filed []string
	for _, r := range planner.Plan(job, planner.Options{}).Parts[0].Refusals {
		if strings.Contains(r.What, "/file") {
			filed = append(filed, r.What)
		}
	}
	assert.Equal(t, []string{"edge.bottom/file, edge.right/file, edge.top/file, edge.left/file"}, filed)
}

// written is a file with a text.
func written(t *testing.T, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "written.hcl")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	return file
}
