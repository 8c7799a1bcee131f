package draw_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
	"catchplate/sheets/draw"
	"catchplate/sheets/internal/fixture"
)

// pages draws every figure of a plan.
func pages(p *plan.Plan) []draw.Page {
	var out []draw.Page
	for i := range p.Parts {
		part := &p.Parts[i]
		out = append(out, draw.Part(part.Name, part))
		for j := range part.Setups {
			out = append(out, draw.Setup(fmt.Sprintf("%s-setup-%d", part.Name, j+1), part, &part.Setups[j]))
		}
	}
	return out
}

func texts(p draw.Page) []draw.Text {
	var out []draw.Text
	for _, s := range p.Shapes {
		if t, ok := s.(draw.Text); ok {
			out = append(out, t)
		}
	}
	return out
}

// rounding is far below anything that shows on paper, and above the noise of float64 sums.
const rounding = 1e-6

// checkPage holds for every figure, whatever the plan.
func checkPage(t *testing.T, p draw.Page) {
	t.Helper()
	page := draw.Box{Left: -rounding, Top: -rounding, Right: p.Width + rounding, Bottom: p.Height + rounding}
	for _, side := range []float64{p.Width, p.Height} {
		assert.InDelta(t, math.Round(side/draw.Module), side/draw.Module, rounding, "%s: a side is not whole modules", p.Name)
	}
	all := texts(p)
	for i, a := range all {
		assert.True(t, a.Box().Inside(page), "%s: %q leaves the page", p.Name, a.Text)
		for _, b := range all[:i] {
			assert.False(t, a.Box().Overlaps(b.Box()), "%s: %q and %q overlap", p.Name, a.Text, b.Text)
		}
	}
	for _, s := range p.Shapes {
		if path, ok := s.(draw.Path); ok {
			for _, q := range append([]draw.Step{{To: path.Start}}, path.Steps...) {
				assert.True(t, draw.Box{Left: q.To.X, Top: q.To.Y, Right: q.To.X, Bottom: q.To.Y}.Inside(page), "%s: a %s leaves the page", p.Name, path.Class)
			}
		}
	}
}

// struck lists the texts that a thin line runs through.
func struck(p draw.Page) []string {
	var out []string
	for _, s := range p.Shapes {
		path, ok := s.(draw.Path)
		if !ok || path.Class != draw.Thin {
			continue
		}
		at := path.Start
		for _, step := range path.Steps {
			for _, t := range texts(p) {
				if through(at, step.To, t.Box()) {
					out = append(out, t.Text)
				}
			}
			at = step.To
		}
	}
	return out
}

// through reports whether a line enters a box, by sampling it finely.
func through(a, b draw.Point, box draw.Box) bool {
	const samples = 400
	for i := range samples + 1 {
		f := float64(i) / samples
		x, y := a.X+(b.X-a.X)*f, a.Y+(b.Y-a.Y)*f
		if x > box.Left+rounding && x < box.Right-rounding && y > box.Top+rounding && y < box.Bottom-rounding {
			return true
		}
	}
	return false
}

func TestFiguresOfTheFixturesAreClear(t *testing.T) {
	for _, p := range append(append(pages(fixture.Job()), pages(fixture.Cover())...), pages(fixture.Saddle())...) {
		checkPage(t, p)
		assert.Equal(t, draw.PageWidth, p.Width, "%s is wider than a page", p.Name)
		assert.LessOrEqual(t, p.Height, 220.0, "%s is too tall for a page with words", p.Name)
		assert.Empty(t, struck(p), "%s: a line runs through a text", p.Name)
	}
}

func TestFiguresOfAnyPlanHaveNoOverlap(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 24))
	for i := range 400 {
		for _, p := range pages(fixture.Random(r)) {
			checkPage(t, p)
		}
		if t.Failed() {
			t.Fatalf("plan of chance %d", i)
		}
	}
}

// Whatever a plan says of grips and shapes, a page comes of it.
func TestMadPlansAreDrawn(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	far := func() float64 { return (r.Float64() - 0.5) * []float64{1, 100, 1e6}[r.IntN(3)] }
	for range 200 {
		p := fixture.Random(r)
		for i := range p.Parts[0].Setups {
			s := &p.Parts[0].Setups[i]
			s.Grip.FromZ, s.Grip.ToZ, s.Grip.RadiusMM = far(), far(), math.Abs(far())
			s.Grip.Kind = []string{"jaws", "collet", "mandrel", "centres", "glued_face", "glued_bore", "", "magnet"}[r.IntN(8)]
			switch r.IntN(4) {
			case 0:
				s.After = plan.Section{}
			case 1:
				s.After.Inner = []plan.Segment{{Z0: far(), Z1: 1e6}}
			case 2:
				s.Before, s.After = s.After, s.Before
			}
		}
		for _, page := range pages(p) {
			assert.False(t, math.IsNaN(page.Width+page.Height))
			assert.NotEmpty(t, page.Title)
		}
	}
}

// Lines through texts cannot always be helped where dozens of long texts crowd; they stay readable by their white edge. This holds how rare
// they are.
func TestLinesSeldomRunThroughTexts(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 9))
	all, hit := 0, 0
	for range 100 {
		for _, p := range pages(fixture.Random(r)) {
			all += len(texts(p))
			hit += len(struck(p))
		}
	}
	require.Positive(t, all)
	t.Logf("%d of %d texts", hit, all)
	assert.Less(t, float64(hit)/float64(all), 0.002)
}

func TestTheSamePlanGivesTheSamePage(t *testing.T) {
	first, again := pages(fixture.Job()), pages(fixture.Job())
	assert.Equal(t, first, again)
}

func TestFiguresOfAnyFlatPlanHaveNoOverlap(t *testing.T) {
	r := rand.New(rand.NewPCG(24, 16))
	for i := range 80 {
		for _, p := range pages(fixture.RandomFlat(r)) {
			checkPage(t, p)
		}
		if t.Failed() {
			t.Fatalf("flat plan of chance %d", i)
		}
	}
}
