package planner_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// edited is a job of files in which one text is put for another.
func edited(t *testing.T, old, with, more string, files ...string) *partspec.Job {
	t.Helper()
	sources := []partspec.Source{{Name: "more.hcl", Text: []byte(more)}}
	found := false
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		found = found || strings.Contains(string(text), old)
		sources = append(sources, partspec.Source{Name: f, Text: []byte(strings.Replace(string(text), old, with, 1))})
	}
	require.True(t, found, "no file says %s", old)
	job, _, problems := partspec.Parse(sources)
	require.False(t, problems.HasErrors(), "%v", problems)
	return job
}

// Entering the measured bore of the pulley changes the mandrel that is turned to it, and nothing else.
func TestMeasuredBoreChangesTheMandrelOnly(t *testing.T) {
	with := func(bore string) any {
		return tree(t, answered(t, edited(t, `diameter = "8 H7"`, bore, "", filepath.Join(worked, "pulley.hcl"), filepath.Join(worked, "workshop.hcl"))))
	}
	changed := differences(with(`diameter = "8 H7"`), with("diameter = \"8 H7\"\nmeasured = 8.01"), "")
	steps := 0
	for _, c := range changed {
		if fits, err := path.Match("parts/0/make_first/*/steps/*", c); err == nil && fits {
			steps++
			continue
		}
		assert.Equal(t, "parts/0/drawing/notes", c, "changed with the measured bore of the pulley")
	}
	assert.Equal(t, 1, steps, "the mandrel does not follow the bore: %v", changed)
}

// tree is a plan as plain JSON values.
func tree(t *testing.T, p *plan.Plan) any {
	t.Helper()
	var v any
	require.NoError(t, json.Unmarshal([]byte(text(t, p)), &v))
	return v
}

// differences lists the places at which two trees differ.
func differences(a, b any, at string) []string {
	switch a := a.(type) {
	case map[string]any:
		if other, ok := b.(map[string]any); ok {
			var list []string
			for _, k := range keysOf(a, other) {
				list = append(list, differences(a[k], other[k], path.Join(at, k))...)
			}
			return list
		}
	case []any:
		if other, ok := b.([]any); ok && len(a) == len(other) {
			var list []string
			for i := range a {
				list = append(list, differences(a[i], other[i], path.Join(at, fmt.Sprint(i)))...)
			}
			return list
		}
	default:
		if a == b {
			return nil
		}
	}
	return []string{at}
}

func keysOf(maps ...map[string]any) []string {
	var keys []string
	seen := map[string]bool{}
	for _, m := range maps {
		for k := range m {
			if !seen[k] {
				seen[k] = true
				keys = append(keys, k)
			}
		}
	}
	return keys
}

// The comparison sees what it must see.
func TestDifferencesAreSeen(t *testing.T) {
	a := map[string]any{"x": []any{1.0, "b"}, "y": nil}
	assert.Empty(t, differences(a, map[string]any{"x": []any{1.0, "b"}, "y": nil}, ""))
	assert.Equal(t, []string{"x/1"}, differences(a, map[string]any{"x": []any{1.0, "c"}, "y": nil}, ""))
	assert.Equal(t, []string{"x"}, differences(a, map[string]any{"x": []any{1.0}, "y": nil}, ""))
	assert.Equal(t, []string{"y"}, differences(a, map[string]any{"x": []any{1.0, "b"}, "y": 2.0}, ""))
}
