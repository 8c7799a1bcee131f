package planner_test

import (
	"fmt"
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

// withText is a file's job with some of its text written otherwise.
func withText(t *testing.T, file string, change ...string) *partspec.Job {
	t.Helper()
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	changed := filepath.Join(t.TempDir(), filepath.Base(file))
	require.NoError(t, os.WriteFile(changed, []byte(strings.NewReplacer(change...).Replace(string(text))), 0o644))
	return load(t, changed)
}

// Whatever is counted by whatever plates, no plan is refuted by the replay: what a head cannot turn to is refused, or done otherwise.
func TestRandomDivisionsAreProvedOrRefused(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 24))
	turned := 0
	for range 12 {
		ring, flats, start := 2+r.IntN(11), 2+r.IntN(7), r.IntN(360)
		ratio := []int{1, 40, 60, 90}[r.IntN(4)]
		plates := []int{15 + r.IntN(35), 15 + r.IntN(35)}
		class := []string{"f", "m", "c"}[r.IntN(3)]
		change := func(h *partspec.Holding) {
			h.Ratio, h.Plates, h.Direct = ratio, plates, nil
			if ratio == 1 {
				h.Ratio, h.Plates, h.Direct = 0, nil, plates
			}
		}
		of := fmt.Sprintf("%d holes from %d, %d flats, %d turns, %v, class %s", ring, start, flats, ratio, plates, class)
		for _, job := range []*partspec.Job{
			withText(t, dividingRing, "count     = 7", fmt.Sprintf("count     = %d", ring), "start     = 90", fmt.Sprintf("start     = %d", start), "length   = 30\n", fmt.Sprintf("length   = 30\n  general = %q\n", class)),
			withText(t, "testdata/rules/dividing-coarse.hcl", "count    = 7", fmt.Sprintf("count    = %d", flats), "length   = 54\n", fmt.Sprintf("length   = 54\n  general = %q\n", class)),
		} {
			p, failures := planner.Proved(withHead(job, change), planner.Options{})
			assert.Empty(t, failures, of)
			for _, s := range p.Parts[0].Setups {
				if s.Dividing != nil {
					turned++
				}
			}
		}
	}
	assert.Greater(t, turned, 8, "heads are used")
}
