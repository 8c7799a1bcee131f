package main

import (
	"bytes"
	"cmp"
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"
	"github.com/zclconf/go-cty/cty/convert"
)

// mostShown bounds the messages of one run: whoever has mended twenty is glad to run the check again.
const mostShown = 20

const problemsSchema = "catchplate-problems-1"

// problems is what a run found wrong with the input: the JSON form, from which alone the text is printed.
type problems struct {
	Schema      string       `json:"schema"`
	Errors      int          `json:"errors"`   // how many errors there are, shown or not
	Warnings    int          `json:"warnings"` // how many warnings there are, shown or not
	Diagnostics []diagnostic `json:"diagnostics"`
	Omitted     int          `json:"omitted"` // how many more there are than the diagnostics listed
}

// diagnostic is one message about a place in the input.
type diagnostic struct {
	Severity  string       `json:"severity"`           // "error" or "warning"
	Summary   string       `json:"summary"`            // the kind of problem
	Detail    string       `json:"detail,omitempty"`   // this problem, what was expected, and what to write instead
	File      string       `json:"file,omitempty"`     // as it was named on the command line; none when the message has no place
	Line      int          `json:"line,omitempty"`     // from 1
	Column    int          `json:"column,omitempty"`   // in characters, from 1
	EndLine   int          `json:"end_line,omitempty"` // where the marked text ends
	EndColumn int          `json:"end_column,omitempty"`
	Source    string       `json:"source,omitempty"` // the whole line
	Values    []namedValue `json:"values,omitempty"` // what the names in the marked expression stood for
}

// namedValue is what a name stood for when the message was made.
type namedValue struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// sources looks up the text of the files that were read.
type sources struct {
	bytes func(name string) []byte
	lines map[string]*lineIndex
}

// newSources makes sources of a function that returns the text of a file.
func newSources(lookUp func(name string) []byte) *sources {
	return &sources{lookUp, make(map[string]*lineIndex)}
}

// lineIndex knows where each line of a text begins.
type lineIndex struct {
	text   []byte
	starts []int
}

func newLineIndex(text []byte) *lineIndex {
	starts := []int{0}
	for i, b := range text {
		if b == '\n' {
			starts = append(starts, i+1)
		}
	}
	return &lineIndex{text, starts}
}

// line returns a line, counted from 1, without its end; nothing when there is none.
func (x *lineIndex) line(n int) string {
	if n < 1 || n > len(x.starts) {
		return ""
	}
	rest := x.text[x.starts[n-1]:]
	if end := bytes.IndexByte(rest, '\n'); end >= 0 {
		rest = rest[:end]
	}
	return strings.TrimSuffix(string(rest), "\r")
}

// line returns a line of a file; the index of each file is made once.
func (s *sources) line(file string, n int) string {
	x, made := s.lines[file]
	if !made {
		x = newLineIndex(s.bytes(file))
		s.lines[file] = x
	}
	return x.line(n)
}

// report brings messages into their JSON form: sorted by place, each once, and no more than are shown.
func report(found hcl.Diagnostics, src *sources) problems {
	p := problems{Schema: problemsSchema, Diagnostics: []diagnostic{}}
	sorted := slices.Clone(found)
	sort.SliceStable(sorted, func(i, j int) bool { return before(sorted[i], sorted[j]) < 0 })
	sorted = slices.CompactFunc(sorted, func(a, b *hcl.Diagnostic) bool { return before(a, b) == 0 })
	for _, d := range sorted {
		if d.Severity == hcl.DiagWarning {
			p.Warnings++
		} else {
			p.Errors++
		}
		if len(p.Diagnostics) < mostShown {
			p.Diagnostics = append(p.Diagnostics, src.diagnostic(d))
		}
	}
	p.Omitted = len(sorted) - len(p.Diagnostics)
	return p
}

// before orders messages by file, place, severity and words.
func before(a, b *hcl.Diagnostic) int {
	pa, pb := place(a), place(b)
	return cmp.Or(
		strings.Compare(pa.Filename, pb.Filename),
		cmp.Compare(pa.Start.Byte, pb.Start.Byte),
		cmp.Compare(a.Severity, b.Severity),
		strings.Compare(a.Summary, b.Summary),
		strings.Compare(a.Detail, b.Detail),
	)
}

func place(d *hcl.Diagnostic) hcl.Range {
	if d.Subject == nil {
		return hcl.Range{}
	}
	return *d.Subject
}

func (s *sources) diagnostic(d *hcl.Diagnostic) diagnostic {
	out := diagnostic{Severity: "error", Summary: d.Summary, Detail: d.Detail, Values: values(d)}
	if d.Severity == hcl.DiagWarning {
		out.Severity = "warning"
	}
	at := place(d)
	if at.Filename == "" {
		return out
	}
	out.File = at.Filename
	out.Line, out.Column = at.Start.Line, at.Start.Column
	out.EndLine, out.EndColumn = at.End.Line, at.End.Column
	if line := s.line(at.Filename, at.Start.Line); utf8.ValidString(line) {
		out.Source = line
	}
	return out
}

// values tells what the names of a faulty expression stood for, sorted by name.
func values(d *hcl.Diagnostic) []namedValue {
	if d.Expression == nil || d.EvalContext == nil {
		return nil
	}
	var out []namedValue
	for _, traversal := range d.Expression.Variables() {
		v, problems := traversal.TraverseAbs(d.EvalContext)
		if text, ok := valueText(v); ok && !problems.HasErrors() {
			out = append(out, namedValue{traversalName(traversal), text})
		}
	}
	slices.SortFunc(out, func(a, b namedValue) int { return strings.Compare(a.Name, b.Name) })
	return slices.Compact(out)
}

// valueText shows a number, a string or a truth value; nothing else fits on a line.
func valueText(v cty.Value) (string, bool) {
	if v == cty.NilVal || v.IsMarked() || !v.IsWhollyKnown() || v.IsNull() || !v.Type().IsPrimitiveType() {
		return "", false
	}
	text, err := convert.Convert(v, cty.String)
	if err != nil {
		return "", false
	}
	if v.Type() == cty.String {
		return `"` + text.AsString() + `"`, true
	}
	return text.AsString(), true
}

func traversalName(t hcl.Traversal) string {
	var name strings.Builder
	for _, step := range t {
		switch s := step.(type) {
		case hcl.TraverseRoot:
			name.WriteString(s.Name)
		case hcl.TraverseAttr:
			name.WriteString("." + s.Name)
		}
	}
	return name.String()
}
