package dial

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec/units"
)

var (
	crossRadius   = Dial{Name: "cross", Graduation: 0.02, PerTurn: 1.5, Reads: ReadsRadius, Backlash: 0.1}
	crossDiameter = Dial{Name: "cross", Graduation: 0.05, PerTurn: 4, Reads: ReadsDiameter, Backlash: 0.2}
	inchDial      = Dial{Name: "cross", Graduation: 0.0254, PerTurn: 2.54, Reads: ReadsRadius}
	saddle        = Dial{Name: "saddle", Graduation: 0.1, PerTurn: 20, Reads: ReadsRadius}
	scale         = Dial{Name: "scale", Graduation: 0.005, Reads: ReadsIndicator}
)

// Worked by hand: reading = half the change of diameter on a radius dial, the
// whole change on a diameter dial, whole graduations left short of the aim.
func TestSet(t *testing.T) {
	for _, c := range []struct {
		name     string
		d        Dial
		w        Want
		total    int
		made     units.Length
		left     units.Length
		standing Standing
		text     string
	}{
		{"radius dial, exact", crossRadius, Want{Kind: Outside, From: 30, To: 22}, 200, 22, 0, OnSize, "2 turns + 50 graduations"},
		{"radius dial, metal on", crossRadius, Want{Kind: Outside, From: 30, To: 21.99}, 200, 22, 0.01, MetalOn, "2 turns + 50 graduations"},
		{"limits take the next one", crossRadius, Want{Kind: Outside, From: 30, To: 21.99, Limits: units.Limits{Low: 21.95, High: 21.995}}, 201, 21.96, -0.03, Inside, "2 turns + 51 graduations"},
		{"no graduation inside", crossRadius, Want{Kind: Outside, From: 30, To: 21.99, Limits: units.Limits{Low: 21.98, High: 21.995}}, 200, 22, 0.01, Creep, "2 turns + 50 graduations"},
		{"diameter dial", crossDiameter, Want{Kind: Outside, From: 30, To: 22}, 160, 22, 0, OnSize, "2 turns"},
		{"diameter dial, metal on", crossDiameter, Want{Kind: Outside, From: 30, To: 21.98}, 160, 22, 0.02, MetalOn, "2 turns"},
		{"bore stays small", crossRadius, Want{Kind: Bore, From: 20, To: 22.03}, 50, 22, 0.03, MetalOn, "50 graduations"},
		{"depth stays short", saddle, Want{Kind: Depth, From: 0, To: 12.57}, 125, 12.5, 0.07, MetalOn, "125 graduations"},
		{"length stays long", saddle, Want{Kind: Length, From: 40, To: 38.04}, 19, 38.1, 0.06, MetalOn, "19 graduations"},
		{"place to the nearest", saddle, Want{Kind: Place, From: 0, To: 12.57}, 126, 12.6, -0.03, Nearest, "126 graduations"},
		{"place back", saddle, Want{Kind: Place, From: 0, To: -31}, -310, -31, 0, OnSize, "back 1 turn + 110 graduations"},
		{"place with one-sided limits", saddle, Want{Kind: Place, From: 0, To: 12.52, Limits: units.Limits{Low: 12.52, High: 12.6}}, 126, 12.6, -0.08, Inside, "126 graduations"},
		{"inch dial, inch size", inchDial, Want{Kind: Outside, From: 25.4, To: 22.225}, 62, 22.2504, 0.0254, MetalOn, "62 graduations"},
		{"inch dial, metric size", inchDial, Want{Kind: Outside, From: 25.4, To: 20}, 106, 20.0152, 0.0152, MetalOn, "1 turn + 6 graduations"},
		{"inch depth exact", inchDial, Want{Kind: Depth, From: 0, To: 22.225}, 875, 22.225, 0, OnSize, "8 turns + 75 graduations"},
		{"straight travel on a diameter dial", crossDiameter, Want{Kind: Depth, From: 0, To: 2.02}, 80, 2, 0.02, MetalOn, "1 turn"},
		{"indicator", scale, Want{Kind: Depth, From: 0, To: 3.143}, 628, 3.14, 0.003, MetalOn, "3.14 mm on the indicator"},
		{"one graduation", saddle, Want{Kind: Depth, From: 0, To: 0.1}, 1, 0.1, 0, OnSize, "1 graduation"},
		{"nothing to do", saddle, Want{Kind: Depth, From: 5, To: 5}, 0, 5, 0, OnSize, "0 graduations"},
	} {
		s, err := Set(c.d, c.w)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.total, s.Graduations, c.name)
		assert.Equal(t, c.made, s.Made, c.name)
		assert.Equal(t, c.left, s.Leftover, c.name)
		assert.Equal(t, c.standing, s.Standing, c.name)
		assert.Equal(t, c.text, s.Text(c.d), c.name)
	}
}

func TestSetRefuses(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, c := range []struct {
		d    Dial
		w    Want
		part string
	}{
		{Dial{}, Want{Kind: Depth, To: 1}, "radius, diameter or indicator"},
		{Dial{Graduation: 0.03, PerTurn: 2, Reads: ReadsRadius}, Want{Kind: Depth, To: 1}, "whole number of graduations"},
		{Dial{Graduation: 0.02, Reads: ReadsRadius}, Want{Kind: Depth, To: 1}, "whole number of graduations"},
		{Dial{Graduation: nan, PerTurn: 2, Reads: ReadsRadius}, Want{Kind: Depth, To: 1}, "graduation above 0"},
		{Dial{Graduation: 0.02, PerTurn: nan, Reads: ReadsRadius}, Want{Kind: Depth, To: 1}, "whole number"},
		{crossRadius, Want{To: 1}, "outside, bore"},
		{crossRadius, Want{Kind: Outside, From: 20, To: 21}, "put metal on"},
		{crossRadius, Want{Kind: Bore, From: 20, To: 19}, "put metal on"},
		{crossRadius, Want{Kind: Depth, From: 0, To: nan}, "not believable"},
		{crossRadius, Want{Kind: Depth, From: 0, To: 50_000}, "more than 1000000 graduations"},
		{crossRadius, Want{Kind: Outside, From: 30, To: 20, Limits: units.Limits{Low: 20.1, High: 20.2}}, "outside its limits"},
	} {
		_, err := Set(c.d, c.w)
		require.Error(t, err)
		assert.Contains(t, err.Error(), c.part)
	}
}

// Against a search of every graduation near the aim: metal is left unless the
// limits ask otherwise, less than one step of it, and "measure and creep" is
// said exactly when no graduation at all lands inside the limits.
func TestSetProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom([]Dial{crossRadius, crossDiameter, inchDial, saddle, scale}).Draw(t, "dial")
		kind := rapid.SampledFrom([]Kind{Outside, Bore, Depth, Length, Place}).Draw(t, "kind")
		travel := units.Length(rapid.IntRange(0, 50_000).Draw(t, "travel")) / 1000
		w := Want{Kind: kind, From: 60, To: 60 + units.Length(kind.sense())*travel}
		if rapid.Bool().Draw(t, "limited") {
			below := units.Length(rapid.IntRange(0, 60).Draw(t, "below")) / 1000
			above := units.Length(rapid.IntRange(1, 60).Draw(t, "above")) / 1000
			w.Limits = units.Limits{Low: w.To - below, High: w.To + above}
		}
		s, err := Set(d, w)
		require.NoError(t, err)
		if marks := d.Marks(); marks > 0 {
			assert.Equal(t, s.Graduations, s.Turns*marks+s.Rest)
		}
		step := d.Step(kind)
		anyInside, metalOn := false, false
		for g := s.Graduations - 3; g <= s.Graduations+3; g++ {
			other := at(d, w, g)
			inside := w.hasLimits() && w.Limits.Contains(other.Made)
			anyInside = anyInside || inside
			metalOn = metalOn || (inside && other.Leftover >= 0)
		}
		switch s.Standing {
		case OnSize:
			assert.Zero(t, s.Leftover)
		case MetalOn:
			assert.True(t, s.Leftover > 0 && s.Leftover < step)
		case Nearest:
			assert.LessOrEqual(t, float64(s.Leftover.Abs()), float64(step)/2+halfNanometre)
		case Inside:
			assert.True(t, w.Limits.Contains(s.Made))
			assert.True(t, s.Leftover > 0 || !metalOn || kind == Place)
		case Creep:
			assert.False(t, anyInside)
			assert.True(t, s.Leftover > 0 || kind == Place)
		}
	})
}

// halfNanometre is the rounding of a size.
const halfNanometre = 1e-6

func TestPromise(t *testing.T) {
	for _, c := range []struct {
		d      Dial
		kind   Kind
		width  units.Length
		oneWay bool
		want   bool
	}{
		{crossRadius, Outside, 0.08, true, true}, // one graduation is 0.04 on diameter
		{crossRadius, Outside, 0.079, true, false},
		{crossDiameter, Outside, 0.1, true, true},
		{crossRadius, Depth, 0.04, true, true},
		{crossRadius, Depth, 0.04, false, false}, // backlash 0.1
		{crossRadius, Outside, 0.2, false, false},
		{crossRadius, Outside, 0.21, false, true},
		{scale, Depth, 0.01, false, true},
		{scale, Place, 0.009, false, false},
	} {
		v, err := Promise(c.d, c.kind, c.width, c.oneWay)
		require.NoError(t, err)
		assert.Equal(t, c.want, v.Promised, "%v", c)
		assert.Equal(t, c.want, len(v.Ways) == 0)
		assert.Equal(t, "C-12", v.Rule)
	}
	_, err := Promise(crossRadius, "", 1, true)
	assert.Error(t, err)
	_, err = Promise(Dial{}, Outside, 1, true)
	assert.Error(t, err)
	for _, k := range []Kind{Outside, Bore, Depth, Length, Place} {
		assert.NotEmpty(t, waysFor(k))
	}
}

// Rule C-13: 5.74 degrees for a tenth, 0.57 for a hundredth.
func TestSwing(t *testing.T) {
	tenth, err := Swing(0.1)
	require.NoError(t, err)
	assert.InDelta(t, 5.74, float64(tenth), 0.005)
	hundredth, err := Swing(0.01)
	require.NoError(t, err)
	assert.InDelta(t, 0.573, float64(hundredth), 0.0005)
	for _, bad := range []float64{0, 1, -1, math.NaN()} {
		_, err := Swing(bad)
		assert.Error(t, err)
	}
}

func TestBackOffAndUnit(t *testing.T) {
	assert.Equal(t, 75, crossRadius.BackOff())
	assert.Equal(t, 80, crossDiameter.BackOff())
	worn := crossRadius
	worn.Backlash = 0.6
	assert.Equal(t, 90, worn.BackOff())
	worn = crossDiameter
	worn.Backlash = 1
	assert.Equal(t, 120, worn.BackOff()) // 1 mm of play is 2 mm of reading
	assert.Equal(t, 0, scale.BackOff())
	assert.Equal(t, units.InInch, inchDial.Unit())
	assert.Equal(t, units.InMM, crossRadius.Unit())
	assert.Equal(t, units.InInch, Dial{Graduation: 0.0127}.Unit())
}

func TestCard(t *testing.T) {
	card, err := Make(crossRadius, Outside, 30, 0, []Cut{
		{Label: "rough 1", To: 27}, {Label: "rough 2", To: 24}, {Label: "rough 3", To: 22.4, Measure: true},
		{Label: "finish 1", To: 22.2, Measure: true}, {Label: "finish 2", To: 21.99, Limits: units.Limits{Low: 21.95, High: 22}},
	})
	require.NoError(t, err)
	type line struct {
		label       string
		zero        bool
		total, add  int
		made, where units.Length
	}
	var got []line
	for _, l := range card.Lines {
		got = append(got, line{l.Label, l.ReZero, l.Graduations, l.Add, l.Made, l.At})
	}
	assert.Equal(t, []line{
		{"rough 1", false, 75, 75, 27, 27},
		{"rough 2", false, 150, 75, 24, 24},
		{"rough 3", false, 190, 40, 22.4, 22.4},
		{"set the dial to 0", true, 0, 0, 0, 22.4},
		{"finish 1", false, 5, 5, 22.2, 22.2},
		{"set the dial to 0", true, 0, 0, 0, 22.2},
		{"finish 2", false, 5, 5, 22, 21.99},
	}, got)
	assert.Equal(t, 75, card.BackOff)
	assert.Equal(t, "after measuring", card.Lines[3].Why)
}

// A total past four turns starts again from a zero; the sizes do not change.
func TestCardReZerosByTurns(t *testing.T) {
	var cuts []Cut
	for to := units.Length(1); to <= 12; to++ {
		cuts = append(cuts, Cut{Label: "down", To: to})
	}
	card, err := Make(crossRadius, Depth, 0, 0, cuts)
	require.NoError(t, err)
	zeros, made := 0, units.Length(0)
	for _, l := range card.Lines {
		if l.ReZero {
			zeros++
			assert.Equal(t, made, l.At)
			assert.Contains(t, l.Why, "4 turns")
			continue
		}
		assert.LessOrEqual(t, turnsOf(l.Setting), DefaultMaxTurns)
		assert.Equal(t, l.At, l.Made)
		made = l.Made
	}
	assert.Equal(t, 1, zeros)
}

func TestCardRefuses(t *testing.T) {
	_, err := Make(crossRadius, Outside, 30, 0, []Cut{{Label: "a", To: 20}, {Label: "b", To: 25}})
	assert.ErrorContains(t, err, "b: 25 mm comes after a deeper cut")
	_, err = Make(crossRadius, Outside, 30, -1, nil)
	assert.Error(t, err)
	_, err = Make(Dial{}, Outside, 30, 0, nil)
	assert.Error(t, err)
	_, err = Make(crossRadius, Outside, 30, 0, []Cut{{Label: "a", To: 31}})
	assert.ErrorContains(t, err, "a: outside from 30 mm to 31 mm would put metal on")
}

// A place that lies back is marked, so that it is approached from the same side.
func TestCardMarksPlacesThatGoBack(t *testing.T) {
	card, err := Make(saddle, Place, 0, 0, []Cut{{Label: "1", To: 10}, {Label: "2", To: -5}, {Label: "3", To: 5}})
	require.NoError(t, err)
	assert.Equal(t, []bool{false, true, false}, []bool{card.Lines[0].Back, card.Lines[1].Back, card.Lines[2].Back})
}

// Cuts worked in any number of steps end at the same graduation as one cut.
func TestCardDoesNotAddUpRoundings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.SliceOfN(rapid.IntRange(1, 700), 1, 30).Draw(t, "steps")
		var cuts []Cut
		depth := units.Length(0)
		for _, s := range steps {
			depth += units.Length(s) / 1000
			cuts = append(cuts, Cut{Label: "down", To: depth})
		}
		card, err := Make(inchDial, Depth, 0, 3, cuts)
		require.NoError(t, err)
		single, err := Set(inchDial, Want{Kind: Depth, To: depth})
		require.NoError(t, err)
		assert.Equal(t, single.Made, card.Lines[len(card.Lines)-1].Made)
		total := 0
		for _, l := range card.Lines {
			total += l.Add
		}
		assert.Equal(t, single.Graduations, total)
	})
}
