package planner_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
)

const sawnFlange = "testdata/rules/sawn-flange.hcl"

// sawn is the job of the flange that is sawn open, with lines of its file written otherwise: old and new in turn.
func sawn(t *testing.T, otherwise ...string) *partspec.Job {
	t.Helper()
	text, err := os.ReadFile(sawnFlange)
	require.NoError(t, err)
	for i := 0; i < len(otherwise); i += 2 {
		require.Contains(t, string(text), otherwise[i])
	}
	return parsed(t, strings.NewReplacer(otherwise...).Replace(string(text)))
}

// processesOf are the processes by which a feature is made, with the sizes of their tools, in order.
func processesOf(p plan.Part, feature string) (list []string) {
	for _, s := range p.Setups {
		for _, o := range s.Operations {
			if o.Feature == feature {
				list = append(list, string(o.Process)+" "+strings.TrimSuffix(o.Tool.Text, " hole saw"))
			}
		}
	}
	return list
}

// A hole saw opens a bore for the boring head as near to its size as its wandering lets it, and makes a hole of wide limits by itself.
func TestHoleSawOpensAndFinishes(t *testing.T) {
	p := planned(t, sawn(t))
	assert.Equal(t, []string{"drill 6.4 mm drill", "saw_hole 57 mm", "bore_head boring head", "bore_head boring head"}, processesOf(p, "pipe"))
	assert.Equal(t, []string{"drill 6.4 mm drill", "saw_hole 32 mm"}, processesOf(p, "wire"))

	p = planned(t, sawn(t, "sizes = [25, 32, 40, 54, 57]", "sizes = [25, 32, 40, 54, 59]"))
	assert.Contains(t, processesOf(p, "pipe"), "saw_hole 54 mm", "59 may come out at 60.5")
}

// Where the bore is small enough for the drills owned, or no saw will do, the bore is drilled and bored as ever.
func TestBoreWithoutAHoleSaw(t *testing.T) {
	p := planned(t, sawn(t, `diameter = "60 H8"`, `diameter = "22 H8"`))
	assert.Equal(t, []string{"drill 20 mm drill", "bore_head boring head", "bore_head boring head"}, processesOf(p, "pipe"))
	for name, otherwise := range map[string][]string{
		"too thick for the cup":        {"depth = 30", "depth = 10.5"},
		"no drill for the pilot":       {"pilot = 6.35", "pilot = 13.5"},
		"no machine slow enough":       {"speeds   = [90, 120, 200, 350, 600, 1000, 1600]", "speeds   = [600, 1000, 1600]", "speeds = [250, 500, 1000, 2000]", "speeds = [500, 1000, 2000]"},
		"only the drilling machine is": {"speeds   = [90, 120, 200, 350, 600, 1000, 1600]", "speeds   = [600, 1000, 1600]", "speeds = [250, 500, 1000, 2000]", "speeds = [60, 500, 1000, 2000]"},
	} {
		t.Run(name, func(t *testing.T) {
			p := planned(t, sawn(t, append(otherwise, `diameter = "32 +2 -0"`, "diameter = 12")...))
			assert.NotContains(t, strings.Join(processesOf(p, "pipe"), ", "), "saw_hole")
			assert.Contains(t, processesOf(p, "pipe"), "drill 20 mm drill")
		})
	}
}

// A hole that only a saw could make is refused with what stands in the saw's way.
func TestHoleSawIsRefusedWithItsReason(t *testing.T) {
	for name, c := range map[string]struct {
		otherwise []string
		want      string
	}{
		"too thick for the cup":   {[]string{"depth = 30", "depth = 10.5"}, "the 32 mm saw is 10.5 deep inside"},
		"no drill for the pilot":  {[]string{"pilot = 6.35", "pilot = 13.5"}, "no drill owned between 13.50 and 13.70 makes way for the pilot"},
		"no machine slow enough":  {[]string{"speeds   = [90, 120, 200, 350, 600, 1000, 1600]", "speeds   = [600, 1000, 1600]", "speeds = [250, 500, 1000, 2000]", "speeds = [500, 1000, 2000]"}, "no machine turns a saw of Ø32 as slowly as a drill of that size"},
		"limits too near":         {[]string{`diameter = "32 +2 -0"`, `diameter = "32 +1.4 -0"`}, "no drill owned between 32.00 and 33.40"},
		"its place too near":      {[]string{`"108 ±0.5", "45 ±0.5"`, `"108 ±0.05", "45 ±0.05"`}, "C-24"},
		"no size owned that fits": {[]string{"sizes = [25, 32, 40, 54, 57]", "sizes = [25, 40, 54, 57]"}, "no drill owned between 32.00 and 34.00"},
	} {
		t.Run(name, func(t *testing.T) {
			p := planner.Plan(sawn(t, c.otherwise...), planner.Options{}).Parts[0]
			require.NotEmpty(t, p.Refusals)
			assert.Contains(t, text(t, p.Refusals), c.want)
		})
	}
}
