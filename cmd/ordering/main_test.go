package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/sequence"
	"catchplate/planner/sequence/instance"
)

const instances = "../../planner/sequence/testdata/"

// Each line can be checked by whoever reads it: the order and the alternatives printed give the cost printed.
func TestLinesAddUp(t *testing.T) {
	files := []string{instances + "gen/g8-1.json", instances + "literature/case01.json", instances + "sop/ESC07.sop"}
	var stdout, stderr strings.Builder
	require.Equal(t, 0, run(files, &stdout, &stderr))
	assert.Empty(t, stderr.String())
	lines := strings.Split(strings.TrimSpace(stdout.String()), "\n")
	require.Len(t, lines, len(files))
	for i, want := range []struct {
		name string
		cost int
	}{{"g8-1", 925}, {"case01", 833}, {"ESC07", 2125}} {
		var a answer
		require.NoError(t, json.Unmarshal([]byte(lines[i]), &a))
		assert.Equal(t, want.name, a.Name)
		assert.Equal(t, want.cost, a.Cost)
		assert.Equal(t, want.cost, a.Bound)
		assert.True(t, a.Proven)
		assert.Positive(t, a.Nodes)
		inst, err := instance.Load(files[i])
		require.NoError(t, err)
		var order []sequence.Step
		for k, op := range a.Order {
			order = append(order, sequence.Step{Op: op, Alt: a.Alternatives[k]})
		}
		cost, err := sequence.Cost(inst.Problem, order)
		require.NoError(t, err)
		assert.Equal(t, a.Cost, cost)
	}
	for _, key := range []string{`"name"`, `"cost"`, `"bound"`, `"proven"`, `"order"`, `"alternatives"`, `"nodes"`} {
		assert.Contains(t, lines[0], key)
	}
}

func TestBudget(t *testing.T) {
	var stdout, stderr strings.Builder
	require.Equal(t, 0, run([]string{"-budget", "200", instances + "gen/g30-3.json"}, &stdout, &stderr))
	var a answer
	require.NoError(t, json.Unmarshal([]byte(stdout.String()), &a))
	assert.False(t, a.Proven)
	assert.Less(t, a.Bound, a.Cost)
}

func TestWrongUse(t *testing.T) {
	for _, args := range [][]string{{}, {"-budget", "100"}, {"-budget", "-1", "x"}, {"-budget", "0", "x"}, {"-budget", "many", "x"}, {"-none"}} {
		var stdout, stderr strings.Builder
		assert.Equal(t, 2, run(args, &stdout, &stderr), args)
		assert.Empty(t, stdout.String())
		assert.Contains(t, stderr.String(), "usage: ordering")
	}
}

func TestHelp(t *testing.T) {
	var stdout, stderr strings.Builder
	require.Equal(t, 0, run([]string{"-h"}, &stdout, &stderr))
	assert.Empty(t, stderr.String())
	for _, want := range []string{"usage: ordering", "ordering-1", "TSPLIB", "at\nmost 64 operations", "-budget nodes"} {
		assert.Contains(t, stdout.String(), want)
	}
}

// The same file and budget give the same line, however the search ends.
func TestSameLine(t *testing.T) {
	for _, budget := range []string{"1", "5000", "100000"} {
		var lines [2]strings.Builder
		for i := range lines {
			var stderr strings.Builder
			require.Equal(t, 0, run([]string{"-budget", budget, instances + "gen/g40-3.json", instances + "sop/ft53.4.sop"}, &lines[i], &stderr), stderr.String())
		}
		assert.Equal(t, lines[0].String(), lines[1].String())
	}
}

// A bad file is named, and the others are still solved.
func TestBadFile(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.json")
	require.NoError(t, os.WriteFile(bad, []byte("{}"), 0o644))
	var stdout, stderr strings.Builder
	assert.Equal(t, 1, run([]string{bad, instances + "gen/g8-2.json"}, &stdout, &stderr))
	assert.Contains(t, stderr.String(), bad)
	assert.Contains(t, stdout.String(), `"cost":604`)
}
