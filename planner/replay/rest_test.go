package replay

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
)

// The ring's second face is cut while the first sits on the shoulder of a mandrel turned in place: 0.01, and the spindle's 0.005.
func TestParallelFacesByTheirSeat(t *testing.T) {
	good := ring(t)
	for within, held := range map[string]bool{"0.016": true, "0.014": false} {
		hcl := strings.Replace(ringHCL, "run_out {\n    of     = \"outside\"\n    to     = \"way\"\n    within = 0.05", "parallel {\n    of     = \"face.left\"\n    to     = \"face.right\"\n    within = "+within, 1)
		require.NotEqual(t, ringHCL, hcl)
		job, _, found := partspec.Parse([]partspec.Source{{Name: "t.hcl", Text: []byte(hcl)}})
		require.False(t, found.HasErrors(), "%v", found)
		job.Workshop = good.job.Workshop
		_, failures := Prove(job, good.plan())
		if held {
			assert.Empty(t, failures)
			continue
		}
		require.NotEmpty(t, failures)
		assert.Equal(t, "relation", failures[0].Clause)
	}
}

// A tube squeezed beyond what its wall bears is refused, though nothing round is cut in that grip.
func TestCrushedTubeIsRefused(t *testing.T) {
	good := ring(t)
	p := good.plan()
	s := &p.Parts[0].Setups[1]
	s.Holding, s.HoldingKind, s.Locates, s.RunOutMM, s.StickOutMM = "three_jaw", "three_jaw", "outside", 0.1, 2
	s.Grip = good.setup.Grip
	s.Grip.Kind, s.Grip.Surface, s.Grip.Inside, s.Grip.FromZ, s.Grip.ToZ, s.Grip.RadiusMM = "jaws", "outside", false, 15, 3, 18.98
	s.Grip.Jaws, s.Grip.JawWidthMM, s.Grip.Packing, s.Grip.LeastN = 3, float64(holdingNamed(good.job.Workshop, "three_jaw").JawWidth), "soft packing", 1000
	for force, crushed := range map[float64]bool{1000: false, 30000: true} {
		s.Grip.WorkingN = force
		_, failures := Prove(good.job, p)
		said := false
		for _, f := range failures {
			said = said || strings.Contains(f.String(), "the wall would yield")
		}
		assert.Equal(t, crushed, said, "%.0f N: %v", force, failures)
	}
}
