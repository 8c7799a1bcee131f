package sheets

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"catchplate/sheets/internal/fixture"
)

// TestPictures writes the figures of the fixtures to the folder in PICTURES, to be looked at.
func TestPictures(t *testing.T) {
	dir := os.Getenv("PICTURES")
	if dir == "" {
		return
	}
	files, err := Render(fixture.Cover(), Options{})
	require.NoError(t, err)
	for _, f := range files {
		require.NoError(t, os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o644))
	}
}
