package main

import (
	"bytes"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/sheets"
)

// The sheets of the examples are committed, so that a change shows in review what it does to them, and the README can show real output.
func TestCommittedSheetsAreWhatComesOut(t *testing.T) {
	folders, err := filepath.Glob(filepath.Join(repoRoot, "examples", "*", "*.hcl"))
	require.NoError(t, err)
	seen := make(map[string]bool)
	for _, file := range folders {
		if folder := filepath.Dir(file); !seen[folder] {
			seen[folder] = true
			t.Run(filepath.Base(folder), func(t *testing.T) { compareSheets(t, folder) })
		}
	}
	require.NotEmpty(t, seen)
}

func compareSheets(t *testing.T, folder string) {
	committed := filepath.Join(folder, "sheets")
	fresh := filepath.Join(t.TempDir(), "sheets")
	var talk bytes.Buffer
	t.Chdir(repoRoot) // no sheet depends on where it was made: the paths of messages are the only ones
	code := run([]string{"sheet", folder, "-o", fresh}, strings.NewReader(""), io.Discard, &talk)
	require.Equal(t, exitGood, code, talk.String())
	leaveOut(t, fresh)
	if *update {
		require.NoError(t, os.RemoveAll(committed))
		require.NoError(t, os.CopyFS(committed, os.DirFS(fresh)))
	}
	assert.Equal(t, names(t, committed), names(t, fresh), "go test ./cmd/catchplate -update")
	for _, name := range names(t, fresh) {
		sameText(t, filepath.Join(committed, name), string(read(filepath.Join(committed, name))), string(read(filepath.Join(fresh, name))))
	}
}

// leaveOut removes what says the same again: the HTML pages hold the Markdown and the sketches, and the list of sums all of it.
func leaveOut(t *testing.T, dir string) {
	for _, name := range names(t, dir) {
		if filepath.Ext(name) == ".html" || name == manifestName {
			require.NoError(t, os.Remove(filepath.Join(dir, name)))
		}
	}
}

func names(t *testing.T, dir string) []string {
	var list []string
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			list = append(list, name)
		}
		return err
	})
	if !os.IsNotExist(err) {
		require.NoError(t, err)
	}
	return list
}

// read is a file's bytes, or nothing when it is not there.
func read(name string) []byte {
	data, err := os.ReadFile(name)
	if err != nil {
		return nil
	}
	return data
}

// From file to sheet: what a person waits for. House limit: 100 ms a part on two cores (vent-tube holds two parts).
func BenchmarkSheet(b *testing.B) {
	files, err := filepath.Glob(filepath.Join(repoRoot, "examples", "*", "*.hcl"))
	require.NoError(b, err)
	defer debug.SetGCPercent(debug.SetGCPercent(sparing)) // as the command does
	for _, file := range files {
		paths := []string{file}
		if workshop := filepath.Join(filepath.Dir(file), "workshop.hcl"); slices.Contains(files, workshop) {
			paths = []string{workshop, file}
			if file == workshop {
				continue
			}
		}
		b.Run(strings.TrimSuffix(filepath.Base(file), ".hcl"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				job, _, found := partspec.Load(paths)
				require.False(b, found.HasErrors())
				p, failures := planner.Proved(job, planner.Options{})
				require.Empty(b, failures)
				require.Empty(b, p.Parts[0].Refusals)
				_, err := sheets.Render(p, sheets.Options{})
				require.NoError(b, err)
			}
		})
	}
}
