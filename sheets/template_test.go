package sheets

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/sheets/internal/fixture"
)

// The template is a file of its own, and the sheet points at it.
func TestTemplateIsLinked(t *testing.T) {
	files := render(t, fixture.Cover())
	require.Contains(t, files, "cover_plate-template.svg")
	assert.Contains(t, files["cover_plate.md"], "[cover_plate-template.svg](cover_plate-template.svg)")
	assert.Contains(t, files["cover_plate.html"], `<a href="cover_plate-template.svg">`)
	assert.NotContains(t, render(t, fixture.Bush()), "guide-bush-template.svg", "a plain bush has nothing to mark out")
}

// The check lines of the template are true when chromium prints it, by the drawing operators of the PDF, to a hundredth of a millimetre.
func TestTemplatePrintsTrue(t *testing.T) {
	slow(t)
	dir := t.TempDir()
	file, pdf := filepath.Join(dir, "template.svg"), filepath.Join(dir, "template.pdf")
	require.NoError(t, os.WriteFile(file, []byte(render(t, fixture.Cover())["cover_plate-template.svg"]), 0o644))
	run(t, "chromium", append(headless, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+file)...)
	data, err := os.ReadFile(pdf)
	require.NoError(t, err)
	lengths := horizontals(t, data)
	const hundredth = 0.01
	for _, want := range []float64{100, 101.6} {
		found := false
		for _, l := range lengths {
			found = found || math.Abs(l-want) < hundredth
		}
		assert.True(t, found, "no line of %g mm among %.3f", want, lengths)
	}
}

// horizontals are the lengths in millimetres of all straight level lines that a PDF draws.
func horizontals(t *testing.T, pdf []byte) []float64 {
	var out []float64
	for _, m := range regexp.MustCompile(`(?s)stream\r?\n(.*?)endstream`).FindAllSubmatch(pdf, -1) {
		r, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			continue
		}
		text, _ := io.ReadAll(r)
		if !strings.Contains(string(text), " cm") || strings.Contains(string(text), " d1") { // the shape of a letter, or no drawing at all
			continue
		}
		out = append(out, levelLines(string(text))...)
	}
	require.NotEmpty(t, out)
	return out
}

// matrix is a PDF's transformation: x' = a x + c y + e, y' = b x + d y + f.
type matrix [6]float64

func (m matrix) before(n matrix) matrix {
	return matrix{m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3], m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3], m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5]}
}

func (m matrix) at(x, y float64) (float64, float64) {
	return m[0]*x + m[2]*y + m[4], m[1]*x + m[3]*y + m[5]
}

// levelLines reads a content stream's operators q, Q, cm, m and l.
func levelLines(text string) []float64 {
	const mmPerPoint = 25.4 / 72
	now, stack := matrix{1, 0, 0, 1, 0, 0}, []matrix{}
	var numbers, out []float64
	var x, y float64
	for _, word := range strings.Fields(text) {
		if n, err := strconv.ParseFloat(word, 64); err == nil {
			numbers = append(numbers, n)
			continue
		}
		n := len(numbers)
		switch {
		case word == "q":
			stack = append(stack, now)
		case word == "Q" && len(stack) > 0:
			now, stack = stack[len(stack)-1], stack[:len(stack)-1]
		case word == "cm" && n >= 6:
			now = matrix(numbers[n-6 : n]).before(now)
		case word == "m" && n >= 2:
			x, y = now.at(numbers[n-2], numbers[n-1])
		case word == "l" && n >= 2:
			tx, ty := now.at(numbers[n-2], numbers[n-1])
			if math.Abs(ty-y) < 1e-3 { // a thousandth of a point is nothing on paper
				out = append(out, math.Abs(tx-x)*mmPerPoint)
			}
			x, y = tx, ty
		}
		numbers = numbers[:0]
	}
	return out
}
