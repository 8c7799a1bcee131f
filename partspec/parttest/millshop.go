package parttest

import (
	"strings"

	"pgregory.net/rapid"
)

// FlatJob draws a valid job of one flat part: its HCL text, sometimes with a workshop of its own that has a mill.
func FlatJob() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		text := FlatPart().Draw(t, "part").HCL(rapid.Bool().Draw(t, "inches"))
		if rapid.Bool().Draw(t, "own workshop") {
			text += MillWorkshop().Draw(t, "workshop")
		}
		return text
	})
}

// MillWorkshop draws a valid workshop with the least that flat parts need: a lathe, a mill, a drilling machine and a bench with their kit, and more by chance.
func MillWorkshop() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		var b strings.Builder
		b.WriteString("workshop \"mill_shed\" {\n  machine \"lathe\" {\n")
		b.WriteString(rapid.SampledFrom(speeds).Draw(t, "speeds"))
		b.WriteString(rapid.SampledFrom(dials).Draw(t, "dials"))
		b.WriteString("  }\n")
		b.WriteString(rapid.SampledFrom(mills).Draw(t, "mill"))
		b.WriteString(least + flatLeast)
		for _, block := range flatMore {
			if rapid.Bool().Draw(t, strings.Fields(block)[1]) {
				b.WriteString(block)
			}
		}
		b.WriteString("}\n")
		return b.String()
	})
}

var mills = []string{
	`  machine "mill" {
    power_kw = 0.6
    speeds = [100, 200, 400, 800, 1600]
    dial "x" {
      graduation = 0.02
      per_turn = 2
      backlash = 0.1
      travel = 250
    }
    dial "y" {
      graduation = 0.02
      per_turn = 2
      backlash = 0.1
      travel = 110
    }
    dial "quill" {
      graduation = 0.05
      per_turn = 2.5
      travel = 50
    }
  }
`,
	`  machine "mill" {
    slowest_speed = 80
    fastest_speed = 2500
    dial "x" {
      graduation = 1 * thou
      per_turn = 100 * thou
    }
    dial "y" {
      graduation = 1 * thou
      per_turn = 100 * thou
    }
    dial "z" {
      graduation = 1 * thou
      per_turn = 100 * thou
    }
  }
`,
}

const flatLeast = `  machine "drill" {
    speeds = [250, 500, 1000, 2000]
  }
  holding "vice" {
    opening = 80
    jaw_width = 80
    jaw_height = 25
    squareness = 0.03
  }
  holding "table_clamps" {
    clamps = 4
    clamp_force = 3000
    toe_width = 12
  }
  tool "end_mill" {
    sizes = [4, 6, 10, 16]
  }
  tool "scriber" {
    accuracy = 0.2
  }
  tool "saw" {
    kerf = 1.2
  }
  tool "files" {}
`

var flatMore = []string{
	"  holding \"faceplate\" {\n    diameter = 160\n    clamps = 4\n    clamp_force = 3000\n    toe_width = 10\n  }\n",
	"  holding \"angle_plate\" {\n    squareness = 0.03\n    clamps = 2\n  }\n",
	"  holding \"vertical_slide\" {\n    opening = 50\n    jaw_height = 20\n    graduation = 0.02\n    per_turn = 1\n    travel = 90\n  }\n",
	"  holding \"glued_arbor\" {\n    capacity = [10, 120]\n  }\n",
	"  holding \"stub_mandrel\" {\n    capacity = [5, 60]\n  }\n",
	"  tool \"edge_finder\" {\n    accuracy = 0.02\n  }\n",
	"  tool \"fly_cutter\" {\n    swing = [20, 60]\n    nose_radius = 0.5\n  }\n",
	"  tool \"boring_head\" {\n    swing = [8, 50]\n    reach = 40\n  }\n",
	"  tool \"hole_saw\" {\n    sizes = [20, 25, 32, 40]\n  }\n",
	"  tool \"counterbores\" {\n    sizes = [6, 8, 10]\n  }\n",
	"  tool \"countersink\" {\n    sizes = [8.3, 12.4]\n  }\n",
	"  tool \"reamers\" {\n    sizes = [3, 4, 5, 6, 8, 10]\n  }\n",
	"  tool \"taps\" {\n    threads = [\"M3\", \"M4\"]\n  }\n",
}
