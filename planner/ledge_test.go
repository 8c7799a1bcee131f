package planner_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// A bearing that reaches past the faceplate, in a shop without a mill and a four-jaw chuck, stands on an angle plate by its base; on a larger faceplate it is clamped,
// which is quicker; without either it is refused with the figures (rule B-10).
func TestBearingStandsOnAnAnglePlate(t *testing.T) {
	job := load(t, "testdata/rules/bearing.hcl")
	part := answered(t, job).Parts[0]
	require.Empty(t, part.Refusals)
	s := part.Setups[0]
	require.Equal(t, "angle_plate", s.HoldingKind)
	require.NotNil(t, s.Ledge)
	assert.Equal(t, "its bottom edge", s.Locates)
	assert.True(t, s.Ledge.Bar)
	assert.Positive(t, s.Balance.WeightKg)

	sized := func(mm units.Length) *partspec.Job {
		return withShop(job, func(w *partspec.Workshop) {
			w.Holdings = append([]partspec.Holding(nil), w.Holdings...)
			for i := range w.Holdings {
				if w.Holdings[i].Kind == partspec.Faceplate {
					w.Holdings[i].Diameter = mm
				}
			}
		})
	}
	larger := answered(t, sized(240)).Parts[0]
	require.Empty(t, larger.Refusals)
	assert.Equal(t, "faceplate", larger.Setups[0].HoldingKind)
	assert.Less(t, larger.Order.CostMinutes, part.Order.CostMinutes)
	without := answered(t, withoutHolding(job, s.Holding)).Parts[0]
	require.NotEmpty(t, without.Refusals, "nothing else holds it")
	assert.Contains(t, fmt.Sprint(without.Refusals), "the plate 55", "the faceplate's own figures")
}

// The comparison shows an angle plate with its figures, and what refuses it.
func TestAnglePlateIsCompared(t *testing.T) {
	job := load(t, "testdata/rules/bearing.hcl")
	surfaces, err := planner.Compare(job, job.Part("bearing"), "journal", plan.WhatIf{}, planner.Options{})
	require.NoError(t, err)
	passed, refused := 0, 0
	for _, o := range surfaces[len(surfaces)-1].Options {
		if o.Kind != "angle_plate" {
			continue
		}
		if o.Passes {
			passed++
			assert.Positive(t, o.CounterweightKg)
			assert.Greater(t, o.WorkingN, o.LeastN)
			assert.Positive(t, o.ErrorMM)
		} else {
			refused++
			assert.Equal(t, "B-10", o.Rule)
		}
	}
	assert.Positive(t, passed)
	assert.Positive(t, refused)
}

// Bearings of many sizes on many angle plates are proved or refused with reasons, whatever they stand on.
func TestBearingsOfManySizes(t *testing.T) {
	text, err := os.ReadFile("testdata/rules/bearing.hcl")
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(10, 7))
	between := func(low, high int) int { return low + r.IntN(high-low+1) }
	stood := 0
	for range 150 {
		wide, high, bore := between(30, 130), between(25, 90), between(5, 25)*2
		x, y := between(bore/2+2, max(bore/2+2, wide)), between(bore/2+2, max(bore/2+2, high))
		with := strings.NewReplacer("width             = 96", fmt.Sprintf("width = %d", wide), "length            = 44", fmt.Sprintf("length = %d", high), "width  = 96", fmt.Sprintf("width = %d", wide),
			"height = 44", fmt.Sprintf("height = %d", high), `["44 ±0.2", "24 ±0.15"]`, fmt.Sprintf(`["%d ±0.2", "%d ±0.2"]`, x, y), "20 H8", fmt.Sprintf("%d H9", bore),
			"thickness         = 30", fmt.Sprintf("thickness = %d", 30), "swing           = 250", fmt.Sprintf("swing = %d", between(18, 36)*10), "diameter    = 110", fmt.Sprintf("diameter = %d", between(8, 16)*10),
			"width       = 130", fmt.Sprintf("width = %d", between(8, 20)*10), "clamps      = 4", fmt.Sprintf("clamps = %d", between(2, 4)), "reach       = 50", fmt.Sprintf("reach = %d", between(3, 8)*10)).Replace(string(text))
		job, _, diags := partspec.Parse([]partspec.Source{{Name: "bearing.hcl", Text: []byte(with)}})
		if diags.HasErrors() {
			continue // the bore does not lie in the plate
		}
		part := answered(t, job).Parts[0]
		if t.Failed() {
			t.Log(with[strings.Index(with, `part "`):])
			return
		}
		if len(part.Setups) > 0 && part.Setups[0].Ledge != nil {
			stood++
		}
	}
	assert.Greater(t, stood, 4, "angle plates are hardly used")
}

// Brackets on a foot, sawn and filed from a rectangle, are proved or refused with reasons; on a ledge each of their shoulders, or their blank under a bar, is pressed.
func TestBracketsOfManySizes(t *testing.T) {
	text, err := os.ReadFile("testdata/rules/bearing.hcl")
	require.NoError(t, err)
	shop, _, _ := strings.Cut(string(text), `part "`)
	r := rand.New(rand.NewPCG(3, 9))
	between := func(low, high int) int { return low + r.IntN(max(1, high-low+1)) }
	stood := 0
	for range 40 {
		w, f, h := between(50, 110), between(8, 16), between(30, 70)
		a, b := between(10, w/2-12), between(w/2+12, w-10)
		corners := [][2]int{{w, f}, {b, f}, {b, h}, {a, h}, {a, f}, {0, f}}
		var o strings.Builder
		fmt.Fprintf(&o, "outline \"chain\" {\n datum = [\"foot\", \"left\"]\n finish_by = \"file\"\n start {\n at = [0, 0]\n }\n line \"foot\" {\n to = [%d, 0]\n }\n", w)
		for i, c := range corners {
			fmt.Fprintf(&o, " line \"side%d\" {\n to = [%d, %d]\n }\n", i+1, c[0], c[1])
		}
		o.WriteString(" line \"left\" {}\n }\n")
		hcl := strings.NewReplacer("diameter    = 110", fmt.Sprintf("diameter = %d", between(7, 16)*10), "swing           = 250", fmt.Sprintf("swing = %d", between(18, 40)*10),
			"width       = 130", fmt.Sprintf("width = %d", between(10, 20)*10)).Replace(shop) +
			fmt.Sprintf("part \"bracket\" {\n material = \"brass\"\n thickness = 20\n stock \"plate\" {\n thickness = 20\n faces_as_supplied = true\n }\n %s bore \"main\" {\n at = [\"%d ±0.3\", \"%d ±0.3\"]\n diameter = \"%d H9\"\n }\n}\n",
				o.String(), (a+b)/2, h*6/10, between(5, 15)*2)
		job, _, diags := partspec.Parse([]partspec.Source{{Name: "bracket.hcl", Text: []byte(hcl)}})
		if diags.HasErrors() {
			continue // the bore does not lie in the bracket
		}
		for _, s := range answered(t, job).Parts[0].Setups {
			if s.Ledge != nil {
				stood++
			}
		}
	}
	assert.Positive(t, stood, "angle plates are never used")
}
