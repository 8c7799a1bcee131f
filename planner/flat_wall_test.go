package planner_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// A lathe with a four-jaw that reaches wide and a faceplate, and a bench: the four-jaw is the quicker to set.
const wallShop = `
workshop "wall" {
  machine "lathe" {
    swing  = 260
    speeds = [60, 100, 160, 250, 400, 630, 1000]
    dial "cross" {
      graduation = 0.02
      per_turn   = 1
      reads      = "diameter"
    }
    dial "saddle" {
      graduation = 0.1
      per_turn   = 20
      reads      = "travel"
    }
    dial "tailstock" {
      graduation = 0.1
      per_turn   = 2
      reads      = "travel"
    }
  }
  machine "bench" {}
  holding "four_jaw" {
    capacity   = [5, 200]
    jaw_width  = 10
    run_out    = 0.02
    grip_force = [320, 4500] # a nip that holds the finishing cut: lighter cuts ask for no less
  }
  holding "faceplate" {
    diameter    = 220
    clamps      = 4
    clamp_force = 3000
    toe_width   = 10
  }
  tool "centre_drill" { sizes = [2.5] }
  tool "drills" { sizes = [6, 10, 16, 20] }
  tool "boring" {
    bar_diameter = 12
    least_bore   = 16
    reach        = 60
    nose_radius  = 0.2
  }
  tool "scriber" { accuracy = 0.1 }
  tool "files" {}
  tool "saw" {}
  measuring "bore_gauge" {
    range      = [6, 75]
    resolution = 0.005
  }
  measuring "caliper" {
    range      = [0, 200]
    resolution = 0.02
  }
  measuring "dial_indicator" { resolution = 0.01 }
}
`

// A cover of bright plate, as it comes, with a bore of 40 so far below its upper edge.
func coverOf(t *testing.T, web float64, class string) *partspec.Job {
	t.Helper()
	part := fmt.Sprintf(`
part "cover" {
  material  = "mild steel"
  thickness = 6
  stock "plate" {
    thickness         = 6
    width             = 60
    length            = %[1]g
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 60
    height = %[1]g
    edge "left" { as_supplied = true }
    edge "right" { as_supplied = true }
    edge "top" { as_supplied = true }
    edge "bottom" { as_supplied = true }
  }
  bore "main" {
    at       = ["30 ±0.5", "40 ±0.5"]
    diameter = "40 %[2]s"
  }
}
`, 60+web, class)
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "cover.hcl"), []byte(wallShop+part), 0o600))
	return load(t, filepath.Join(dir, "cover.hcl"))
}

// boredIn is the setting in which a proved plan finishes the bore, and what the four-jaw was judged by.
func boredIn(t *testing.T, web float64, class string) (s plan.Setup, four plan.Option) {
	t.Helper()
	job := coverOf(t, web, class)
	p, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures, "web %.2f", web)
	require.Empty(t, p.Parts[0].Refusals, "web %.2f", web)
	for _, setup := range p.Parts[0].Setups {
		for _, o := range setup.Operations {
			if o.Feature == "main" && o.Process == plan.BoreOut {
				s = setup
			}
		}
	}
	require.NotZero(t, s.Number, "the bore is bored")
	surfaces, err := planner.Compare(job, job.Parts[0], "main", plan.WhatIf{}, planner.Options{})
	require.NoError(t, err)
	for _, o := range surfaces[len(surfaces)-1].Options {
		if o.Kind == string(partspec.FourJaw) {
			return s, o
		}
	}
	require.Fail(t, "the four-jaw was not compared")
	return s, four
}

// The cover plate: what the jaws do to the thin section beside the bore decides by itself who holds it; the verdict turns at the web that it tells, and that moves with
// the tolerance.
func TestWebDecidesTheHolding(t *testing.T) {
	turns := map[string]float64{}
	for _, class := range []string{"H7", "H8", "H9"} {
		_, four := boredIn(t, 1, class)
		require.Positive(t, four.WasteMM, "%s: a web of 1 mm wants waste: %s", class, four.Verdict)
		turns[class] = four.WasteMM
		t.Logf("40 %s: %.4f may pass; the four-jaw would do from a web of %.1f on", class, four.LimitMM, four.WasteMM)
	}
	assert.Greater(t, turns["H7"], turns["H8"])
	assert.Greater(t, turns["H8"], turns["H9"])
	flip := turns["H8"]
	t.Log("web    holding     out of round at the working grip")
	for _, web := range []float64{1, flip - 1, flip - 0.2, flip + 0.2, flip + 2, flip + 6} {
		s, four := boredIn(t, web, "H8")
		want := partspec.Faceplate
		if web > flip {
			want = partspec.FourJaw
		}
		t.Logf("%4.1f   %-9s   %.4f of %.4f at %.0f N a jaw (%s)", web, s.HoldingKind, four.ErrorMM, four.LimitMM, four.WorkingN, four.Trust)
		assert.Equal(t, string(want), s.HoldingKind, "web %.2f: %s", web, four.Verdict)
		assert.Equal(t, web > flip, four.Passes)
		if want == partspec.Faceplate {
			assert.InDelta(t, flip, four.WasteMM, 0.1001, "the waste that would do is told the same from every web")
			require.NotNil(t, s.Balance)
			assert.Positive(t, s.Balance.WeightKg)
		} else {
			assert.LessOrEqual(t, s.Grip.ErrorMM, s.Grip.LimitMM+1e-4)
			assert.False(t, math.IsNaN(s.Grip.MostN))
		}
	}
}
