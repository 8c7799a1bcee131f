package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// A part as a drawing of rework has it, and one that is bought.
func TestExistingAndBought(t *testing.T) {
	job := read(t, `
part "bush" {
  material = "bronze"
  length = 30
  stock "existing" {
    length = 34
    at = 2
    spigot "old" {
      diameter = 40
    }
    bore "worn" {
      diameter = 20.3
    }
  }
  spigot "outside" {
    diameter = 40
    as_supplied = true
  }
  bore "hole" {
    diameter = "22 H7"
  }
}
part "bearing" {
  material = "mild steel"
  length = 7
  bought = true
  quantity = 2
  spigot "outside" {
    diameter = "22 -0 -0.009"
    measured = 21.995
  }
}`)
	bush := job.Part("bush")
	assert.Equal(t, partspec.Existing, bush.Stock.Kind)
	assert.Equal(t, units.Length(-2), bush.Stock.At)
	assert.Equal(t, units.Length(40), bush.Stock.Outside.Value)
	assert.Equal(t, units.Length(20.3), bush.Stock.Inside.Value)
	assert.Len(t, bush.Stock.Features, 2)
	bearing := job.Part("bearing")
	assert.True(t, bearing.Bought)
	assert.Equal(t, 2, bearing.Quantity)
	assert.Equal(t, units.Length(21.995), *feature[*partspec.Spigot](t, job, "bearing", "outside").Measured)
	assert.Equal(t, units.Length(22), feature[*partspec.Spigot](t, job, "bearing", "outside").Diameter.Value)
	assert.True(t, job.Workshop.BuiltIn)
}

func TestRelations(t *testing.T) {
	job := read(t, brassPart(`
spigot "stem" {
  diameter = 20
  length = 15
}
flange "rim" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
run_out {
  of = "rim.left"
  to = "way"
  within = 0.02
}
square {
  of = "face.right"
  to = "way"
  within = 0.01
}
parallel {
  of = "face.left"
  to = "rim.left"
  within = 0.05
}
concentric {
  of = "stem"
  to = "way"
  within = 0.03
}`))
	relations := job.Part("p").Relations
	require.Len(t, relations, 4)
	assert.Equal(t, partspec.RunOut, relations[0].Kind)
	assert.Equal(t, "rim.left", relations[0].Of.String())
	assert.Equal(t, partspec.Square, relations[1].Kind)
	assert.Equal(t, partspec.Parallel, relations[2].Kind)
	assert.Equal(t, partspec.Concentric, relations[3].Kind)
	assert.Equal(t, units.Length(0.03), relations[3].Within)
}
