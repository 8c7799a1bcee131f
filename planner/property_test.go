package planner_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// randomParts is how many parts are drawn: 1,000 where time is no matter.
func randomParts() int {
	if os.Getenv("CATCHPLATE_SLOW") != "" {
		return 1000
	}
	return 150
}

// parsed is a drawn part in its own workshop, or in the built-in one.
func parsed(t testing.TB, hcl string) *partspec.Job {
	t.Helper()
	job, _, found := partspec.Parse([]partspec.Source{{Name: "random.hcl", Text: []byte(hcl)}})
	require.False(t, found.HasErrors(), "%v\n%s", found, hcl)
	return job
}

// drawn runs a check on every random part. The seed of each is its number, so that a failure can be found again.
func drawn(t *testing.T, check func(t *testing.T, seed int, part parttest.PartText, shop string)) {
	for seed := range randomParts() {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			part, shop := drawnOf(seed)
			check(t, seed, part, shop)
		})
	}
}

// drawnOf is the part of a seed, and the workshop that some have; the others are made in the built-in one.
func drawnOf(seed int) (part parttest.PartText, shop string) {
	if seed%3 == 0 {
		shop = parttest.Workshop().Example(seed)
	}
	part = parttest.Part().Example(seed)
	if seed%2 == 0 {
		part = plain(part)
	}
	return part, shop
}

// majors are the sizes of the threads that are drawn.
var majors = map[string]float64{"M10": 10, "M12": 12, "M16x1.5": 16, "M20x1.5": 20, "BSW 1/2": 12.7}

// plain is a part without what an ordinary workshop refuses for good reasons: vees, knurls of odd pitch, round corners, threads up to a
// shoulder, fine or stepped holes smaller than any boring bar.
func plain(p parttest.PartText) parttest.PartText {
	var left []parttest.Block
	blank, dropped := map[string]float64{}, map[string]bool{}
	for _, b := range p.Blocks {
		text := map[string]string{}
		for _, v := range b.Values {
			text[v.Name] = strings.Trim(v.Text, `"`)
		}
		switch {
		case b.Word == "thread":
			blank[text["on"]] = majors[text["size"]]
		case b.Word == "knurl", b.Word == "fillet", b.Word == "counterbore", b.Word == "recess", b.Word == "groove" && text["angle"] != "":
			dropped[b.Name] = true
		case dropped[text["of"]] || dropped[text["to"]]:
		default:
			left = append(left, b)
		}
	}
	for i, b := range left {
		left[i].Values = slices.Clone(b.Values)
		if d := blank[b.Name]; d > 0 {
			left[i].Values = append(left[i].Values, parttest.Value{Name: "diameter", Length: d})
		}
		if b.Word == "bore" {
			left[i].Values[0].Limits = ""
		}
	}
	p.Blocks = left
	return p
}

// The order in which a workshop lists its tools decides nothing but between equals: the cost is the same.
func TestOrderOfToolsInTheFileDecidesNothing(t *testing.T) {
	for _, name := range []string{"flanged-bush", "bezel-ring", "gland-nut"} {
		job := workedJob(t, name)
		turned := withShop(job, func(w *partspec.Workshop) {
			w.Tools = slices.Clone(w.Tools)
			slices.Reverse(w.Tools)
		})
		assert.InDelta(t, planned(t, job).Order.CostMinutes, planned(t, turned).Order.CostMinutes, sameCost, name)
	}
}

// A part written in inches, each size divided by 25.4, is made in the same way.
func TestInchesDecideNothing(t *testing.T) {
	drawn(t, func(t *testing.T, seed int, part parttest.PartText, shop string) {
		if seed%3 != 1 {
			return
		}
		metric, inch := planner.Plan(parsed(t, part.HCL(false)+shop), planner.Options{}), planner.Plan(parsed(t, part.HCL(true)+shop), planner.Options{})
		assert.Equal(t, decisions(metric.Parts[0]), decisions(inch.Parts[0]), part.HCL(true)+shop)
	})
}

// decisions is what is done, where and with which tool.
func decisions(p plan.Part) []string {
	var list []string
	for _, m := range timeline(p) {
		list = append(list, m.setup.ID+" | "+m.ID+" | "+m.Tool.ID)
	}
	for _, r := range p.Refusals {
		list = append(list, "refused "+r.What)
	}
	return list
}

// One more holding or tool never makes a proven plan dearer, nor a part impossible.
func TestOneMoreNeverCosts(t *testing.T) {
	const collets = "  holding \"collets\" {\n    name = \"more collets\"\n    sizes = [8, 10, 12, 16, 20, 25]\n    range = 0.5\n    run_out = 0.02\n    grip_length = 26\n  }\n"
	const bar = "  tool \"boring\" {\n    name = \"one more bar\"\n    bar_diameter = 10\n    least_bore = 13\n    reach = 45\n    nose_radius = 0.2\n  }\n"
	drawn(t, func(t *testing.T, seed int, part parttest.PartText, shop string) {
		if seed%3 != 0 {
			return
		}
		poor := planner.Plan(parsed(t, part.HCL(false)+shop), planner.Options{}).Parts[0]
		for name, more := range map[string]string{"collets": collets, "boring bar": bar} {
			rich := planner.Plan(parsed(t, part.HCL(false)+strings.TrimSuffix(shop, "}\n")+more+"}\n"), planner.Options{}).Parts[0]
			switch {
			case len(poor.Refusals) > 0:
			case len(rich.Refusals) > 0:
				assert.Fail(t, "refused with one more "+name, part.HCL(false)+shop)
			case rich.Order.Proven:
				assert.LessOrEqual(t, rich.Order.CostMinutes, poor.Order.CostMinutes+sameCost, "%s\n%s", name, part.HCL(false)+shop)
			}
		}
	})
}
