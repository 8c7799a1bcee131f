package planner_test

import (
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A knurled screw is knurled between roughing and finishing, and its head is faced in a split bush threaded for it.
func TestThumbScrewIsHeldByItsThread(t *testing.T) {
	part := planned(t, load(t, filepath.Join("testdata", "rules", "thumb-screw.hcl"), filepath.Join(examples, "workshop.hcl")))
	var order []string
	for _, m := range timeline(part) {
		order = append(order, m.ID)
	}
	assert.Subset(t, order, []string{"spigot.shank/rough", "knurl.grip/knurl", "spigot.shank/turn"})
	assert.Less(t, slices.Index(order, "spigot.shank/rough"), slices.Index(order, "knurl.grip/knurl"))
	assert.Less(t, slices.Index(order, "knurl.grip/knurl"), slices.Index(order, "spigot.shank/turn"))
	require.Len(t, part.Setups, 2)
	assert.Equal(t, "m6", part.Setups[1].Locates)
	require.Len(t, part.MakeFirst, 1)
	assert.Contains(t, part.MakeFirst[0].Title, "Split threaded bush")
}

// Parallel faces are cut in two settings, the second of which sits on the first face; closer than a seat runs true they are refused.
func TestParallelFacesSitOnEachOther(t *testing.T) {
	file := filepath.Join("testdata", "rules", "spacer.hcl")
	part := planned(t, load(t, file))
	require.Len(t, part.Setups, 2)
	assert.Equal(t, "stub_mandrel", part.Setups[1].HoldingKind)

	close := answered(t, edited(t, "within = 0.02", "within = 0.01", "", file)).Parts[0]
	require.NotEmpty(t, close.Refusals)
	assert.Contains(t, close.Refusals[0].Reasons[0], "face.right is made in another setting")
}

// A plug with a short hexagon is turned and threaded from its bar, and turned round in a threaded bush: gluing it on would take twice as long.
func TestBushIsWeighedAgainstGlue(t *testing.T) {
	part := planned(t, load(t, filepath.Join("testdata", "shop", "drain-plug.hcl")))
	require.Len(t, part.Setups, 2)
	assert.Equal(t, "run", part.Setups[1].Locates)
	assert.Contains(t, part.MakeFirst[0].Title, "Split threaded bush")
}
