package partspec

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var fence = regexp.MustCompile("(?s)```(hcl[a-z ]*)\n(.*?)```")

func languageDocument(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("language.md")
	require.NoError(t, err)
	return string(text)
}

// Every example of the language document is accepted without a message.
// Examples marked "feature" stand in a part of 40 mm cut from 60 mm bar.
func TestLanguageExamples(t *testing.T) {
	examples := fence.FindAllStringSubmatch(languageDocument(t), -1)
	require.Greater(t, len(examples), 10)
	shown := map[string]bool{}
	for _, example := range examples {
		text := example[2]
		if example[1] == "hcl feature" {
			text = "part \"p\" {\n material = \"brass\"\n length = 40\n stock \"bar\" {\n diameter = 60\n }\n" + text + "}\n"
		}
		job, _, found := Parse([]Source{{"language.md", []byte(text)}})
		assert.Empty(t, found, text)
		require.NotNil(t, job, text)
		for _, p := range job.Parts {
			for _, f := range p.Features {
				shown[f.Head().Word] = true
			}
		}
	}
	for _, word := range FeatureWords() {
		assert.True(t, shown[word], "no example has a %s", word)
	}
}

// The document names every word and every attribute that the reader knows,
// each in the section of its word.
func TestLanguageDocumentIsWhole(t *testing.T) {
	text := languageDocument(t)
	for _, k := range featureKinds {
		for _, name := range k.shape.attrNames() {
			assert.Contains(t, section(text, k.word), "`"+name, "%s of %s", name, k.word)
		}
	}
	for where, shapes := range map[string]map[string]shapeOf{
		"machine": machineShapes, "holding": holdingShapes, "tool": toolShapes, "measuring": instrumentShapes, "stock": stockShapes,
		"outline": outlineShapes, "chain": chainShapes, "holes": holeShapes,
	} {
		for kind, shape := range shapes {
			assert.Regexp(t, "[`\"]"+kind+"[`\"]", section(text, where), "%s %s", where, kind)
			for _, name := range shape.attrNames() {
				if name != "note" {
					assert.Contains(t, section(text, where), "`"+name, "%s of %s %s", name, where, kind)
				}
			}
		}
	}
	for where, shape := range map[string]shapeOf{"part": partShape, "fit": fitShape, "concentric": relationShape, "workshop": workshopShape, "machine": dialShape} {
		for _, name := range shape.attrNames() {
			assert.Contains(t, section(text, where), "`"+name, "%s of %s", name, where)
		}
	}
	for _, f := range functionNames {
		assert.Contains(t, section(text, "Expressions"), "`"+f+"`")
	}
}

// section is the text under the heading that holds a word, to the next heading
// of the same level or above.
func section(text, word string) string {
	lines := strings.Split(text, "\n")
	start := -1
	for i, l := range lines { // the last heading is the most particular one
		words := strings.FieldsFunc(l, func(r rune) bool { return strings.ContainsRune("# :,", r) })
		if strings.HasPrefix(l, "##") && slices.Contains(words, word) {
			start = i
		}
	}
	if start < 0 {
		return ""
	}
	level := strings.IndexByte(lines[start], ' ')
	end := start + 1
	for end < len(lines) && (!strings.HasPrefix(lines[end], "#") || strings.IndexByte(lines[end], ' ') > level) {
		end++
	}
	return strings.Join(lines[start:end], "\n")
}
