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

// pool is every part that rules are tried on, by name: the examples and the worked plans.
func pool(t *testing.T) map[string]*partspec.Job {
	t.Helper()
	jobs := exampleParts(t)
	jobs["tide-gauge"] = load(t, examples)
	files, err := filepath.Glob(filepath.Join(worked, "*.hcl"))
	require.NoError(t, err)
	more, err := filepath.Glob(filepath.Join("testdata", "rules", "*.hcl"))
	require.NoError(t, err)
	for _, f := range append(files, more...) {
		if name := strings.TrimSuffix(filepath.Base(f), ".hcl"); name != "workshop" {
			jobs["worked/"+name] = load(t, f, filepath.Join(worked, "workshop.hcl"))
		}
	}
	return jobs
}

// outcome is what a job comes to under a set of rules: the plan without the list of rules that it cites, and what the replay says.
func outcome(t *testing.T, job *partspec.Job, set rules.Set) string {
	t.Helper()
	p, failures := planner.Proved(job, planner.Options{Rules: &set})
	p.Rules = nil
	return text(t, p) + fmt.Sprint(failures)
}

// Leaving out any one rule changes the plan of a part that is named for it, or makes the replay refuse it. The table says which part.
func TestEveryRuleIsMissed(t *testing.T) {
	jobs, before := pool(t), map[string]string{}
	base := func(name string) string {
		if before[name] == "" {
			before[name] = outcome(t, jobs[name], rules.All())
		}
		return before[name]
	}
	if *update {
		writeMissed(t, jobs, base)
	}
	named := readMissed(t)
	for _, head := range rules.All().Heads() {
		t.Run(head.ID, func(t *testing.T) {
			name := named[head.ID]
			require.Contains(t, jobs, name, "no part is named for rule %s (%s)", head.ID, head.Title)
			assert.NotEqual(t, base(name), outcome(t, jobs[name], rules.All().Without(head.ID)), "%s is planned the same without it", name)
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
func writeMissed(t *testing.T, jobs map[string]*partspec.Job, base func(string) string) {
	t.Helper()
	var b strings.Builder
	b.WriteString("# rule part: the part whose plan changes, or is refused by the replay, when the rule is left out\n")
	for _, head := range rules.All().Heads() {
		for _, name := range slices.Sorted(maps.Keys(jobs)) {
			if base(name) != outcome(t, jobs[name], rules.All().Without(head.ID)) {
				fmt.Fprintf(&b, "%s %s\n", head.ID, name)
				break
			}
		}
	}
	require.NoError(t, os.WriteFile(missedTable, []byte(b.String()), 0o644))
}
