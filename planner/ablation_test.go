package planner_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/rules"
)

// pool is every part that rules are tried on, by name: the examples, the worked plans, and parts that are there for a rule.
func pool(t *testing.T) map[string]*partspec.Job {
	t.Helper()
	jobs := exampleParts(t)
	jobs["tide-gauge"] = load(t, examples)
	for _, folder := range []string{"worked", "rules"} {
		files, err := filepath.Glob(filepath.Join("testdata", folder, "*.hcl"))
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, f := range files {
			name := strings.TrimSuffix(filepath.Base(f), ".hcl")
			if name != "workshop" {
				jobs[folder+"/"+name] = inShop(t, f)
			}
		}
	}
	return jobs
}

// inShop is a file's job in its own workshop, or in that of the worked plans.
func inShop(t testing.TB, file string) *partspec.Job {
	t.Helper()
	if job := load(t, file); !job.Workshop.BuiltIn {
		return job
	}
	return load(t, file, filepath.Join(worked, "workshop.hcl"))
}

// outcome is what a job comes to under a set of rules: the plan without the list of rules that it cites, and what the replay says.
func outcome(t *testing.T, job *partspec.Job, set rules.Set) string {
	t.Helper()
	p, failures := planner.Proved(job, planner.Options{Rules: &set})
	p.Rules = nil
	said := ""
	if len(failures) > 0 {
		said = fmt.Sprint(refuted, failures)
	}
	return text(t, p) + said
}

// refuted marks an outcome that the replay refuses.
const refuted = "\nrefuted by the replay: "

// Leaving out any one rule changes the plan of a part that is named for it, or makes the replay refuse it. The table says which part.
func TestEveryRuleIsMissed(t *testing.T) {
	jobs, before := pool(t), map[string]string{}
	for name, job := range jobs {
		before[name] = outcome(t, job, rules.All())
	}
	if *update {
		writeMissed(t, jobs, before)
	}
	named := readMissed(t)
	for _, head := range rules.All().Heads() {
		t.Run(head.ID, func(t *testing.T) {
			t.Parallel()
			name := named[head.ID]
			require.NotNil(t, jobs[name], "no part is named for rule %s (%s)", head.ID, head.Title)
			assert.NotContains(t, before[name], refuted, "%s is planned badly with all rules", name)
			assert.NotEqual(t, before[name], outcome(t, jobs[name], rules.All().Without(head.ID)), "%s is planned the same without it", name)
		})
	}
	for id := range named {
		_, known := rules.All().Head(id)
		assert.True(t, known, "the table names %s, which is no rule", id)
	}
}

const missedTable = "testdata/missed.txt"

// readMissed reads the table: a rule and a part on each line.
func readMissed(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile(missedTable)
	require.NoError(t, err)
	named := map[string]string{}
	for _, line := range strings.Split(string(text), "\n") {
		if words := strings.Fields(line); len(words) == 2 && words[0] != "#" {
			named[words[0]] = words[1]
		}
	}
	return named
}

// writeMissed finds for each rule the first part that misses it. A rule that no part misses gets no line, and the test fails.
func writeMissed(t *testing.T, jobs map[string]*partspec.Job, before map[string]string) {
	t.Helper()
	var b strings.Builder
	b.WriteString("# rule part: the part whose plan changes, or is refused by the replay, when the rule is left out\n")
	for _, head := range rules.All().Heads() {
		for _, name := range slices.Sorted(maps.Keys(jobs)) {
			if strings.Contains(before[name], refuted) {
				continue
			}
			if before[name] != outcome(t, jobs[name], rules.All().Without(head.ID)) {
				fmt.Fprintf(&b, "%s %s\n", head.ID, name)
				break
			}
		}
	}
	require.NoError(t, os.WriteFile(missedTable, []byte(b.String()), 0o644))
}
