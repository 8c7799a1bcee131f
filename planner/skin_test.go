package planner_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner"
	"catchplate/planner/rules"
)

// skinned is a pin out of black or cast bar that is so much larger than it.
func skinned(metal, tolerance string, over float64) string {
	return fmt.Sprintf(`part "pin" {
  material = %q
  length   = 40
  stock "bar" {
    diameter = %g
    rough    = true
  }
  spigot "stem" {
    diameter = "24%s"
    length   = 25
  }
  flange "end" { diameter = 20 }
}`, metal, 24+over, tolerance)
}

// However much there is to come off, the first cut along black or cast bar goes under its skin, or takes what there is.
func TestUnderTheSkin(t *testing.T) {
	for _, metal := range []string{"cast iron", "gunmetal", "steel-mild-hot-rolled"} {
		for _, over := range []float64{0.6, 2, 3, 3.4, 3.8, 6, 20} {
			for _, tolerance := range []string{"", " ±0.03"} {
				t.Run(fmt.Sprint(metal, over, tolerance), func(t *testing.T) {
					planned(t, parsed(t, skinned(metal, tolerance, over)))
				})
			}
		}
	}
}

// Without the rule the replay refuses the plan, as it finds the edge rubbing in the skin.
func TestSkinIsProved(t *testing.T) {
	bare := rules.All().Without("A-24")
	_, failures := planner.Proved(parsed(t, skinned("cast iron", " ±0.03", 6)), planner.Options{Rules: &bare})
	require.NotEmpty(t, failures)
	assert.Contains(t, failures[0].String(), "under the skin")
}

// A cone that would begin in the skin is refused, and told what stock serves.
func TestConeInTheSkin(t *testing.T) {
	p := planner.Plan(parsed(t, `part "plug" {
  material = "cast iron"
  length   = 40
  stock "bar" {
    diameter = 30.4
    rough    = true
  }
  taper "cone" {
    large    = 30
    small    = 24
    length   = 15
    large_at = "left"
  }
  spigot "end" { diameter = 22 }
}`), planner.Options{})
	require.NotEmpty(t, p.Parts[0].Refusals)
	assert.Contains(t, fmt.Sprint(p.Parts[0].Refusals), "take stock that is at least 3 larger")
}

// Random parts out of black bar are refused, or their plans are proved.
func TestRandomPartsInTheSkin(t *testing.T) {
	made := 0
	for seed := range randomParts() {
		part, shop := drawnOf(seed)
		job := parsed(t, part.HCL(seed%5 == 0)+shop)
		for _, p := range job.Parts {
			p.Stock.Rough = true
		}
		p, failures := planner.Proved(job, planner.Options{})
		require.Empty(t, failures, "seed %d:\n%s", seed, part.HCL(seed%5 == 0))
		made += len(p.Parts[0].Setups)
	}
	assert.Positive(t, made, "none is planned")
}
