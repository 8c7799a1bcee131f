package planner_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec/parttest"
	"catchplate/planner"
)

// flatSeeds is how many random flat parts are tried; slowFlatSeeds in a slow run.
const (
	flatSeeds     = 12
	slowFlatSeeds = 200
)

// Whatever flat part is drawn is planned and proved, or refused with reasons, and twice the same.
func TestRandomFlatPartsAreProvedOrRefused(t *testing.T) {
	made, seeds := 0, flatSeeds
	if os.Getenv("CATCHPLATE_SLOW") != "" {
		seeds = slowFlatSeeds
	}
	for seed := range seeds {
		hcl := parttest.FlatPart().Example(seed).HCL(false)
		job := parsed(t, hcl)
		p, failures := planner.Proved(job, planner.Options{})
		for _, f := range failures {
			t.Errorf("seed %d: %v", seed, f)
		}
		for _, r := range p.Parts[0].Refusals {
			t.Logf("seed %d: %s: %v", seed, r.What, r.Reasons)
			assert.NotEmpty(t, r.Reasons, "seed %d: %s", seed, r.What)
		}
		if len(p.Parts[0].Setups) > 0 {
			made++
		}
	}
	t.Logf("%d of %d are made", made, seeds)
	assert.Greater(t, made, seeds/8, "hardly anything is made: the test would prove nothing")
}
