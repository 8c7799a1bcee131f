package planner_test

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// saddleWith is the worked saddle flange with lines of its drawing put in the place of others.
func saddleWith(t *testing.T, oldNew ...string) *partspec.Job {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(worked, "saddle.hcl"))
	require.NoError(t, err)
	for i := 0; i < len(oldNew); i += 2 {
		require.Contains(t, string(text), oldNew[i])
	}
	file := filepath.Join(t.TempDir(), "saddle.hcl")
	require.NoError(t, os.WriteFile(file, []byte(strings.NewReplacer(oldNew...).Replace(string(text))), 0o644))
	return load(t, file, filepath.Join(worked, "workshop.hcl"))
}

// seatCut is the operation that cuts the seat.
func seatCut(t *testing.T, p plan.Part) plan.Operation {
	t.Helper()
	return made(t, p, "seat.pipe/steps", 1)[0].Operation
}

func says(op plan.Operation, words string) bool {
	for _, n := range op.Notes {
		if strings.Contains(n, words) {
			return true
		}
	}
	return false
}

// The deepest step goes to the crown: R - sqrt(R² - (D/2)²), less a graduation at most.
func TestTheSeatIsAsDeepAsItsSagitta(t *testing.T) {
	for _, r := range []float64{57, 80, 120} {
		job := saddleWith(t, `"57 ±0.3"`, `"`+strconv.FormatFloat(r, 'f', -1, 64)+` ±0.3"`)
		op := seatCut(t, planned(t, job))
		deepest := 0.0
		for _, s := range op.Steps.Steps {
			deepest = math.Max(deepest, s.DepthMM)
		}
		const graduation = 0.02
		sagitta := r - math.Sqrt(r*r-30*30)
		assert.InDelta(t, sagitta, deepest, 2*graduation, "R%g", r)
		assert.LessOrEqual(t, deepest, sagitta+1e-9, "R%g is not cut past its crown", r)
	}
}

// A radius from chord and rise as measured on the mate changes the seat, and its uncertainty is on the sheet.
func TestASeatFromChordAndRise(t *testing.T) {
	drawn := seatCut(t, planned(t, saddleWith(t)))
	assert.False(t, says(drawn, "as measured"))
	job := saddleWith(t, `radius    = "57 ±0.3"`, "chord     = \"60 ±0.1\"\n    rise      = \"8.6 ±0.02\"")
	taken := seatCut(t, planned(t, job))
	assert.True(t, says(taken, "The radius comes from the mate as measured: chord 60 mm, rise 8.6 mm; it is known within 0.29"), "%q", taken.Notes)
	assert.True(t, says(taken, "A radius wrong by"))
	assert.NotEqual(t, drawn.Steps.Curve, taken.Steps.Curve)
}

// Both orders of seat and shape are reckoned, and the sheet says what the other comes to.
func TestBothOrdersOfSeatAndShapeAreTold(t *testing.T) {
	found := ""
	for _, r := range seatCut(t, planned(t, saddleWith(t))).Why {
		if strings.HasPrefix(r.Text, "two orders were reckoned") {
			found = r.Text
		}
	}
	assert.Regexp(t, `^two orders were reckoned: shaped first, then seated, .*; seated while it is still a plain cylinder, then shaped, .* at the least$`, found)
}

// With less than 3 mm under the crown the bore may not be finished before the seat; here nothing is then left to hold by, and that is what is said.
func TestAThinWebUnderTheCrown(t *testing.T) {
	job := saddleWith(t, "length   = 14", "length   = 11", "length   = 12", "length   = 9", "  holes \"ring\" {\n    circle = 46\n    count  = 6\n    thread = \"M4\"\n    from   = \"right\"\n  }\n", "",
		"  concentric {\n    of     = \"register\"\n    to     = \"way\"\n    within = 0.05\n  }\n", "")
	p := answered(t, job).Parts[0]
	if len(p.Refusals) > 0 {
		return // with reasons: answered holds that
	}
	w := timeline(p)
	seat, err := w.find("seat.pipe/steps")
	require.NoError(t, err)
	bore, err := w.find("@way")
	require.NoError(t, err)
	assert.Less(t, seat[0].at, bore[0].at)
}

// Taking away what a seat is cut by plans another way, or refuses it by name.
func TestASeatWithoutItsTools(t *testing.T) {
	without := func(kinds ...partspec.ToolKind) *partspec.Job {
		return withShop(saddleWith(t), func(w *partspec.Workshop) {
			var kept []partspec.Tool
			for _, tool := range w.Tools {
				gone := false
				for _, k := range kinds {
					gone = gone || tool.Kind == k
				}
				if !gone {
					kept = append(kept, tool)
				}
			}
			w.Tools = kept
		})
	}
	assert.Equal(t, "end_mill/end_mill", seatCut(t, planned(t, without(partspec.BallNose))).Tool.ID)
	p := answered(t, without(partspec.BallNose, partspec.EndMill)).Parts[0]
	require.NotEmpty(t, p.Refusals)
	assert.Contains(t, strings.Join(p.Refusals[0].Reasons, " "), "no ball nose and no end mill")
	p = answered(t, without(partspec.Scriber)).Parts[0]
	require.NotEmpty(t, p.Refusals)
	assert.Contains(t, strings.Join(p.Refusals[0].Reasons, " "), "scriber")
}

// A seat that no head swings is only stepped and filed where the drawing allows the file.
func TestASeatThatMayNotBeFiled(t *testing.T) {
	p := answered(t, saddleWith(t, "    finish_by = \"file\"\n", "", "    leftover  = 0.1\n", "")).Parts[0]
	require.NotEmpty(t, p.Refusals)
	assert.Contains(t, strings.Join(p.Refusals[0].Reasons, " "), `finish_by = "file"`)
}
