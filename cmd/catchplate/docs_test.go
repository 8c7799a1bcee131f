package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fence is a fenced block of a Markdown text: its language, and where its lines lie in the text.
type fence struct {
	language   string
	start, end int
}

// fences finds the fenced blocks of a Markdown text.
func fences(text string) []fence {
	var list []fence
	at, open := 0, false
	for line := range strings.SplitAfterSeq(text, "\n") {
		language, isFence := strings.CutPrefix(strings.TrimSpace(line), "```")
		switch {
		case isFence && !open:
			list = append(list, fence{language: language, start: at + len(line)})
			open = true
		case isFence:
			list[len(list)-1].end = at
			open = false
		}
		at += len(line)
	}
	return list
}

func readDoc(t *testing.T, name string) string {
	text, err := os.ReadFile(filepath.Join(repoRoot, name))
	require.NoError(t, err)
	return string(text)
}

// keepDoc compares a document with what it should be, or writes that.
func keepDoc(t *testing.T, name, was, should string) {
	if *update && was != should {
		require.NoError(t, os.WriteFile(filepath.Join(repoRoot, name), []byte(should), 0o644))
		return
	}
	sameText(t, name, was, should)
}

// sameText compares a committed text with what it should be, and shows the first line that differs.
func sameText(t *testing.T, name, was, should string) {
	old, fresh := strings.Split(was, "\n"), strings.Split(should, "\n")
	for i := range max(len(old), len(fresh)) {
		if i >= len(old) || i >= len(fresh) || old[i] != fresh[i] {
			t.Errorf("%s is stale at line %d: go test ./cmd/catchplate -update, and read the difference\n  is:        %q\n  should be: %q",
				name, i+1, lineAt(old, i), lineAt(fresh, i))
			return
		}
	}
}

func lineAt(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return ""
}

const (
	commandsBegin = "<!-- commands: made by go test ./cmd/catchplate -update -->\n"
	commandsEnd   = "<!-- end of commands -->"
)

// The README's list of commands is made from the commands themselves.
func TestReadmeListsTheCommands(t *testing.T) {
	readme := readDoc(t, "README.md")
	before, rest, ok := strings.Cut(readme, commandsBegin)
	require.True(t, ok)
	_, after, ok := strings.Cut(rest, commandsEnd)
	require.True(t, ok)
	var table strings.Builder
	table.WriteString("\n| command | what it does |\n| --- | --- |\n")
	for _, cmd := range (&cli{}).commands() {
		fmt.Fprintf(&table, "| `catchplate %s` | %s |\n", cmd.Use, cmd.Short)
	}
	table.WriteString("\n")
	keepDoc(t, "README.md", readme, before+commandsBegin+table.String()+commandsEnd+after)
}

// In a block of language console, the lines behind a "$ catchplate ..." are what it prints; a last line "..." stands for the rest.
func TestReadmeShowsRealOutput(t *testing.T) {
	readme := readDoc(t, "README.md")
	inExamples(t)
	should := readme
	for _, block := range fences(readme) {
		if block.language == "console" {
			shown := readme[block.start:block.end]
			should = strings.Replace(should, shown, rerun(t, shown), 1)
		}
	}
	keepDoc(t, "README.md", readme, should)
}

// rerun runs the commands of a console block and returns the block as it should be.
func rerun(t *testing.T, shown string) string {
	var out strings.Builder
	for part := range strings.SplitSeq("\n"+strings.TrimSuffix(shown, "\n"), "\n$ ") {
		if part == "" {
			continue
		}
		command, was, _ := strings.Cut(part, "\n")
		var printed bytes.Buffer
		code := run(words(command)[1:], strings.NewReader(""), &printed, io.Discard)
		require.Equal(t, exitGood, code, command)
		fmt.Fprintf(&out, "$ %s\n%s", command, cutLike(was, printed.String()))
	}
	return out.String()
}

// cutLike cuts a text to as many lines as were shown before a last line "...".
func cutLike(was, text string) string {
	kept, cut := strings.CutSuffix(strings.TrimRight(was, "\n"), "\n...")
	if !cut {
		return text
	}
	lines := strings.SplitAfter(text, "\n")
	return strings.Join(lines[:min(len(lines), strings.Count(kept, "\n")+1)], "") + "...\n"
}

// words parts a command line at spaces, except within double quotes.
func words(line string) []string {
	var list []string
	for i, piece := range strings.Split(line, `"`) {
		if i%2 == 1 {
			list = append(list, piece)
		} else {
			list = append(list, strings.Fields(piece)...)
		}
	}
	return list
}

// inExamples changes to a fresh folder with a copy of the examples, as a reader who tries the README has them.
func inExamples(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(filepath.Join(dir, "examples"), os.DirFS(filepath.Join(repoRoot, "examples"))))
	t.Chdir(dir)
}

// Every command in the README's blocks of language sh runs, one after the other, in a folder with the examples.
func TestReadmeCommandsRun(t *testing.T) {
	readme := readDoc(t, "README.md")
	var script strings.Builder
	for _, block := range fences(readme) {
		if block.language != "sh" {
			continue
		}
		for line := range strings.Lines(readme[block.start:block.end]) {
			line, _, _ = strings.Cut(strings.TrimSpace(line), " #")
			line = strings.Replace(line, "go run ./cmd/catchplate", "catchplate", 1)
			if strings.HasPrefix(line, "catchplate ") {
				fmt.Fprintf(&script, "exec %s\n", strings.ReplaceAll(line, `"`, "'"))
			}
		}
	}
	require.Contains(t, script.String(), "exec catchplate sheet examples/tide-gauge -o sheets-out")
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "readme.txtar"), []byte(script.String()), 0o644))
	testscript.Run(t, testscript.Params{Dir: dir, RequireExplicitExec: true, Setup: func(env *testscript.Env) error {
		return os.CopyFS(filepath.Join(env.WorkDir, "examples"), os.DirFS(filepath.Join(repoRoot, "examples")))
	}})
}

// Every part in the README's blocks of language hcl is good as it stands.
func TestReadmePartsAreGood(t *testing.T) {
	readme := readDoc(t, "README.md")
	for i, block := range fences(readme) {
		if block.language != "hcl" {
			continue
		}
		name := filepath.Join(t.TempDir(), fmt.Sprintf("block%d.hcl", i))
		require.NoError(t, os.WriteFile(name, []byte(readme[block.start:block.end]), 0o644))
		var talk bytes.Buffer
		assert.Equal(t, exitGood, run([]string{"check", name}, strings.NewReader(""), io.Discard, &talk), talk.String())
	}
}

// Every path that a document names behind a link is there.
func TestLinksLeadSomewhere(t *testing.T) {
	for _, doc := range []string{"README.md", "DEVELOPERS.md"} {
		for _, part := range strings.Split(readDoc(t, doc), "](")[1:] {
			target, _, _ := strings.Cut(part, ")")
			target, _, _ = strings.Cut(target, "#")
			if target != "" && !strings.Contains(target, "://") {
				assert.FileExists(t, filepath.Join(repoRoot, target), "%s links to %s", doc, target)
			}
		}
	}
}

// The table of modules in DEVELOPERS.md names every module that some file imports, and no other.
func TestEveryModuleHasItsReason(t *testing.T) {
	_, table, found := strings.Cut(readDoc(t, "DEVELOPERS.md"), "### Modules")
	require.True(t, found)
	var told []string
	for i, piece := range strings.Split(table, "`") {
		if i%2 == 1 && strings.Contains(piece, "/") && !strings.HasPrefix(piece, ".") {
			told = append(told, piece)
		}
	}
	used := make(map[string]bool)
	for _, file := range goFiles(t) {
		for _, imported := range importsOf(t, file) {
			if !strings.Contains(strings.Split(imported, "/")[0], ".") {
				continue
			}
			module := slices.IndexFunc(told, func(m string) bool { return fits(m+"/...", imported) })
			if assert.GreaterOrEqual(t, module, 0, "%s imports %s, which DEVELOPERS.md does not give a reason for", file, imported) {
				used[told[module]] = true
			}
		}
	}
	for _, module := range told {
		assert.True(t, used[module], "DEVELOPERS.md gives a reason for %s, which nothing imports", module)
	}
}
