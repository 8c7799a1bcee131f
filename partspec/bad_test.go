package partspec_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
)

// Each file of testdata/bad says on its lines which messages it must give.
func TestBadFiles(t *testing.T) {
	paths, err := filepath.Glob("testdata/bad/*.hcl")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) { parttest.CheckMessages(t, path) })
	}
}

// The examples give jobs and no message at all.
func TestExamples(t *testing.T) {
	files, err := filepath.Glob("../examples/*/*.hcl")
	require.NoError(t, err)
	folders := map[string]bool{}
	for _, file := range files {
		folders[filepath.Dir(file)] = true
	}
	require.NotEmpty(t, folders)
	folders["testdata/good"] = true
	for folder := range folders {
		t.Run(filepath.Base(folder), func(t *testing.T) {
			job, sources, found := partspec.Load([]string{folder})
			for _, d := range found {
				t.Error(parttest.Describe(d))
			}
			require.NotNil(t, job)
			assert.NotEmpty(t, job.Parts)
			assert.NotEmpty(t, sources.Names())
		})
	}
}
