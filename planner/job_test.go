package planner_test

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// update rewrites the golden files of this package: go test ./planner -update. The diff must be read.
var update = flag.Bool("update", false, "rewrite golden files")

const (
	examples = "../examples/tide-gauge"
	worked   = "testdata/worked"
)

// load reads a job that must be without errors.
func load(t testing.TB, paths ...string) *partspec.Job {
	t.Helper()
	job, _, found := partspec.Load(paths)
	require.False(t, found.HasErrors(), "%v", found)
	return job
}

// workedJob is one of the worked plans' parts in their workshop.
func workedJob(t testing.TB, name string) *partspec.Job {
	t.Helper()
	return inShop(t, filepath.Join(worked, name+".hcl"))
}

// exampleParts are the parts of the example job, each as a job of its own. Limits that a fit gives are in the sizes already.
func exampleParts(t testing.TB) map[string]*partspec.Job {
	t.Helper()
	whole := load(t, examples)
	jobs := map[string]*partspec.Job{}
	for _, p := range whole.Parts {
		jobs[p.Name] = only(whole, p)
	}
	return jobs
}

// only is a job of one part.
func only(job *partspec.Job, part *partspec.Part) *partspec.Job {
	return &partspec.Job{Workshop: job.Workshop, Parts: []*partspec.Part{part}}
}

// withShop is a job in another workshop.
func withShop(job *partspec.Job, change func(*partspec.Workshop)) *partspec.Job {
	shop, other := *job.Workshop, *job
	change(&shop)
	other.Workshop = &shop
	return &other
}

// answered plans a job and holds that each part is proved by the replay, or refused with reasons.
func answered(t testing.TB, job *partspec.Job) *plan.Plan {
	t.Helper()
	p, failures := planner.Proved(job, planner.Options{})
	for _, f := range failures {
		assert.Fail(t, "the replay refuses the plan", f.String())
	}
	for _, part := range p.Parts {
		if len(part.Refusals) == 0 {
			continue
		}
		assert.Empty(t, part.Setups, "%s is refused and planned at once", part.Name)
		for _, r := range part.Refusals {
			assert.NotEmpty(t, r.What, part.Name)
			assert.NotEmpty(t, r.Reasons, "%s: %s is refused without a reason", part.Name, r.What)
			assert.NotEmpty(t, r.Remedies, "%s: %s is refused without a remedy", part.Name, r.What)
		}
	}
	return p
}

// planned is answered for one part that must have a plan.
func planned(t testing.TB, job *partspec.Job) plan.Part {
	t.Helper()
	p := answered(t, job)
	require.Len(t, p.Parts, 1)
	require.Empty(t, p.Parts[0].Refusals)
	return p.Parts[0]
}

// text is a value as JSON.
func text(t testing.TB, v any) string {
	t.Helper()
	b, err := json.MarshalIndent(v, "", " ")
	require.NoError(t, err)
	return string(b)
}

// golden compares a text with a file of testdata.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "if the change is meant: go test ./planner -update, and read the diff")
}
