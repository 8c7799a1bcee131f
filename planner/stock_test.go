package planner_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner"
)

// A piece is asked for as it is sold and sawn: up to a whole millimetre or a sixteenth of an inch, but as the drawing says where it does.
func TestPieceToFetch(t *testing.T) {
	for file, want := range map[string]string{
		"crank-web":  "plate 10 mm thick, a piece 56 mm by 30 mm",
		"hole-strip": "plate 1/8 in thick, a piece 2 3/16 in by 13/16 in",
		"cover-disc": "plate 5 mm thick, a piece 70.5 mm by 70.5 mm",
	} {
		p := planner.Plan(load(t, "testdata/shop/"+file+".hcl"), planner.Options{})
		require.Len(t, p.Parts, 1, file)
		assert.Contains(t, p.Parts[0].Stock.Text, want, file)
	}
}
