package planner_test

import (
	"encoding/json"
	"fmt"
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

const dividingRing = "testdata/rules/dividing-ring.hcl"

// headCounts are the counts of a ring's table.
func headCounts(o plan.Operation) (list []int64) {
	for _, h := range o.Holes {
		list = append(list, h.Head.Total)
	}
	return list
}

// A ring that no circle divides is drilled at the nearest holes: each counted from nought, so that the errors stay half a hole and do not add up.
func TestRingIsTurnedUnderTheSpindle(t *testing.T) {
	p, failures := planner.Proved(load(t, dividingRing), planner.Options{})
	require.Empty(t, failures)
	s := onHead(t, p.Parts[0])
	assert.False(t, s.Across)
	assert.Equal(t, plan.Dividing{Ratio: 40, Circle: 20, HeightMM: 65}, *s.Dividing)
	assert.InDelta(t, 90, s.AskewDeg, 0)
	drill := s.Operations[0]
	assert.Equal(t, []int64{0, 114, 229, 343, 457, 571, 686}, headCounts(drill), "800 holes a turn in seven, each rounded from nought")
	half := math.Pi * 18 / 800
	for _, h := range drill.Holes {
		assert.LessOrEqual(t, math.Abs(h.PastMM), half+1e-4, "hole %d", h.Number)
	}
	assert.InDelta(t, -2.0/7*2*math.Pi*18/800, drill.Holes[1].PastMM, 1e-4, "114 of 114 2/7")

	cap := onHead(t, p.Parts[1])
	assert.Equal(t, "left", cap.FreeEnd)
	assert.Equal(t, []int64{0, 150, 375}, headCounts(cap.Operations[0]), "0, 90 and 225 degrees of 600 holes")
}

// The circle that divides exactly is taken where it is owned, and the table then says nothing of errors.
func TestExactCircleIsTaken(t *testing.T) {
	job := withHead(load(t, dividingRing), func(h *partspec.Holding) { h.Plates = []int{15, 20, 21, 49} })
	s := onHead(t, answered(t, job).Parts[0])
	assert.Equal(t, 21, s.Dividing.Circle)
	assert.Equal(t, []int64{0, 120, 240, 360, 480, 600, 720}, headCounts(s.Operations[0]))
	for _, h := range s.Operations[0].Holes {
		assert.Zero(t, h.PastMM)
	}
	assert.Contains(t, s.Operations[0].Notes, "A check on the table: from hole to hole the crank makes 5 turns and 15 of the 21 holes.")
}

// What the nearest hole leaves is held against the limits, with the figure; and a head that does not stand upright turns nothing under a spindle.
func TestRingThatCannotBeTurned(t *testing.T) {
	job := load(t, dividingRing)
	for name, c := range map[string]struct {
		change func(h *partspec.Holding)
		said   string
	}{
		"too coarse":  {func(h *partspec.Holding) { h.Ratio, h.Plates, h.Direct = 0, nil, []int{24} }, "the nearest hole of its circle of 24 comes out 2.020 off round the axis, 0.150 may pass (C-24i)"},
		"lies only":   {func(h *partspec.Holding) { h.Upright = false }, "wants a holding \"dividing_head\" with upright = true"},
		"not so true": {func(h *partspec.Holding) { h.RunOut = 0.6 }, "(C-24)"},
	} {
		part := answered(t, withHead(job, c.change)).Parts[0]
		require.NotEmpty(t, part.Refusals, name)
		assert.Contains(t, fmt.Sprint(part.Refusals), c.said, name)
	}
}

// Flats, holes across and slots are divided by the nearest holes too, where the angle's own tolerance lets them.
func TestNearestFlatsAreDivided(t *testing.T) {
	job := withHead(load(t, dividingSpindle), func(h *partspec.Holding) { h.Direct, h.Plates = nil, []int{17} })
	p, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	s := onHead(t, p.Parts[0])
	require.Len(t, s.Operations, 6)
	assert.ElementsMatch(t, [][2]int64{{0, 0}, {6, 11}, {13, 6}, {20, 0}, {26, 11}, {33, 6}}, counts(s))
	var makes []string
	for _, o := range s.Operations {
		makes = append(makes, o.Card[0].Makes)
	}
	assert.Contains(t, makes, "59.8235° of the drawing looks up, 0.1765° short of 60°")

	coarse := answered(t, withHead(job, func(h *partspec.Holding) { h.Ratio, h.Plates, h.Direct = 0, nil, []int{7} })).Parts[0]
	for _, s := range coarse.Setups {
		assert.False(t, s.Dividing != nil && len(s.Operations) > 1, "51 degrees for 60")
	}
}

// The replay turns a ring by the head that the workshop has, hole by hole, whatever the plan says of it.
func TestSpoiltRingIsRefused(t *testing.T) {
	job := load(t, dividingRing)
	whole, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	turn := func(o *plan.Operation, hole int, by int64) { // with its table, as a slip of the sum would
		for n := range o.Cuts {
			if c := &o.Cuts[n]; n%len(o.Holes) == hole {
				moveDial(c.From, plan.HeadDial, by)
				moveDial(c.To, plan.HeadDial, by)
			}
		}
		h := &o.Holes[hole]
		h.Head.Total += by
		h.Head.Turns, h.Head.Marks = h.Head.Total/20, h.Head.Total%20
		h.Head.Reading = fmt.Sprintf("%g°", math.Round(float64(h.Head.Total)*4500)/10000)
		h.PastMM = math.Round((h.PastMM+float64(by)*2*math.Pi*18/800)*1e4) / 1e4
	}
	op := func(s *plan.Setup) *plan.Operation { return &s.Operations[0] }
	for name, spoil := range map[string]func(s *plan.Setup){
		"two holes too far":           func(s *plan.Setup) { turn(op(s), 2, 2) },
		"a hole drilled twice":        func(s *plan.Setup) { turn(op(s), 2, -115) },
		"errors that add up":          func(s *plan.Setup) { turn(op(s), 3, -1); turn(op(s), 6, -2) },
		"turned under the drill":      func(s *plan.Setup) { moveDial(op(s).Cuts[1].To, plan.HeadDial, 1) },
		"no count":                    func(s *plan.Setup) { op(s).Cuts[1].From = op(s).Cuts[1].From[:2] },
		"a count past the turn":       func(s *plan.Setup) { turn(op(s), 2, 800) },
		"another offset":              func(s *plan.Setup) { moveOffset(op(s), "x", 20) },
		"beside the axis":             func(s *plan.Setup) { moveOffset(op(s), "y", 20) },
		"another circle":              func(s *plan.Setup) { s.Dividing.Circle = 19 },
		"a circle that is not owned":  func(s *plan.Setup) { s.Dividing.Circle = 40 },
		"another ratio":               func(s *plan.Setup) { s.Dividing.Ratio = 60 },
		"no head":                     func(s *plan.Setup) { s.Dividing = nil },
		"a higher head":               func(s *plan.Setup) { s.Dividing.HeightMM = 80 },
		"lying":                       func(s *plan.Setup) { s.Across = true },
		"nought elsewhere":            func(s *plan.Setup) { s.AskewDeg += 3 },
		"a truer chuck":               func(s *plan.Setup) { s.LocateMM = 0.03 },
		"turned over":                 func(s *plan.Setup) { s.FreeEnd = "left" },
		"a line of other turns":       func(s *plan.Setup) { op(s).Holes[1].Head.Turns++ },
		"a line of another angle":     func(s *plan.Setup) { op(s).Holes[1].Head.Reading = "60°" },
		"a line that hides its error": func(s *plan.Setup) { op(s).Holes[1].PastMM = 0 },
		"a line of no head":           func(s *plan.Setup) { op(s).Holes[1].Head = nil },
		"a line of another dial":      func(s *plan.Setup) { op(s).Holes[1].Head.Dial = "x" },
		"a line with a dial too":      func(s *plan.Setup) { op(s).Holes[1].X = op(s).Card[0] },
		"a line less":                 func(s *plan.Setup) { op(s).Holes = op(s).Holes[1:] },
		"no offset on the card":       func(s *plan.Setup) { op(s).Card = op(s).Card[1:] },
		"a lighter grip":              func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = s.Grip.WorkingN/4, s.Grip.LeastN/4 },
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
	lying := withHead(job, func(h *partspec.Holding) { h.Upright = false })
	_, failures = replay.Prove(lying, whole)
	assert.NotEmpty(t, failures, "a head that does not stand upright")
}

// moveOffset moves a dial of the table in all cuts of an operation, and on its card.
func moveOffset(o *plan.Operation, dial string, by int64) {
	for n := range o.Cuts {
		moveDial(o.Cuts[n].From, dial, by)
		moveDial(o.Cuts[n].To, dial, by)
	}
	for i := range o.Card {
		if l := &o.Card[i]; l.Dial == dial {
			l.Total += by
			l.Turns, l.Marks = l.Total/100, l.Total%100
			l.Reading = fmt.Sprintf("%g mm", float64(l.Total)*0.02)
		}
	}
}
