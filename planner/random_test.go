package planner_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec/parttest"
	"catchplate/planner"
)

// Whatever is drawn is planned and proved, or refused with reasons; twice the same, and in the order of the workshop's file or another.
func TestRandomPartsAreProvedOrRefused(t *testing.T) {
	made, asked := 0, 0
	drawn(t, func(t *testing.T, seed int, part parttest.PartText, shop string) {
		job := parsed(t, part.HCL(false)+shop)
		p := answered(t, job)
		asked++
		if len(p.Parts[0].Setups) > 0 {
			made++
		}
		if t.Failed() {
			t.Log(part.HCL(false) + shop)
		}
		if seed%5 == 0 {
			again, _ := planner.Proved(job, planner.Options{})
			assert.Equal(t, text(t, p), text(t, again), "planned twice")
		}
	})
	t.Logf("%d of %d random parts are made", made, asked)
	assert.Greater(t, made, asked/6, "hardly anything is made: the test would prove nothing")
}
