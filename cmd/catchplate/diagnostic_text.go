package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"
)

const (
	lineWidth  = 100 // characters of a source line that are shown; of a longer one, the part around the mark
	runesAhead = 40  // of those, how many stand before the mark
)

// text prints messages as FILE:LINE:COLUMN: error: SUMMARY, the line, a mark under it, and what to do.
func (p problems) text(w io.Writer, paint paint) {
	for _, d := range p.Diagnostics {
		d.text(w, paint)
	}
	if p.Omitted > 0 {
		fmt.Fprintf(w, "and %d more\n", p.Omitted)
	}
}

func (d diagnostic) text(w io.Writer, paint paint) {
	where := ""
	if d.File != "" {
		where = fmt.Sprintf("%s:%d:%d: ", printable(d.File), d.Line, d.Column)
	}
	color := sgrRed
	if d.Severity == "warning" {
		color = sgrYellow
	}
	fmt.Fprintf(w, "%s%s %s\n", paint.wrap(sgrBold, where), paint.wrap(color, d.Severity+":"), paint.wrap(sgrBold, printable(d.Summary)))
	if d.Source != "" {
		line, mark := d.snippet()
		fmt.Fprintf(w, "  %s\n  %s\n", line, paint.wrap(color, mark))
	}
	for _, v := range d.Values {
		fmt.Fprintf(w, "  with %s as %s\n", printable(v.Name), printable(v.Value))
	}
	for line := range strings.Lines(d.Detail) {
		fmt.Fprintf(w, "  %s\n", printable(strings.TrimSpace(line)))
	}
}

// snippet returns the source line and the mark under the text that the message is about. Both are cut alike when the line is long.
func (d diagnostic) snippet() (line, mark string) {
	runes := []rune(printable(d.Source))
	from := min(max(d.Column-1, 0), len(runes))
	to := len(runes)
	if d.EndLine == d.Line {
		to = min(max(d.EndColumn-1, from), len(runes))
	}
	if len(runes) > lineWidth {
		cut := min(max(from-runesAhead, 0), len(runes)-lineWidth)
		runes, from, to = runes[cut:cut+lineWidth], from-cut, min(to-cut, lineWidth)
	}
	return string(runes), strings.Repeat(" ", from) + strings.Repeat("^", max(to-from, 1))
}

// printable replaces what would move the cursor or speak to the terminal: a tab by a space, other control characters by a mark.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r):
			return '·'
		}
		return r
	}, text)
}
