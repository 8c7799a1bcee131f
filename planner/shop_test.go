package planner_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestPartsOfAShop: what a shop with a small mill makes every week is planned, and its replay proves it. Each part once had no plan, or one that its replay refuted.
func TestPartsOfAShop(t *testing.T) {
	files, err := filepath.Glob("testdata/shop/*.hcl")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			planned(t, load(t, file))
		})
	}
}

// What one grip holds throughout is not eased: the edges of this foot ask no more of the vice before its bore than after it.
func TestOneGripIsNotEased(t *testing.T) {
	planned(t, load(t, "../examples/tide-gauge/workshop.hcl", "testdata/shop/cast-foot.hcl"))
}

// A key's slot is milled with a cutter smaller than it where no other is owned: what stands in the middle of its round end is shared with what is cut beside it.
func TestSlotByASmallerCutter(t *testing.T) {
	planned(t, load(t, "testdata/shop/keyed-hub.hcl", "../examples/tide-gauge/workshop.hcl"))
}
