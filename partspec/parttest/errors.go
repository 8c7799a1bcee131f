// Package parttest helps to test everything that reads parts: files with the
// expected messages written on their lines, and a generator of valid parts.
//
// In flow: HCL files, random choices. Out flow: test failures, and HCL text that
// partspec accepts.
package parttest

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"

	"catchplate/partspec"
)

// expectation is one comment such as
//
//	diameter = 20 # ERROR "larger than its stock"
//	depth    = 9  # ERROR:14 "deeper than the part"   (the message begins in column 14)
//	diameter = 1  # WARNING "really 1 mm across"
type expectation struct {
	line, column int
	severity     hcl.DiagnosticSeverity
	text         string
}

var comment = regexp.MustCompile(`(ERROR|WARNING)(?::(\d+))? "([^"]*)"`)

// CheckMessages loads one file and compares its diagnostics with the comments in
// it. A message that is missing fails the test, and so does one too many, or one
// that does not say what was expected.
func CheckMessages(t *testing.T, path string) {
	t.Helper()
	_, sources, found := partspec.Load([]string{path})
	expected := expectations(sources, path)
	if len(expected) == 0 {
		t.Errorf("%s expects no message: write # ERROR \"...\" on a line", path)
	}
	for _, d := range found {
		if d.Detail == "" {
			t.Errorf("does not say what was expected: %s", Describe(d))
		}
		i := slices.IndexFunc(expected, func(e expectation) bool { return e.matches(d) })
		if i < 0 {
			t.Errorf("not expected: %s", Describe(d))
			continue
		}
		expected = slices.Delete(expected, i, i+1)
	}
	for _, e := range expected {
		t.Errorf("%s:%d: no message has %q", path, e.line, e.text)
	}
}

func expectations(sources *partspec.Sources, path string) []expectation {
	var list []expectation
	for i, line := range strings.Split(string(sources.Text(path)), "\n") {
		_, remark, _ := strings.Cut(line, "# ")
		for _, match := range comment.FindAllStringSubmatch(remark, -1) {
			e := expectation{line: i + 1, severity: hcl.DiagError, text: match[3]}
			if match[1] == "WARNING" {
				e.severity = hcl.DiagWarning
			}
			e.column, _ = strconv.Atoi(match[2])
			list = append(list, e)
		}
	}
	return list
}

func (e expectation) matches(d *hcl.Diagnostic) bool {
	return d.Subject != nil && d.Severity == e.severity && d.Subject.Start.Line == e.line &&
		(e.column == 0 || e.column == d.Subject.Start.Column) && strings.Contains(strings.ReplaceAll(d.Summary+". "+d.Detail, `"`, "'"), e.text)
}

// Describe shows a diagnostic with its place, for the message of a failed test.
func Describe(d *hcl.Diagnostic) string {
	place := "no place"
	if d.Subject != nil {
		place = fmt.Sprintf("%s:%d:%d", d.Subject.Filename, d.Subject.Start.Line, d.Subject.Start.Column)
	}
	return fmt.Sprintf("%s: %s. %s", place, d.Summary, d.Detail)
}
