package main

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func writeInto(dir string, force bool, namesAndTexts ...string) error {
	var files []outFile
	for i := 0; i < len(namesAndTexts); i += 2 {
		files = append(files, outFile{namesAndTexts[i], []byte(namesAndTexts[i+1])})
	}
	return (&cli{talk: io.Discard}).writeFolder(dir, files, force)
}

func contents(t *testing.T, parts ...string) string {
	text, err := os.ReadFile(filepath.Join(parts...))
	require.NoError(t, err)
	return string(text)
}

func TestOurOwnFilesAreReplaced(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "folder")
	require.NoError(t, writeInto(dir, false, "a.md", "one", "part/b.svg", "two"))
	require.NoError(t, writeInto(dir, false, "a.md", "changed", "part/b.svg", "two"))
	assert.Equal(t, "changed", contents(t, dir, "a.md"))
	assert.Equal(t, "two", contents(t, dir, "part", "b.svg"))
}

func TestUnchangedFilesAreNotTouched(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, writeInto(dir, false, "a.md", "one"))
	before, err := os.Stat(filepath.Join(dir, "a.md"))
	require.NoError(t, err)
	require.NoError(t, writeInto(dir, false, "a.md", "one", "b.md", "two"))
	after, err := os.Stat(filepath.Join(dir, "a.md"))
	require.NoError(t, err)
	assert.True(t, os.SameFile(before, after), "the file was replaced")
}

func TestForeignFilesAreKept(t *testing.T) {
	tests := map[string]func(dir string) error{
		"there before":   func(string) error { return nil },
		"written before": func(dir string) error { return writeInto(dir, false, "a.md", "ours") },
	}
	for name, prepare := range tests {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			require.NoError(t, prepare(dir))
			require.NoError(t, os.WriteFile(filepath.Join(dir, "a.md"), []byte("mine"), 0o644))
			err := writeInto(dir, false, "b.md", "two", "a.md", "one")
			require.ErrorContains(t, err, "a.md")
			assert.Equal(t, "mine", contents(t, dir, "a.md"))
			assert.NoFileExists(t, filepath.Join(dir, "b.md"), "all or nothing")

			require.NoError(t, writeInto(dir, true, "a.md", "one"))
			assert.Equal(t, "one", contents(t, dir, "a.md"))
		})
	}
}

func TestNamesOutsideTheFolderAreRefused(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"../a.md", "/a.md", "x/../../a.md", ""} {
		assert.Error(t, writeInto(dir, true, name, "one"), name)
	}
}

func TestNothingIsLeftBehind(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, writeInto(dir, false, "a.md", "one"))
	require.NoError(t, os.Mkdir(filepath.Join(dir, "b.md"), 0o755))
	require.Error(t, writeInto(dir, true, "a.md", "two", "b.md", "a folder is in the way"))
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	assert.Equal(t, "a.md b.md "+manifestName, strings.Join(names, " "))
	assert.Equal(t, "one", contents(t, dir, "a.md"))
}
