package planner_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
)

// clampsOwned gives a workshop so many clamps for its table and so many for its faceplate.
func clampsOwned(job *partspec.Job, count int) *partspec.Job {
	return withShop(job, func(w *partspec.Workshop) {
		w.Holdings = slices.Clone(w.Holdings)
		for i := range w.Holdings {
			if k := w.Holdings[i].Kind; k == partspec.TableClamps || k == partspec.Faceplate {
				w.Holdings[i].Clamps = count
			}
		}
	})
}

// With fewer clamps the cover is planned another way at no less cost, or refused with what clamps want (rule B-07); nothing is ever held by more clamps than are owned.
func TestFewerClampsAreMissed(t *testing.T) {
	job := exampleParts(t)["cover"]
	cost, refused := 0.0, false
	for _, count := range []int{4, 3, 2} {
		part := answered(t, clampsOwned(job, count)).Parts[0]
		if len(part.Refusals) > 0 {
			refused = true
			assert.Contains(t, fmt.Sprint(part.Refusals), "B-07", "%d clamps", count)
			continue
		}
		require.False(t, refused, "%d clamps do what more could not", count)
		assert.GreaterOrEqual(t, part.Order.CostMinutes, cost-sameCost, "%d clamps", count)
		cost = part.Order.CostMinutes
		for _, s := range part.Setups {
			assert.LessOrEqual(t, len(s.Clamps), count, s.Title)
		}
	}
	assert.True(t, refused, "two clamps hold a plate on a faceplate")
}
