package main

import (
	"fmt"
	"strings"
	"testing"
	"unicode"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/zclconf/go-cty/cty"

	"catchplate/partspec"
)

// at makes a place on one line of a file; columns count characters from 1.
func at(line, column, end, startByte int) *hcl.Range {
	return &hcl.Range{Filename: "a.hcl",
		Start: hcl.Pos{Line: line, Column: column, Byte: startByte},
		End:   hcl.Pos{Line: line, Column: end, Byte: startByte + end - column}}
}

func sourceOf(text string) *sources {
	return newSources(func(string) []byte { return []byte(text) })
}

func printed(p problems, colored paint) string {
	var out strings.Builder
	p.text(&out, colored)
	return out.String()
}

func TestDiagnosticText(t *testing.T) {
	src := sourceOf("part \"x\" {\n\tØ = 3 + wall\n}\n")
	expr, bad := hclsyntax.ParseExpression([]byte("3 + wall"), "a.hcl", hcl.InitialPos)
	require.False(t, bad.HasErrors())
	found := hcl.Diagnostics{{
		Severity: hcl.DiagError, Summary: "Too thick", Detail: "Expected at most 4.\nWrite 4 instead.",
		Subject: at(2, 6, 14, 17), Expression: expr,
		EvalContext: &hcl.EvalContext{Variables: map[string]cty.Value{"wall": cty.NumberFloatVal(1.5)}},
	}}
	want := "a.hcl:2:6: error: Too thick\n" +
		"   Ø = 3 + wall\n" +
		"       ^^^^^^^^\n" +
		"  with wall as 1.5\n" +
		"  Expected at most 4.\n" +
		"  Write 4 instead.\n"
	assert.Equal(t, want, printed(report(found, src), false))
	assert.Contains(t, printed(report(found, src), true), "\x1b[1;31merror:\x1b[0m")
}

func TestDiagnosticsAreSortedAndEachOnce(t *testing.T) {
	late := &hcl.Diagnostic{Severity: hcl.DiagError, Summary: "late", Subject: at(2, 1, 2, 20)}
	early := &hcl.Diagnostic{Severity: hcl.DiagWarning, Summary: "early", Subject: at(1, 1, 2, 0)}
	p := report(hcl.Diagnostics{late, early, late}, sourceOf("x\ny\n"))
	require.Len(t, p.Diagnostics, 2)
	assert.Equal(t, []string{"early", "late"}, []string{p.Diagnostics[0].Summary, p.Diagnostics[1].Summary})
	assert.Equal(t, 1, p.Errors)
	assert.Equal(t, 1, p.Warnings)
}

func TestManyDiagnosticsAreCut(t *testing.T) {
	var found hcl.Diagnostics
	for i := range 500 {
		found = append(found, &hcl.Diagnostic{Severity: hcl.DiagError, Summary: fmt.Sprint("fault ", i), Subject: at(1, 1+i, 2+i, i)})
	}
	p := report(found, sourceOf(strings.Repeat("x", 600)))
	assert.Len(t, p.Diagnostics, mostShown)
	assert.Equal(t, 480, p.Omitted)
	assert.True(t, strings.HasSuffix(printed(p, false), "and 480 more\n"))
}

// A message about bytes that a terminal would obey, or about a place that is not there, must stay a harmless line.
func TestDiagnosticsOfHostileText(t *testing.T) {
	tests := map[string]struct {
		source  string
		subject *hcl.Range
	}{
		"escape in the line":        {"x = \"\x1b[2J\"\n", at(1, 5, 9, 4)},
		"very long line":            {strings.Repeat("x", 5000) + "\n", at(1, 4000, 4100, 3999)},
		"place behind the file":     {"x\n", at(99, 5, 6, 500)},
		"place behind the line":     {"x\n", at(1, 50, 60, 49)},
		"end before start":          {"x = 12\n", at(1, 5, 2, 4)},
		"not text":                  {"\xff\xfe\n", at(1, 1, 2, 0)},
		"no place":                  {"x\n", nil},
		"ends on a later line":      {"x = [\n1]\n", &hcl.Range{Filename: "a.hcl", Start: hcl.Pos{Line: 1, Column: 5, Byte: 4}, End: hcl.Pos{Line: 2, Column: 3, Byte: 8}}},
		"right to left override":    {"x = \"\u202etxt\"\n", at(1, 5, 9, 4)},
		"carriage return in a line": {"x = 1\r\n", at(1, 1, 2, 0)},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			found := hcl.Diagnostics{{Severity: hcl.DiagError, Summary: "Bad", Detail: "D\x1b[1m", Subject: test.subject}}
			text := printed(report(found, sourceOf(test.source)), false)
			assert.Contains(t, text, "error: Bad\n")
			assert.NotContains(t, text, "\x1b")
			assert.NotContains(t, text, "\u202e")
			assert.NotContains(t, text, "\r")
			for line := range strings.Lines(text) {
				assert.LessOrEqual(t, len([]rune(line)), lineWidth+3)
			}
		})
	}
}

// Whatever stands in a file, messages about it are few, have a place, and hold nothing that a terminal would obey.
func FuzzMessagesArePlain(f *testing.F) {
	f.Add(starter)
	f.Add("part \"a\" {\n  length = 3 mm\n}\n")
	f.Add("part \"\x1b[2J\" {\n\tlength = 1 +\n}\n")
	f.Add("workshop \"w\" {\r\n machine \"lathe\" { speeds = [1/0] }\r\n}")
	f.Fuzz(func(t *testing.T, text string) {
		_, files, found := partspec.Parse([]partspec.Source{{Name: "a.hcl", Text: []byte(text)}})
		p := report(found, newSources(files.Text))
		assert.LessOrEqual(t, len(p.Diagnostics), mostShown)
		for _, d := range p.Diagnostics {
			assert.Equal(t, d.File != "", d.Line > 0)
		}
		for _, r := range printed(p, false) {
			assert.True(t, r == '\n' || !unicode.IsControl(r), "%q", r)
		}
	})
}
