package draw_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
	"catchplate/sheets/draw"
	"catchplate/sheets/internal/fixture"
)

func stepsOf(p *plan.Plan) *plan.StepTable { return p.Parts[0].Setups[0].Operations[0].Steps }

func TestSketchOfStepsIsClear(t *testing.T) {
	p := draw.Steps("knob-steps", "Step the crown", stepsOf(fixture.Knob()))
	checkPage(t, p)
	assert.Equal(t, draw.PageWidth, p.Width)
	assert.LessOrEqual(t, p.Height, 200.0)
	var words []string
	for _, text := range texts(p) {
		words = append(words, text.Text)
	}
	assert.Contains(t, words, "Curve 10:1, thin line. Crests drawn 6 times as tall, square to it; the tallest is 0.099 mm.")
	assert.Contains(t, words, "Cutter: nose radius 2 mm, drawn raised")
	for _, number := range []string{"1", "6", "7", "10"} {
		assert.Contains(t, words, number, "first, last and stops are numbered")
	}
}

// outlineTop is the highest point on paper of the work's outline.
func outlineTop(t *testing.T, p draw.Page) (top, curve float64) {
	t.Helper()
	top, curve = math.Inf(1), math.Inf(1)
	found := false
	for _, s := range p.Shapes {
		path, ok := s.(draw.Path)
		if !ok || len(path.Steps) < 50 {
			continue
		}
		found = true
		for _, q := range path.Steps {
			if path.Class == draw.Thin {
				curve = min(curve, q.To.Y)
			} else {
				top = min(top, q.To.Y)
			}
		}
	}
	require.True(t, found)
	return top, curve
}

// A crest stands as much over the curve as the sketch says that it is enlarged: on a level line cut by two blades with a gap, all of it.
func TestCrestsAreEnlargedAsSaid(t *testing.T) {
	table := &plan.StepTable{
		Curve:  []plan.StepPiece{{FromAcrossMM: 0, ToAcrossMM: 10}},
		Cutter: plan.StepCutter{WidthMM: 4, NoseMM: 1}, AcrossDial: "table", DepthDial: "knee", WorstMM: 0.05,
		Steps: []plan.Step{{Label: "1", AcrossMM: 2}, {Label: "2", AcrossMM: 5.3}, {Label: "3", AcrossMM: 8}},
	}
	p := draw.Steps("level", "level", table)
	checkPage(t, p)
	top, curve := outlineTop(t, p)
	// The corners' edges meet 1.65 mm from either middle, 0.65 along the corner of radius 1: a crest of 1 - sqrt(1 - 0.65^2), but no more than the worst said.
	want := math.Min(1-math.Sqrt(1-0.65*0.65), table.WorstMM)
	const scale, enlarged = 10, 10
	assert.InDelta(t, want*scale*enlarged, curve-top, 0.02)
}

func TestSketchesOfChanceStepsHaveNoOverlap(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 45))
	for range 200 {
		table := chanceSteps(r)
		p := draw.Steps("chance", "chance", table)
		checkPage(t, p)
		for _, s := range p.Shapes {
			if path, ok := s.(draw.Path); ok {
				require.False(t, math.IsNaN(path.Start.X+path.Start.Y))
			}
		}
		if t.Failed() {
			t.Fatalf("table of chance: %+v", table)
		}
	}
	assert.NotEmpty(t, draw.Steps("none", "none", &plan.StepTable{}).Title)
}

// chanceSteps is a round, hollow or straight curve with steps at any place near it.
func chanceSteps(r *rand.Rand) *plan.StepTable {
	radius, half := 1+r.Float64()*80, 0.0
	half = radius * (0.05 + 0.9*r.Float64())
	edge := radius - math.Sqrt(radius*radius-half*half)
	piece := plan.StepPiece{FromAcrossMM: -half, ToAcrossMM: half, FromDepthMM: edge, ToDepthMM: edge, RadiusMM: radius, CentreDepthMM: radius}
	switch r.IntN(3) {
	case 0:
		piece.FromDepthMM, piece.ToDepthMM, piece.CentreDepthMM, piece.Hollow = -edge, -edge, -radius, true
	case 1:
		piece.RadiusMM, piece.CentreDepthMM = 0, 0
	}
	width := 0.5 + 5*r.Float64()
	t := &plan.StepTable{Curve: []plan.StepPiece{piece}, Cutter: plan.StepCutter{WidthMM: width, NoseMM: width / 2 * r.Float64()}, AcrossDial: "cross", DepthDial: "vertical slide",
		AcrossLeft: r.IntN(2) == 0, WorstMM: 0.001 + r.Float64()*0.2}
	for n := 1 + r.IntN(120); n > 0; n-- {
		stop := []string{"", "", "Ø12 mm"}[r.IntN(3)]
		t.Steps = append(t.Steps, plan.Step{AcrossMM: (r.Float64()*2 - 1) * (half + width/2), DepthMM: (r.Float64()*2 - 1) * edge, Stop: stop})
	}
	return t
}
