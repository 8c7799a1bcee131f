package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// What a mandrel is tightened by comes in from the free end: the screw of a plain spigot beside its play, the taper screw of a slit one as it is.
func TestAMandrelIsTightenedFromInFront(t *testing.T) {
	for _, c := range []struct {
		name, kind, holding       string
		bore, long, way, washerMM float64 // radii, but long
		says                      string  // empty: it holds
	}{
		{"a screw and washer", "mandrel", "stub", 8, 15, 8, 10, ""},
		{"a way too narrow for M3 and its play", "mandrel", "stub", 8, 15, 1.6, 10, "M3 is the least"},
		{"a way just wide enough", "mandrel", "stub", 8, 15, 1.75, 10, ""},
		{"a spigot too thin for M3", "mandrel", "stub", 2.4, 15, 2.4, 10, "M3 is the least"},
		{"no washer", "mandrel", "stub", 8, 15, 8, 0, "presses on a face whose hole"},
		{"a washer past the rim", "mandrel", "stub", 8, 15, 8, 21, "stands out over"},
		{"slit", "split_mandrel", "stub", 8, 15, 1.6, 0, ""},
		{"slit, with no way in", "split_mandrel", "stub", 8, 15, 1.4, 0, "no taper screw"},
		{"slit, with a washer", "split_mandrel", "stub", 8, 15, 8, 10, "none holds the work"},
		{"slit, too thin", "split_mandrel", "stub", 3, 15, 3, 0, "too small to slit"},
		{"expanding", "mandrel", "expanding", 8, 15, 8, 0, ""},
		{"expanding in a short bore", "mandrel", "expanding", 8, 5, 8, 0, "wants 0.7 of the diameter"},
		{"in a collet", "collet", "expanding", 8, 15, 8, 0, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			inner := solid.Const(0, 15, c.bore).Join(solid.Const(15, 20, c.way))
			kind := map[string]partspec.HoldingKind{"stub": partspec.StubMandrel, "expanding": partspec.ExpandingMandrel}[c.holding]
			w := &walk{record: &record{}, part: &partspec.Part{}, holding: partspec.Holding{Kind: kind}, body: solid.NewBody(solid.Const(0, 20, 20), inner),
				setup: plan.Setup{FreeEnd: "right", Grip: plan.Grip{Kind: c.kind, Inside: true, FromZ: 15 - c.long, ToZ: 15, RadiusMM: c.bore, WasherMM: c.washerMM}}}
			w.checkMandrel()
			if c.says == "" {
				require.Empty(t, w.failures)
				return
			}
			require.Len(t, w.failures, 1)
			assert.Contains(t, w.failures[0].Reason, c.says)
		})
	}
}
