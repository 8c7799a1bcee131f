package planner_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
)

// saddlesDrawn is how many saddle flanges of chance are planned.
func saddlesDrawn() int {
	if os.Getenv("CATCHPLATE_SLOW") != "" {
		return 200
	}
	return 16
}

// Saddle flanges of chance, whose holes are square to the seat, are refused as drawn, refused with reasons, or planned and proved; and some of each.
func TestRandomLeaningHoles(t *testing.T) {
	text, err := os.ReadFile(leaningSaddle)
	require.NoError(t, err)
	shop, _, _ := strings.Cut(string(text), "part \"saddle\"")
	shop = strings.NewReplacer("[150, 3000]", "[150, 9000]", "[150, 4000]", "[150, 9000]").Replace(shop) // so that more than brass is planned
	planned, refused := 0, 0
	for seed := range saddlesDrawn() {
		hcl := shop + saddleOfChance(rand.New(rand.NewPCG(uint64(seed), 37)))
		job, _, found := partspec.Parse([]partspec.Source{{Name: "random.hcl", Text: []byte(hcl)}})
		if found.HasErrors() {
			for _, d := range found {
				assert.NotContains(t, d.Detail, "NaN", "seed %d", seed)
			}
			refused++
			continue
		}
		p := answered(t, job).Parts[0]
		if len(p.Refusals) == 0 {
			planned++
			assert.NotEmpty(t, setOver(t, p), "seed %d", seed)
		}
		if t.Failed() {
			t.Fatalf("seed %d\n%s", seed, hcl)
		}
	}
	assert.Greater(t, planned, saddlesDrawn()/4)
	assert.Positive(t, refused)
}

// saddleOfChance is a flange with a neck, deep enough for its seat.
func saddleOfChance(r *rand.Rand) string {
	pick := func(list ...float64) float64 { return list[r.IntN(len(list))] }
	radius, across := pick(32, 45, 60, 90), pick(44, 50, 56)
	sagitta := radius - math.Sqrt(radius*radius-across*across/4)
	thick, neck, on := math.Ceil(sagitta+pick(3, 5, 9)), pick(10, 16, 20), "left"
	blocks := []string{fmt.Sprintf("flange \"rim\" {\n diameter = %g\n length = %g\n}", across, thick), fmt.Sprintf("spigot \"neck\" {\n diameter = 24\n length = %g\n}", neck)}
	if r.IntN(2) == 0 {
		blocks[0], blocks[1], on = blocks[1], blocks[0], "right"
	}
	size := []string{`thread = "M3"`, "diameter = 3", `thread = "M4"`, "diameter = 4", `clearance = "M3"`}[r.IntN(5)]
	metal := []string{"brass", "mild steel", "gunmetal"}[r.IntN(3)]
	return fmt.Sprintf(`part "saddle" {
  material = %q
  length   = %g
  stock "bar" {
    diameter = 60
  }
  %s
  bore "way" {
    diameter = "16 H9"
  }
  holes "screws" {
    circle    = %g
    count     = %g
    start     = %g
    %s
    direction = "normal"
    position  = %g
  }
  seat "pipe" {
    on        = %q
    radius    = "%g ±0.2"
    angle     = %g
    finish_by = "file"
    leftover  = 0.1
  }
}
`, metal, thick+neck, strings.Join(blocks, "\n  "), pick(30, 32, 34), pick(3, 4, 5, 6, 8), pick(0, 15, 22.5, 30, 45, 90), size, pick(0.4, 0.5, 0.8), on, radius, pick(0, 90))
}
