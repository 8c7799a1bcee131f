package partspec

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Mistakes of writing are told in the words of the trade, at their line and column.
func TestMistakesOfWriting(t *testing.T) {
	for _, c := range []struct {
		text         string
		line, column int
		summary      string
	}{
		{"part \"a\" {\n  length = 3\n", 1, 10, "The block is not closed"},
		{"part \"a\" {\n  length 3\n}\n", 2, 3, "The equals sign is missing"},
		{"part \"a\" {\n  length = \n}\n", 2, 12, "The value cannot be read"},
		{"part \"a\" {\n  length = 3 mm\n}\n", 2, 14, "A unit cannot stand behind a bare figure"},
		{"part \"a\" {\n  length = 3 4\n}\n", 2, 14, "The line should end here"},
		{"part \"a\" {\n  material = mild steel\n}\n", 2, 19, "The line should end here"},
		{"part \"a\" {\n  length = 3\n  length = 4\n}\n", 3, 3, "It is written twice"},
		{"part \"a\" {\n  material = \"brass\n}\n", 2, 20, "The text is not closed"},
		{"part \"a\" {\n  material = 'brass'\n}\n", 2, 14, "Text stands in double quotes"},
		{"part \"a\" {\n  material = “brass”\n}\n", 2, 14, "Text stands in straight quotes"},
		{"part \"a\" { length = 3 general = \"m\" }\n", 1, 23, "A block on one line holds one value"},
		{"part \"a\" {\n  stock \"bar\" { diameter = 3, length = 4 }\n}\n", 2, 29, "A block on one line holds one value"},
		{"part \"a\" {\n  length = 3;\n}\n", 2, 13, "The sign ; is not part of the language"},
		{"part \"a\" {\n  length = (3 + 4\n}\n", 3, 1, "A bracket is not closed"},
		{"part \"a\" {\n  length = max(3, 4\n}\n", 3, 1, "A comma is missing"},
		{"part \"a\" {\n  zone = [3 4]\n}\n", 2, 13, "A comma is missing"},
		{"part \"a\" {\n  length = 3 ** 2\n}\n", 2, 15, "The value cannot be read"},
		{"part \"a\" = {\n}\n", 1, 10, "A block takes no equals sign"},
		{"part \"a\"\n{\n}\n", 1, 9, "The block does not begin"},
		{"}\n", 1, 1, "A name was expected"},
		{"part \"a\" {\n}\n}\n", 3, 1, "A name was expected"},
		{"part \"a\" {\n  \"length\" = 3\n}\n", 2, 3, "A name stands in quotes"},
		{"part \"a\" {\n  length = part.\n}\n", 2, 17, "A name ends in a point"},
		{"part \"a\" {\n  length = 1 > 0 ? 3\n}\n", 2, 21, "The condition has one answer only"},
	} {
		job, _, found := Parse([]Source{{"a.hcl", []byte(c.text)}})
		assert.Nil(t, job)
		require.NotEmpty(t, found, c.text)
		d := found[0]
		assert.Equal(t, c.summary, d.Summary, c.text)
		assert.Equal(t, [2]int{c.line, c.column}, [2]int{d.Subject.Start.Line, d.Subject.Start.Column}, c.text)
		foreign(t, found)
	}
}

// foreign fails for words of the parser's own voice.
func foreign(t *testing.T, found Diagnostics) {
	t.Helper()
	for _, d := range found {
		assert.Nil(t, d.Expression)
		assert.Nil(t, d.EvalContext)
		require.NotNil(t, d.Subject)
		for _, word := range []string{"configuration", "argument", "attribute", "tuple", "heredoc", "template", "literal", "token", "expression was"} {
			assert.NotContains(t, strings.ToLower(d.Summary+" "+d.Detail), word)
		}
	}
}

// Every file of the tests, cut short at any line or with a line left out, is told in our own words.
func TestBrokenFilesAreToldInPlainWords(t *testing.T) {
	paths, err := filepath.Glob("testdata/*/*.hcl")
	require.NoError(t, err)
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		lines := strings.SplitAfter(string(text), "\n")
		for i := 0; i < len(lines); i += 7 {
			for _, broken := range []string{strings.Join(lines[:i], ""), strings.Join(lines[:i], "") + strings.Join(lines[min(i+1, len(lines)):], "")} {
				if len(guard("x.hcl", []byte(broken))) > 0 {
					continue
				}
				_, found := hclsyntax.ParseConfig([]byte(broken), "x.hcl", hcl.InitialPos)
				for _, d := range reword([]byte(broken), found) {
					assert.NotEqual(t, "The line cannot be read", d.Summary, "%s, line %d", path, i)
				}
				foreign(t, reword([]byte(broken), found))
			}
		}
	}
}
