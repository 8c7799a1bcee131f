package planner_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner"
)

// Parts that their workshop cannot make are refused with the reason, where the replay once had to refute a plan.
func TestWhatIsTooMuchForAShopIsRefused(t *testing.T) {
	pin := `part "pin" {
  material = "brass"
  length   = %s
  stock "bar" {
    diameter = %s
  }
  spigot "body" {
    diameter = %s
  }
}
`
	bush := `part "bush" {
  material = "bronze"
  length   = 28
  stock "bar" {
    diameter = 32
  }
  spigot "body" {
    diameter = 20
  }
  bore "way" {
    diameter = 12
  }
  groove "oil" {
    on    = "body"
    at    = 11 - %[1]s / 2
    width = %[1]s
    depth = 1
  }
  cross_hole "feed" {
    on       = "body"
    at       = 11
    diameter = 2
    into     = "way"
  }
}
`
	ruled := `workshop "ruled" {
  machine "lathe" {
    speeds = [250, 630, 1600]
    dial "cross" {
      graduation = 0.02
      per_turn   = 1
      reads      = "diameter"
    }
    dial "saddle" {
      graduation = 0.1
      per_turn   = 20
    }
  }
  holding "three_jaw" {
    capacity = [2, 80]
  }
  tool "turning" {
    hand = "right"
  }
  tool "parting" {
    width = 2
    reach = 20
  }
  measuring "micrometer" {
    range      = [0, 25]
    resolution = 0.01
  }
  measuring "rule" {
    resolution = 0.5
  }
}
`
	for name, c := range map[string]struct{ text, reason string }{
		"over the saddle's travel":     {fmt.Sprintf(pin, "400", "100", "90"), "the saddle would go 407, its travel is 320"},
		"over the centres' distance":   {fmt.Sprintf(pin, "400", "100", "90"), "between the lathe's centres"},
		"a bar not through the chuck":  {fmt.Sprintf(pin, "20", "50\n    length = 500", "46"), "back behind the jaws, and not through the spindle's bore"},
		"a length nobody can measure":  {fmt.Sprintf(pin, "57", "12", "10") + ruled, "facing to length: no instrument owned takes 57 mm within 0.050"},
		"a hole as wide as its groove": {fmt.Sprintf(bush, "2"), "feed: it enters groove oil and may lie 0.20 off"},
	} {
		t.Run(name, func(t *testing.T) {
			p, failures := planner.Proved(parsed(t, c.text), planner.Options{})
			assert.Empty(t, failures)
			require.NotEmpty(t, p.Parts[0].Refusals)
			assert.Contains(t, fmt.Sprint(p.Parts[0].Refusals), c.reason)
		})
	}
	p, failures := planner.Proved(parsed(t, fmt.Sprintf(bush, "3")), planner.Options{})
	assert.Empty(t, failures)
	assert.Empty(t, p.Parts[0].Refusals, "a groove with room for the hole")
}
