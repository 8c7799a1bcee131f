package planner_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

const leaningSaddle = "testdata/rules/leaning-saddle.hcl"

// setOver are the setups of a part on its tilting plate.
func setOver(t *testing.T, p plan.Part) (list []plan.Setup) {
	t.Helper()
	require.Empty(t, p.Refusals)
	for _, s := range p.Setups {
		if s.Tilt != nil {
			list = append(list, s)
		}
	}
	return list
}

// Six holes square to a seat are drilled and tapped in three settings: a pair at each tilt and side. The packing is that of the sine, 0.05 at a time: asin(15.155/45) is 19.681 degrees, 33.68 over
// 100; and as the hole's axis then stands in the plane of the pipe's axis, both of a pair have one place along y.
func TestHolesSquareToASeatAreSetOver(t *testing.T) {
	job := load(t, leaningSaddle)
	list := setOver(t, answered(t, job).Parts[0])
	require.Len(t, list, 3)
	rises := map[float64]int{}
	for _, s := range list {
		rises[s.Tilt.RiseMM]++
		require.Len(t, s.Operations, 2, "drilled and tapped")
		require.Len(t, s.Operations[0].Holes, 2)
		assert.Equal(t, s.Operations[0].Holes[0].Y.Total, s.Operations[0].Holes[1].Y.Total)
		apart := map[bool]float64{true: 17.5, false: 35}[s.Tilt.RiseMM > 0]
		assert.InDelta(t, apart, math.Abs(s.Operations[0].Holes[0].YMM-s.Operations[0].Holes[1].YMM), 1e-3)
	}
	assert.Equal(t, map[float64]int{33.7: 2, 0: 1}, rises)

	caps := setOver(t, answered(t, job).Parts[1]) // its pipe lies along X: 11/45 and 17.5/45
	require.Len(t, caps, 3)
	var tilts []float64
	for _, s := range caps {
		tilts = append(tilts, s.Tilt.RiseMM)
	}
	assert.ElementsMatch(t, []float64{24.45, 24.45, 38.9}, tilts)
}

// Without a plate, or with one that does not go so far, the part is refused, and the reason names the tilt.
func TestNothingSetsTheWorkOver(t *testing.T) {
	job := load(t, leaningSaddle)
	short := withShop(job, func(w *partspec.Workshop) {
		w.Holdings = slices.Clone(w.Holdings)
		for i := range w.Holdings {
			if w.Holdings[i].Kind == partspec.TiltingPlate {
				w.Holdings[i].TiltsTo = 10
			}
		}
	})
	for job, says := range map[*partspec.Job]string{
		withoutHolding(job, "tilting_plate"): `lean by up to 19.68 degrees, and nothing is owned that holds work tilted: a holding "tilting_plate"`,
		short:                                "lean by up to 19.68 degrees, and the tilting plate owned is set over by 10 at most",
	} {
		p := answered(t, job).Parts[0]
		require.NotEmpty(t, p.Refusals)
		assert.Contains(t, p.Refusals[0].Reasons[0], says)
	}
}

// The replay lays the work by the packing and the workshop's own plate, whatever the plan says of it.
func TestSpoiltTiltIsRefused(t *testing.T) {
	job := load(t, leaningSaddle)
	whole, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	shift := func(s *plan.Setup, dial string, by int64) {
		for o := range s.Operations {
			for n := range s.Operations[o].Cuts {
				moveDial(s.Operations[o].Cuts[n].From, dial, by)
				moveDial(s.Operations[o].Cuts[n].To, dial, by)
			}
		}
	}
	for name, spoil := range map[string]func(s *plan.Setup){
		"one packing higher":           func(s *plan.Setup) { s.Tilt.RiseMM += plan.PackingMM },
		"one packing lower":            func(s *plan.Setup) { s.Tilt.RiseMM -= plan.PackingMM },
		"no packing":                   func(s *plan.Setup) { s.Tilt.RiseMM = 0 },
		"a packing that is not made":   func(s *plan.Setup) { s.Tilt.RiseMM += 0.01 },
		"a packing below nothing":      func(s *plan.Setup) { s.Tilt.RiseMM = -s.Tilt.RiseMM },
		"packing longer than the sine": func(s *plan.Setup) { s.Tilt.RiseMM = 120 },
		"another sine":                 func(s *plan.Setup) { s.Tilt.SineMM = 200 },
		"both doubled":                 func(s *plan.Setup) { s.Tilt.SineMM, s.Tilt.RiseMM = 200, 2*s.Tilt.RiseMM },
		"no sine":                      func(s *plan.Setup) { s.Tilt.SineMM = 0 },
		"turned half round":            func(s *plan.Setup) { s.Tilt.AlongDeg += 180 },
		"turned a little":              func(s *plan.Setup) { s.Tilt.AlongDeg += 0.5 },
		"no tilt":                      func(s *plan.Setup) { s.Tilt = nil },
		"a plain chuck":                func(s *plan.Setup) { s.HoldingKind, s.Holding = "three_jaw", "three_jaw" },
		"lying":                        func(s *plan.Setup) { s.Across = true },
		"the other end up":             func(s *plan.Setup) { s.FreeEnd = "right" },
		"truer than it is found":       func(s *plan.Setup) { s.LocateMM = 0.03 },
		"a lighter grip":               func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = s.Grip.WorkingN/4, s.Grip.LeastN/4 },
		"beside the pipe's axis":       func(s *plan.Setup) { shift(s, "y", 25) },
		"along the pipe":               func(s *plan.Setup) { shift(s, "x", 25) },
		"not through":                  func(s *plan.Setup) { moveDial(s.Operations[0].Cuts[2].To, "quill", -120) },
		"into the jaws":                func(s *plan.Setup) { moveDial(s.Operations[0].Cuts[2].To, "quill", 1500) },
		"nought on the wrong edge":     func(s *plan.Setup) { s.Operations[0].Zeros[1].ReferenceMM += 0.2 },
		"nought above the hollow":      func(s *plan.Setup) { s.Operations[0].Zeros[2].ReferenceMM += 0.5 },
		"a hole of another line":       func(s *plan.Setup) { s.Operations[0].Holes[0].Number = 2 },
		"no spot":                      func(s *plan.Setup) { s.Operations[0].Cuts = s.Operations[0].Cuts[2:] },
		"never tapped":                 func(s *plan.Setup) { s.Operations = s.Operations[:1] },
	} {
		t.Run(name, func(t *testing.T) {
			text, err := json.Marshal(whole)
			require.NoError(t, err)
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			at := slices.IndexFunc(p.Parts[0].Setups, func(s plan.Setup) bool { return s.Tilt != nil && s.Tilt.RiseMM > 0 })
			spoil(&p.Parts[0].Setups[at])
			_, failures := replay.Prove(job, &p)
			assert.NotEmpty(t, failures)
		})
	}
	t.Run("the seat after the holes", func(t *testing.T) {
		text, err := json.Marshal(whole)
		require.NoError(t, err)
		var p plan.Plan
		require.NoError(t, json.Unmarshal(text, &p))
		setups := p.Parts[0].Setups
		seat := slices.IndexFunc(setups, func(s plan.Setup) bool { return s.Operations[0].Process == plan.SeatSteps })
		over := slices.IndexFunc(setups, func(s plan.Setup) bool { return s.Tilt != nil })
		setups[seat], setups[over] = setups[over], setups[seat]
		renumbered(&p.Parts[0])
		_, failures := replay.Prove(job, &p)
		assert.NotEmpty(t, failures)
	})
}
