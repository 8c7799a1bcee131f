package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// A hole saw's block says as much of its cup, pilot and teeth as is known; the rest is that of a common one.
func TestHoleSawIsCompleted(t *testing.T) {
	const text = `
workshop "shed" {
  machine "bench" {}
  tool "hole_saw" {
    sizes = [54, 25]
  }
  tool "hole_saw" {
    name  = "deep saws"
    sizes = [32]
    depth = 45
    pilot = 8
    lead  = 10
    kerf  = 1.8
  }
}
part "blank" {
  material  = "brass"
  thickness = 3
  stock "plate" {
    thickness         = 3
    faces_as_supplied = true
  }
  outline "rectangle" {
    width  = 20
    height = 20
  }
}
`
	job, _, found := partspec.Parse([]partspec.Source{{Name: "saws.hcl", Text: []byte(text)}})
	require.False(t, found.HasErrors(), "%v", found)
	require.Len(t, job.Workshop.Tools, 2)
	common, deep := job.Workshop.Tools[0], job.Workshop.Tools[1]
	assert.Equal(t, []units.Length{25, 54}, common.Sizes)
	assert.Equal(t, []units.Length{25, 6.35, 8, 2}, []units.Length{common.Depth, common.Pilot, common.Lead, common.Kerf})
	assert.Equal(t, []units.Length{45, 8, 10, 1.8}, []units.Length{deep.Depth, deep.Pilot, deep.Lead, deep.Kerf})
}
