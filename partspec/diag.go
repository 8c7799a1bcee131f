package partspec

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
)

// fault makes an error: what is wrong, and what was expected or what to write
// instead.
func fault(at Range, summary, detail string, args ...any) *Diagnostic {
	return &Diagnostic{Severity: hcl.DiagError, Summary: summary, Detail: fmt.Sprintf(detail, args...), Subject: &at}
}

// question makes a warning: the input can be meant, but hardly is.
func question(at Range, summary, detail string, args ...any) *Diagnostic {
	d := fault(at, summary, detail, args...)
	d.Severity = hcl.DiagWarning
	return d
}

// tidy sorts diagnostics by file and place and drops what is beyond the bound.
// hcl itself collects some of them from maps, so they do not come in order.
func tidy(found Diagnostics) Diagnostics {
	slices.SortStableFunc(found, func(a, b *Diagnostic) int {
		x, y := subject(a), subject(b)
		return cmp.Or(
			cmp.Compare(x.Filename, y.Filename), cmp.Compare(x.Start.Byte, y.Start.Byte), cmp.Compare(x.End.Byte, y.End.Byte),
			cmp.Compare(a.Severity, b.Severity), cmp.Compare(a.Summary, b.Summary), cmp.Compare(a.Detail, b.Detail))
	})
	found = slices.CompactFunc(found, func(a, b *Diagnostic) bool {
		return subject(a) == subject(b) && a.Summary == b.Summary && a.Detail == b.Detail
	})
	if len(found) > maxReported {
		return found[:maxReported:maxReported]
	}
	return found
}

func subject(d *Diagnostic) Range {
	if d.Subject == nil {
		return Range{}
	}
	return *d.Subject
}

// didYouMean ends a message with the nearest of the known words, or with the
// known words when none is near. Where none is known it says what to do instead.
func didYouMean(word string, known []string, instead string) string {
	if near := nearest(word, known); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	const few = 40
	switch {
	case len(known) == 0:
		return instead
	case len(known) > few:
		return fmt.Sprintf("Known here: %s and %d more.", strings.Join(known[:few], ", "), len(known)-few)
	}
	return "Known here: " + strings.Join(known, ", ") + "."
}

// What to do where a name is looked up and nothing of its kind is written.
const (
	noParts    = "No part of that name can be read in these files."
	noFeatures = "The part has no feature that can be named: write it first."
)

// nearest finds the known word with the fewest changed letters, at most a third
// of the word and never all of it; of two equally near ones the first in alphabetical order.
func nearest(word string, known []string) string {
	const longest = 64 // longer words are no misspelling of ours
	if len(word) > longest {
		return ""
	}
	best, least := "", min(max(1, len(word)/3), len(word)-1)+1
	for _, candidate := range slices.Sorted(slices.Values(known)) {
		if d := changes(word, candidate); d < least {
			best, least = candidate, d
		}
	}
	return best
}

// changes counts the letters to change, add, leave out or swap with the next one
// to make one short word the other (optimal string alignment, in bytes).
func changes(a, b string) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			replace := last[j-1]
			if a[i-1] != b[j-1] {
				replace++
			}
			row[j] = min(replace, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}

// listed joins names for a sentence: "a, b and c".
func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func nearestHint(word string, known []string) string {
	if near := nearest(word, known); near != "" {
		return fmt.Sprintf("Did you mean %q?", near)
	}
	return ""
}

func spaced(text string) string {
	if text == "" {
		return ""
	}
	return text + " "
}
