package sheets

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
	"catchplate/sheets/internal/fixture"
)

func TestStepTableIsAsItWas(t *testing.T) {
	files := render(t, fixture.Knob())
	for _, name := range []string{"knob-steps.csv", "knob-steps-10.svg"} {
		path := filepath.Join("testdata", name)
		if *update {
			require.NoError(t, os.WriteFile(path, []byte(files[name]), 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, string(want), files[name], "%s: run the test with -update and read the difference", name)
	}
}

// One row a step: both dials' readings, each a labelled number of its own, the crest, and where a person may stop.
func TestStepTableOnTheSheet(t *testing.T) {
	text := render(t, fixture.Knob())["knob.md"]
	for _, want := range []string{
		"counted from nought. Set the saddle first, each time from the figure before it, so that it goes one way only through a run. Then feed the cross to its figure",
		"![Step the curve crown, 10 cuts](knob-steps-10.svg)",
		"| Done | Step | saddle: turns | marks | from nought | cross: turns | marks | from nought | Crest, mm | May stop: step measures | Mind |",
		"| ☐ | **run 1, step 6** | – | **\\-54** | \\-54 | **2** | **28** | 128 | 0.099 | **Ø25.44 mm** | minus: marks still short of nought |",
		"| ☐ | **run 2, step 7** | – | **17** | 17 | **0** | **12** | 12 | 0.096 |  | take up backlash first |",
		"- **Steps:** 10, proven to be the fewest on these dials",
		"- **With one dial going on by one constant number of marks:** 10 steps, 12 marks each",
		"- **With the customary quarter of a millimetre:** 37 steps",
		"- **Filing takes:** 0.4 to 1.5 min for the metal in the crests alone; blueing and trying come on top",
	} {
		assert.Contains(t, text, want)
	}
	assert.Equal(t, 10, strings.Count(text, "| ☐ | **run "))
	assert.NotContains(t, text, "| Done | Cut | Dial |", "the two lines a step are not printed again")
}

func TestUnprovenStepTableSaysSo(t *testing.T) {
	p := fixture.Knob()
	table := p.Parts[0].Setups[0].Operations[0].Steps
	table.ProvenFewest, table.CustomCount, table.ConstantCount = false, 0, 0
	text := render(t, p)["knob.md"]
	assert.Contains(t, text, "that there are no fewer is not proven")
	assert.Contains(t, text, "quarter of a millimetre:** leaves more than is allowed")
	assert.NotContains(t, text, "one constant number of marks")
}

func TestEveryWordAndNumberOfAStepTableIsThePlans(t *testing.T) {
	p := fixture.Knob()
	known := numbersOf(p)
	text := render(t, p)["knob.md"]
	visitPlan(p, func(field string, v reflect.Value) {
		if strings.HasPrefix(field, "Step") && v.Kind() == reflect.String {
			assert.Contains(t, text, string(esc(strings.TrimSuffix(v.String(), "."))), field)
		}
	})
	for _, n := range number.FindAllString(text[strings.Index(text, "**Step table**"):], -1) {
		assert.True(t, known[n], "the number %s is not in the plan", n)
	}
}

func TestStepsCSV(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(render(t, fixture.Knob())["knob-steps.csv"])).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 11)
	assert.Equal(t, stepsHead, rows[0])
	assert.Equal(t, []string{"knob", "1", "10", "run 1, step 6", "saddle", "", "-54", "-54", "cross", "2", "28", "128", "-5.4", "1.28", "0.099", "Ø25.44 mm"}, rows[6])
	assert.NotContains(t, render(t, fixture.Bush()), "guide-bush-steps.csv", "a part without steps has no such file")
}

func TestStepTablesThatAreNoneAreRefused(t *testing.T) {
	for name, spoil := range map[string]func(*plan.StepTable){
		"piece":    func(s *plan.StepTable) { s.Curve[0].ToAcrossMM = s.Curve[0].FromAcrossMM },
		"infinite": func(s *plan.StepTable) { s.Curve[0].CentreDepthMM = math.Inf(1) },
		"step":     func(s *plan.StepTable) { s.Steps[3].DepthMM = math.NaN() },
		"label":    func(s *plan.StepTable) { s.Steps[3].Label = "step 99" },
		"cutter":   func(s *plan.StepTable) { s.Cutter.WidthMM = 1 },
		"crest":    func(s *plan.StepTable) { s.WorstMM = -1 },
	} {
		t.Run(name, func(t *testing.T) {
			p := fixture.Knob()
			spoil(p.Parts[0].Setups[0].Operations[0].Steps)
			_, err := Render(p, Options{})
			assert.ErrorContains(t, err, "operation 10")
		})
	}
}
