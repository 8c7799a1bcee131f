package planner_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
)

// block is a brass block 60 by 40 of a thickness with four bolt holes and a seat written as given.
func block(t *testing.T, thick float64, seat string) *partspec.Job {
	t.Helper()
	text := fmt.Sprintf(`part "block" {
  material  = "brass"
  thickness = %g
  stock "plate" {
    thickness = %g
  }
  outline "rectangle" {
    width  = 60
    height = 40
  }
  holes "bolts" {
    at        = [[8, 8], [52, 8], [8, 32], [52, 32]]
    clearance = "M5"
  }
  seat "pipe" {
    finish_by = "file"
    %s
  }
}
`, thick, thick+2, seat)
	file := filepath.Join(t.TempDir(), "block.hcl")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	return load(t, file)
}

// Segments of a circle of radius 1, by their angle: chord and height (Machinery's Handbook, table of segments of circles for radius 1, from memory).
var segments = []struct{ chord, height float64 }{{1, 0.13397}, {1.41421, 0.29289}, {0.51764, 0.03407}}

// A seat in a face is as deep as the segment that its chord cuts off the pipe, whatever face it is in and whichever way the pipe lies.
func TestASeatInAFaceIsAsDeepAsItsSegment(t *testing.T) {
	for i, s := range segments {
		r := 30 / s.chord
		for _, lies := range []string{"on = \"back\"\nangle = 0", "on = \"front\"\nangle = 90"} {
			job := block(t, 30, fmt.Sprintf("%s\nacross = 30\nradius = %.6f", lies, r))
			op := seatCut(t, planned(t, job))
			deepest := 0.0
			for _, step := range op.Steps.Steps {
				deepest = math.Max(deepest, step.DepthMM)
			}
			const graduation = 0.05 // of the quill
			assert.InDelta(t, r*s.height, deepest, 2*graduation, "segment %d, %s", i, lies)
		}
	}
}

// Where the pipe lies beside the middle the part has less to step over on one side; where it is narrower than the part, the face beside it stays.
func TestSeatsBesideTheMiddleAndNarrowerThanThePart(t *testing.T) {
	for _, seat := range []string{
		"on = \"back\"\nradius = 45\nat = 16.3",
		"on = \"front\"\nradius = 60\nat = 26\nangle = 90\nacross = 40",
		"on = \"back\"\nradius = 10\nacross = 20",
		"on = \"back\"\nchord = 38\nrise = \"4.5 ±0.02\"\nleftover = 0.05",
	} {
		p := planned(t, block(t, 20, seat))
		cut := made(t, p, "seat.pipe/steps", 1)[0]
		assert.Less(t, made(t, p, "holes.bolts/drill", 1)[0].at, cut.at, "holes come first")
		for _, s := range p.Setups {
			if s.Number > cut.setup.Number {
				assert.Equal(t, "bench", s.MachineKind, "only the bench takes it after the seat")
			}
		}
	}
}

// The jaws lie below the crown with room for the cutter, and threads are tapped after the seat.
func TestASeatIsHeldBelowItsCrown(t *testing.T) {
	p := planned(t, load(t, "testdata/rules/saddle-block.hcl"))
	cut := made(t, p, "seat.pipe/steps", 1)[0]
	crown := 45 - math.Sqrt(45*45-20*20)
	assert.GreaterOrEqual(t, cut.setup.Grip.FromZ, crown+1.99, "the back is up: the grip begins so far below it")
	assert.Less(t, cut.at, made(t, p, "holes.guide/tap", 1)[0].at)
	assert.True(t, says(cut.Operation, "Metal left at the holes of bolts, 1 onward: 16.9 mm"), "20 - (sqrt(45² - 12²) - sqrt(45² - 20²)): %q", cut.Notes)
}

// Holes that lie where the parallels must do not keep a block out of the vice for its seat, which does not come through; drawn in inches, it is the same seat.
func TestASeatOverHolesByTheEdges(t *testing.T) {
	text := `part "block" {
  material  = "brass"
  drawn_in  = "inch"
  thickness = 0.75
  stock "plate" {
    thickness = 1
  }
  outline "rectangle" {
    width  = 2.5
    height = 1.5
  }
  holes "bolts" {
    at        = [[0.25, 0.25], [2.25, 1.25]]
    clearance = "M5"
  }
  seat "pipe" {
    on        = "back"
    radius    = "1 3/4 in"
    finish_by = "file"
  }
}
`
	file := filepath.Join(t.TempDir(), "block.hcl")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	cut := seatCut(t, planned(t, load(t, file)))
	assert.True(t, says(cut, "Depth at the crown ≈0.169 in (4.289 mm)"), "44.45 - sqrt(44.45² - 19.05²): %q", cut.Notes)
}

// What cannot be made is refused, with what to write instead.
func TestSeatsInFacesThatAreRefused(t *testing.T) {
	for _, c := range []struct{ seat, says string }{
		{"on = \"back\"\nradius = 55\nangle = 90\nat = 26", "would be in the jaws"},
		{"on = \"back\"\nradius = 45\n}\nseat \"other\" {\non = \"front\"\nradius = 60\nfinish_by = \"file\"", "make it of two parts"},
	} {
		p := planner.Plan(block(t, 20, c.seat), planner.Options{})
		require.NotEmpty(t, p.Parts[0].Refusals)
		assert.Contains(t, text(t, p.Parts[0].Refusals), c.says)
	}
	swung := block(t, 20, "on = \"back\"\nradius = 45")
	swung.Parts[0].Feature("pipe").(*partspec.Seat).Finish = false
	assert.Contains(t, text(t, planner.Plan(swung, planner.Options{}).Parts[0].Refusals), "write finish_by")
}

// A seat narrower than its end leaves the face beside it alone, and its passes go right across the end all the same, be they stepped or swung.
func TestSeatsNarrowerThanTheirEnd(t *testing.T) {
	planned(t, saddleWith(t, `radius    = "57 ±0.3"`, "radius    = \"57 ±0.3\"\n    across = 40"))
	text, err := os.ReadFile("testdata/rules/swung.hcl")
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "swung.hcl")
	require.NoError(t, os.WriteFile(file, []byte(strings.Replace(string(text), "angle  = 90", "angle  = 90\n    across = 18", 1)), 0o644))
	planned(t, load(t, file, filepath.Join(worked, "workshop.hcl")))
}

// Seats of any size and place in blocks of any size are planned and proved, or refused for what holds them.
func TestRandomSeatsInFaces(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 14))
	cut := 0
	for i := range 8 {
		seat := fmt.Sprintf("on = %q\n", []string{"back", "front"}[random.IntN(2)])
		span := 40.0
		if random.IntN(2) == 0 {
			seat, span = seat+"angle = 90\n", 60
		}
		at := math.Round(span*(35+30*random.Float64())) / 100
		across := 2 * math.Max(at, span-at)
		if random.IntN(2) == 0 {
			across *= 0.4 + 0.5*random.Float64()
		}
		seat += fmt.Sprintf("at = %.2f\nacross = %.2f\nradius = %.2f", at, math.Floor(across*100)/100, across*(0.6+1.4*random.Float64()))
		p := answered(t, block(t, 24, seat))
		for _, r := range p.Parts[0].Refusals {
			assert.Contains(t, text(t, r), "seat.pipe", "%d: %s", i, seat)
		}
		if len(p.Parts[0].Refusals) == 0 {
			cut++
		}
	}
	assert.Greater(t, cut, 4, "most of them are cut")
}
