package partspec_test

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
)

var figure = regexp.MustCompile(`\b\d+(\.\d+)?\b`)

// A good file with any one figure changed to a wild one is refused in words, or keeps every promise of a Job.
func TestChangedFigures(t *testing.T) {
	var texts []string
	paths, err := filepath.Glob("testdata/good/*.hcl")
	require.NoError(t, err)
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		texts = append(texts, string(text))
	}
	for seed := range 6 {
		texts = append(texts, parttest.FlatPart().Example(seed).HCL(false))
	}
	for _, text := range texts {
		for i, at := range figure.FindAllStringIndex(text, -1) {
			for k, wild := range []string{"0", "-7", "1e6", "1e-9", "0.3", "180"} {
				if (i+k)%2 == 0 { // half of them are enough, and each figure gets three
					checkDamaged(t, text[:at[0]]+wild+text[at[1]:])
				}
			}
		}
	}
}

func checkDamaged(t *testing.T, text string) {
	job, _, found := partspec.Parse([]partspec.Source{{Name: "damaged.hcl", Text: []byte(text)}})
	for _, d := range found {
		if assert.NotNil(t, d.Subject) {
			assert.Positive(t, d.Subject.Start.Line, d.Summary)
			assert.Positive(t, d.Subject.Start.Column, d.Summary)
		}
		assert.NotEmpty(t, d.Detail, d.Summary)
	}
	if job == nil {
		return
	}
	for _, p := range job.Parts {
		if p.Flat() {
			checkFlat(t, p)
		} else {
			checkPart(t, p)
		}
	}
}
