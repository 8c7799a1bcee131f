package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"catchplate/partspec/units"
)

// answer is what a command found: it prints itself as text, and is itself the JSON document.
type answer interface {
	text(w io.Writer)
}

// show prints an answer in the form that was asked for.
func (c *cli) show(a answer) error {
	if c.json {
		return writeJSON(c.out, a)
	}
	a.text(c.out)
	return nil
}

// writeJSON prints one document, indented, with characters as they are.
func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

// jsonDecimals is where numbers are rounded in the JSON of the bench sums: a nanometre, or a millionth of a degree.
const jsonDecimals = 6

// tidy rounds a number of a bench sum, so that 0.1 + 0.2 prints as 0.3.
func tidy[T ~float64](x T) float64 {
	scale := math.Pow10(jsonDecimals)
	r := math.Round(float64(x)*scale) / scale
	if r == 0 {
		return 0 // never minus nought
	}
	return r
}

// row is one line of an answer: a name and what it is. A row that says nothing is left out.
type row struct{ name, value string }

// rows prints names and values in two columns; a long value goes on in the second.
func rows(w io.Writer, list ...row) {
	columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, r := range list {
		if r.value == "" {
			continue
		}
		name := r.name
		for _, line := range wrapped(r.value, valueWidth) {
			fmt.Fprintf(columns, "  %s\t%s\n", name, line)
			name = ""
		}
	}
	columns.Flush()
}

// valueWidth is where a value is broken: with the names before it, a line fits a screen of 120 characters.
const valueWidth = 90

// wrapped breaks a text between words into lines of at most so many characters, unless one word is longer.
func wrapped(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line+" "+word) > width {
			lines = append(lines, line)
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	return append(lines, line)
}

// inMM shows a length in millimetres; both shows it in inches as well.
func inMM(mm float64) string { return units.Length(mm).Text(units.InMM) }

func both(mm float64) string { return units.Length(mm).Both(units.InMM) }

// cited puts a rule's id behind a sentence, for catchplate explain.
func cited(rule string) string {
	if rule == "" {
		return ""
	}
	return " [" + rule + "]"
}
