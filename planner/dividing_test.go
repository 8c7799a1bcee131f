package planner_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

const dividingSpindle = "testdata/rules/dividing-spindle.hcl"

// withHead is a job whose dividing head is another one.
func withHead(job *partspec.Job, change func(h *partspec.Holding)) *partspec.Job {
	return withShop(job, func(w *partspec.Workshop) {
		w.Holdings = slices.Clone(w.Holdings)
		for i := range w.Holdings {
			if w.Holdings[i].Kind == partspec.DividingHead {
				change(&w.Holdings[i])
			}
		}
	})
}

// onHead is the setup of a part on its dividing head.
func onHead(t *testing.T, p plan.Part) plan.Setup {
	t.Helper()
	require.Empty(t, p.Refusals)
	at := slices.IndexFunc(p.Setups, func(s plan.Setup) bool { return s.Dividing != nil })
	require.GreaterOrEqual(t, at, 0, "no setup on the dividing head")
	return p.Setups[at]
}

// counts are how often the head is turned for each operation of a setup.
func counts(s plan.Setup) (list [][2]int64) {
	for _, o := range s.Operations {
		list = append(list, [2]int64{o.Card[0].Turns, o.Card[0].Marks})
	}
	return list
}

// All six flats are cut in one setting: by the plate of 24 on the spindle, by the crank where there is none, and one by one in the vice where no head is owned.
func TestFlatsAreDivided(t *testing.T) {
	job := load(t, dividingSpindle)
	part := answered(t, job).Parts[0]
	s := onHead(t, part)
	assert.Equal(t, "dividing_head", s.HoldingKind)
	assert.Equal(t, plan.Dividing{Ratio: 1, Circle: 24, HeightMM: 65}, *s.Dividing)
	require.Len(t, s.Operations, 6)
	assert.ElementsMatch(t, [][2]int64{{0, 0}, {0, 4}, {0, 8}, {0, 12}, {0, 16}, {0, 20}}, counts(s))

	crank := onHead(t, answered(t, withHead(job, func(h *partspec.Holding) { h.Direct = nil })).Parts[0])
	assert.Equal(t, 40, crank.Dividing.Ratio)
	assert.Equal(t, 15, crank.Dividing.Circle, "40 turns in six: 6 and 10 of 15; the tommy hole's 15 degrees are 1 and 10 of 15")
	assert.ElementsMatch(t, [][2]int64{{0, 0}, {6, 10}, {13, 5}, {20, 0}, {26, 10}, {33, 5}}, counts(crank))

	without := answered(t, withoutHolding(job, "dividing_head")).Parts[0]
	require.Empty(t, without.Refusals)
	assert.Greater(t, len(without.Setups), len(part.Setups)+4)
	assert.Greater(t, without.Order.CostMinutes, part.Order.CostMinutes)
}

// A head that cannot do it is passed over: no circle comes near the angle, or the work does not swing over the table.
func TestHeadThatDoesNotServe(t *testing.T) {
	job := load(t, dividingSpindle)
	for name, change := range map[string]func(h *partspec.Holding){
		"no circle": func(h *partspec.Holding) { h.Direct, h.Ratio, h.Plates = []int{7}, 0, nil },
		"too low":   func(h *partspec.Holding) { h.Height = 12 },
		"too weak":  func(h *partspec.Holding) { h.GripFirm, h.GripLight = 300, 100 },
	} {
		for _, s := range answered(t, withHead(job, change)).Parts[0].Setups {
			assert.False(t, s.Dividing != nil && len(s.Operations) > 1, name)
		}
	}
}

// The replay turns the work by what the workshop's head gives, whatever the plan says of it.
func TestSpoiltDividingIsRefused(t *testing.T) {
	job := withHead(load(t, dividingSpindle), func(h *partspec.Holding) { h.Direct = nil })
	whole, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	onHead(t, whole.Parts[0])
	turn := func(o *plan.Operation, by int64) { // with its card, as a slip of the sum would
		for n := range o.Cuts {
			moveDial(o.Cuts[n].From, plan.HeadDial, by)
			moveDial(o.Cuts[n].To, plan.HeadDial, by)
		}
		l := &o.Card[0]
		l.Total += by
		l.Turns, l.Marks = l.Total/15, l.Total%15
		l.Reading, l.Makes = fmt.Sprintf("%g°", float64(l.Total)*0.6), fmt.Sprintf("%g° of the drawing looks up", float64(l.Total)*0.6)
	}
	for name, spoil := range map[string]func(s *plan.Setup){
		"one hole too far":           func(s *plan.Setup) { turn(&s.Operations[1], 1) },
		"a flat cut twice":           func(s *plan.Setup) { turn(&s.Operations[1], -100) },
		"turned under the cut":       func(s *plan.Setup) { moveDial(s.Operations[1].Cuts[0].To, plan.HeadDial, 15) },
		"another circle":             func(s *plan.Setup) { s.Dividing.Circle = 19 },
		"a circle that is not owned": func(s *plan.Setup) { s.Dividing.Circle = 36 },
		"another ratio":              func(s *plan.Setup) { s.Dividing.Ratio = 60 },
		"no head":                    func(s *plan.Setup) { s.Dividing = nil },
		"a higher head":              func(s *plan.Setup) { s.Dividing.HeightMM = 80 },
		"more room below":            func(s *plan.Setup) { s.Bed.GapMM = 60 },
		"no count":                   func(s *plan.Setup) { s.Operations[1].Cuts[0].From = s.Operations[1].Cuts[0].From[:3] },
		"a card of other turns":      func(s *plan.Setup) { s.Operations[1].Card[0].Turns++ },
		"a card of another angle":    func(s *plan.Setup) { s.Operations[1].Card[0].Reading = "61°" },
		"a card that looks up wrong": func(s *plan.Setup) { s.Operations[1].Card[0].Makes = "300° of the drawing looks up" },
		"no card":                    func(s *plan.Setup) { s.Operations[1].Card = s.Operations[1].Card[1:] },
		"nought elsewhere":           func(s *plan.Setup) { s.AcrossDeg += 10 },
		"a truer chuck":              func(s *plan.Setup) { s.LocateMM = 0.03 },
		"a lighter grip":             func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = s.Grip.WorkingN/4, s.Grip.LeastN/4 },
		"a tailstock":                func(s *plan.Setup) { s.Tailstock = true },
	} {
		t.Run(name, func(t *testing.T) {
			text, err := json.Marshal(whole)
			require.NoError(t, err)
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			at := slices.IndexFunc(p.Parts[0].Setups, func(s plan.Setup) bool { return s.Dividing != nil })
			spoil(&p.Parts[0].Setups[at])
			_, failures := replay.Prove(job, &p)
			assert.NotEmpty(t, failures)
		})
	}
}
