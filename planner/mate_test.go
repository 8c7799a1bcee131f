package planner_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A spindle that goes in the float pulley's bore: what the fit leaves it hangs on the bore as it was made.
const spindle = `
part "spindle" {
  material = "free-cutting steel"
  length   = 40
  stock "bar" {
    diameter = 10
  }
  spigot "journal" {
    diameter = 8
    length   = 30
  }
  spigot "head" {
    diameter = 9.5
  }
}
fit "spindle_in_pulley" {
  hole  = "float_pulley.main"
  shaft = "spindle.journal"
  class = "H7/f7"
}
`

// Entering the measured bore of the pulley changes the spindle that goes in it, what the drawing says of the bore, and nothing else.
func TestMeasuredBoreChangesTheMateOnly(t *testing.T) {
	with := func(bore string) any {
		return tree(t, answered(t, edited(t, `diameter = "8 H7"`, bore, spindle, filepath.Join(examples, "float-pulley.hcl"), filepath.Join(examples, "workshop.hcl"))))
	}
	changed := differences(with("diameter = 8"), with("diameter = 8\nmeasured = 8.012"), "")
	mate, others := 0, []string{}
	for _, c := range changed {
		if strings.HasPrefix(c, "parts/1/setups/") || strings.HasPrefix(c, "parts/1/drawing/") {
			mate++
			continue
		}
		// The spindle may be made another way or refused, and the plan cites the rules of both parts.
		if c != "parts/0/drawing/notes" && c != "rules" && !strings.HasPrefix(c, "parts/1/") {
			others = append(others, c)
		}
	}
	assert.Empty(t, others, "changed with the measured bore of the pulley")
	assert.Positive(t, mate, "the spindle does not follow the bore: %v", changed)
}
