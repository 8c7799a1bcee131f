package parttest

import (
	"strings"

	"pgregory.net/rapid"
)

// Workshop draws a valid workshop: the least that any turned part needs, and
// more of it by chance.
func Workshop() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		var b strings.Builder
		b.WriteString("workshop \"shed\" {\n  machine \"lathe\" {\n")
		b.WriteString(rapid.SampledFrom(speeds).Draw(t, "speeds"))
		b.WriteString(rapid.SampledFrom(dials).Draw(t, "dials"))
		b.WriteString("  }\n")
		b.WriteString(least)
		for _, block := range more {
			if rapid.Bool().Draw(t, strings.Fields(block)[1]) {
				b.WriteString(block)
			}
		}
		b.WriteString("}\n")
		return b.String()
	})
}

var speeds = []string{
	"    swing = 180\n    spindle_bore = 20\n    power_kw = 0.55\n    speeds = [60, 100, 160, 250, 400, 630, 1000, 1600]\n    leadscrew_pitch = 2\n",
	"    swing = 230\n    spindle_bore = 35\n    power_kw = 1.1\n    slowest_speed = 50\n    fastest_speed = 2500\n",
	"    speeds = [130, 400, 900]\n    leadscrew_pitch = \"1/8 in\"\n    change_wheels = [20, 30, 40, 50, 60, 127]\n",
}

var dials = []string{
	`    dial "cross" {
      graduation = 0.02
      per_turn = 1
      reads = "diameter"
      backlash = 0.1
    }
    dial "top" {
      graduation = 0.02
      per_turn = 1
    }
    dial "saddle" {
      graduation = 0.1
      per_turn = 20
    }
`,
	`    dial "cross" {
      graduation = 1 * thou
      per_turn = 100 * thou
      reads = "radius"
      backlash = 5 * thou
    }
    dial "top" {
      graduation = 1 * thou
      per_turn = 100 * thou
    }
`,
	`    dial "cross" {
      graduation = 0.01
      reads = "indicator"
    }
    dial "saddle" {
      graduation = 0.05
      per_turn = 10
    }
`,
}

const least = `  machine "bench" {}
  holding "three_jaw" {
    capacity = [2, 100]
    inside = [25, 90]
    jaw_length = 20
    run_out = 0.08
    grip_force = [150, 2500]
  }
  holding "four_jaw" {
    capacity = [3, 120]
    run_out = 0.02
  }
  tool "centre_drill" {
    sizes = [2.5]
  }
  tool "drills" {
    set = "metric"
    from = 1
    to = 13
    step = 0.5
  }
  tool "turning" {
    name = "right-hand knife"
    hand = "right"
    nose_radius = 0.2
  }
  tool "turning" {
    name = "left-hand knife"
    hand = "left"
    nose_radius = 0.2
  }
  tool "boring" {
    bar_diameter = 8
    least_bore = 10
    reach = 40
    nose_radius = 0.2
  }
  tool "parting" {
    width = 2
    reach = 30
  }
  measuring "caliper" {
    range = [0, 150]
    resolution = 0.02
  }
  measuring "micrometer" {
    range = [0, 75]
    resolution = 0.01
  }
`

var more = []string{
	"  machine \"drill\" {\n    speeds = [250, 500, 1000]\n  }\n",
	"  holding \"collets\" {\n    sizes = [6, 8, 10, 12, 16, 20]\n    range = 0.5\n    run_out = 0.02\n    grip_length = 26\n  }\n",
	"  holding \"soft_jaws\" {\n    capacity = [10, 80]\n    run_out = 0.02\n  }\n",
	"  holding \"stub_mandrel\" {\n    capacity = [5, 60]\n  }\n",
	"  holding \"plain_mandrel\" {\n    sizes = [8, 10, 12, 16, 20]\n  }\n",
	"  holding \"expanding_mandrel\" {\n    capacity = [10, 40]\n  }\n",
	"  holding \"glued_arbor\" {\n    capacity = [10, 80]\n  }\n",
	"  holding \"between_centres\" {}\n",
	"  holding \"tailstock\" {}\n",
	"  tool \"reamers\" {\n    sizes = [5, 6, 8, 10, 12, 16, 20]\n  }\n",
	"  tool \"grooving\" {\n    width = 1\n    reach = 10\n  }\n",
	"  tool \"recess\" {\n    width = 1.5\n    depth = 3\n    least_bore = 8\n    reach = 30\n  }\n",
	"  tool \"round_nose\" {\n    radius = 2\n    reach = 10\n  }\n",
	"  tool \"chamfer\" {\n    angle = 45\n  }\n",
	"  tool \"thread_external\" {\n    pitches = [0.5, 3]\n  }\n",
	"  tool \"taps\" {\n    threads = [\"M6\", \"M8\", \"M10\"]\n  }\n",
	"  tool \"dies\" {\n    threads = [\"M10\", \"M12\", \"BSW 1/2\"]\n  }\n",
	"  tool \"knurl\" {\n    pitches = [0.8, 1]\n  }\n",
	"  tool \"saw\" {\n    kerf = 1.2\n  }\n",
	"  tool \"files\" {}\n",
	"  measuring \"bore_gauge\" {\n    range = [6, 75]\n    resolution = 0.01\n  }\n",
	"  measuring \"depth_micrometer\" {\n    range = [0, 50]\n    resolution = 0.01\n  }\n",
	"  measuring \"dial_indicator\" {\n    resolution = 0.01\n  }\n",
}
