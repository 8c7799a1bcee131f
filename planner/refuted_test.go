package planner_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner"
)

// Drawn parts whose plans the replay once refuted, each for the reason in its first line, are planned and proved.
func TestPartsOnceRefuted(t *testing.T) {
	files, err := filepath.Glob("testdata/refuted/*.hcl")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			p, failures := planner.Proved(parsed(t, string(text)), planner.Options{})
			assert.Empty(t, failures)
			assert.Empty(t, p.Parts[0].Refusals)
			assert.NotEmpty(t, p.Parts[0].Setups)
		})
	}
}
