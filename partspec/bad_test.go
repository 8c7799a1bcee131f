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

// Each file of testdata/good gives a job and no message at all.
func TestGoodFiles(t *testing.T) {
	paths, err := filepath.Glob("testdata/good/*.hcl")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			job, _, found := partspec.Load([]string{path})
			for _, d := range found {
				t.Error(parttest.Describe(d))
			}
			assert.NotNil(t, job)
		})
	}
}
