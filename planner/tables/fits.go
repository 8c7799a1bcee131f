package tables

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"catchplate/partspec/units"
)

// Deviations are how far a size may lie from the nominal, Lower <= Upper.
type Deviations struct {
	Lower, Upper units.Length
	Source       string
	FromMemory   bool
}

// FitChoice is a pair of classes that serves a purpose.
type FitChoice struct {
	Purpose     string // "sliding", "press / medium drive"
	Hole, Shaft string // ISO 286 classes
	Note        string
	Source      string
	FromMemory  bool
}

// GapChoice is the clearance on diameter that a joint wants.
type GapChoice struct {
	Joint      string // "soft-solder gap"
	Clearance  units.Limits
	Note       string
	Source     string
	FromMemory bool
}

// fitRow is a row of fits.csv, whose meaning depends on its record.
type fitRow struct {
	record, letter, feature string
	over, upTo              units.Length
	grades                  []gradeSpan
	bound                   string // which limit the deviation is; of a fit choice, its purpose
	value, note             string
	micrometres             float64
	source                  string
	fromMemory              bool
}

// gradeSpan is a span of tolerance grades, both ends included.
type gradeSpan struct{ from, to int }

// allGrades is the span of the table's "all" and "and more".
const allGrades = 99

func parseFitRow(r *record) fitRow {
	row := fitRow{
		record: r.need("record"), letter: r.need("letter"), feature: r.text("feature"),
		over: r.length("over_mm"), upTo: r.length("upto_mm"),
		bound: r.text("bound"), value: r.text("value_um"), note: r.text("note"),
	}
	row.source, row.fromMemory = r.provenance("source")
	switch row.record {
	case "tolerance_grade", "deviation":
		row.micrometres = r.number("value_um")
		row.grades = parseGrades(r)
		if row.over >= row.upTo {
			r.fail("over_mm", "range is empty")
		}
	case "fit_choice":
		if _, _, err := SplitFit(row.letter); err != nil {
			r.fail("letter", "%v", err)
		}
	case "gap_choice":
		if _, ok := parseGap(row.value); !ok {
			r.fail("value_um", "%q is not a range", row.value)
		}
	default:
		r.fail("record", "%q is not a record", row.record)
	}
	return row
}

// parseGrades reads "all", "7", "4-7", "9 and more", "3 and less, 8 and more".
func parseGrades(r *record) []gradeSpan {
	var spans []gradeSpan
	for _, text := range strings.Split(r.need("grades"), ", ") {
		span, err := parseGradeSpan(text)
		if err != nil {
			r.fail("grades", "%q: %v", text, err)
		}
		spans = append(spans, span)
	}
	return spans
}

func parseGradeSpan(text string) (gradeSpan, error) {
	if text == "all" {
		return gradeSpan{0, allGrades}, nil
	}
	if n, ok := strings.CutSuffix(text, " and more"); ok {
		from, err := strconv.Atoi(n)
		return gradeSpan{from, allGrades}, err
	}
	if n, ok := strings.CutSuffix(text, " and less"); ok {
		to, err := strconv.Atoi(n)
		return gradeSpan{0, to}, err
	}
	first, last, isSpan := strings.Cut(text, "-")
	if !isSpan {
		last = first
	}
	from, err := strconv.Atoi(first)
	if err != nil {
		return gradeSpan{}, err
	}
	to, err := strconv.Atoi(last)
	return gradeSpan{from, to}, err
}

func parseGap(text string) (units.Limits, bool) {
	low, high, ok := strings.Cut(text, "-")
	from, err1 := strconv.ParseFloat(low, 64)
	to, err2 := strconv.ParseFloat(high, 64)
	return units.Around(0, micrometres(from), micrometres(to)), ok && err1 == nil && err2 == nil && from <= to
}

func micrometres(um float64) units.Length { return units.Length(um/1000) * units.MM }

var fitRows = sync.OnceValue(func() []fitRow { return mustLoad("fits.csv", parseFitRow) })

// covers reports whether the row holds for a size and a grade. A size on the
// edge of a range belongs to the lower range.
func (row fitRow) covers(size units.Length, grade int) bool {
	return row.over < size && size <= row.upTo &&
		slices.ContainsFunc(row.grades, func(s gradeSpan) bool { return s.from <= grade && grade <= s.to })
}

// FitChoices lists the usual fits by purpose, loosest first.
func FitChoices() []FitChoice {
	var choices []FitChoice
	for _, row := range fitRows() {
		if row.record == "fit_choice" {
			hole, shaft, _ := SplitFit(row.letter)
			choices = append(choices, FitChoice{row.bound, hole, shaft, row.note, row.source, row.fromMemory})
		}
	}
	return choices
}

// FindFit returns the fit for a purpose: the whole purpose ("light press"), or
// a word of it ("sliding", "push") where only one fit begins with it or has it.
func FindFit(purpose string) (FitChoice, error) {
	want := strings.ToLower(strings.TrimSpace(purpose))
	var byWord []FitChoice
	for _, c := range FitChoices() {
		name := strings.ToLower(c.Purpose)
		if name == want {
			return c, nil
		}
		if slices.Contains(strings.FieldsFunc(name, func(r rune) bool { return strings.ContainsRune(" /,()", r) }), want) {
			if strings.HasPrefix(name, want) {
				return c, nil
			}
			byWord = append(byWord, c)
		}
	}
	if len(byWord) == 1 {
		return byWord[0], nil
	}
	var names []string
	for _, c := range FitChoices() {
		names = append(names, c.Purpose)
	}
	return FitChoice{}, fmt.Errorf("no one fit for the purpose %q: write one of: %s; or a class like H7/g6", purpose, strings.Join(names, "; "))
}

// GapChoices lists the clearances that joints want.
func GapChoices() []GapChoice {
	var choices []GapChoice
	for _, row := range fitRows() {
		if row.record == "gap_choice" {
			gap, _ := parseGap(row.value)
			choices = append(choices, GapChoice{row.letter, gap, row.note, row.source, row.fromMemory})
		}
	}
	return choices
}

// FindGap returns the clearance for a joint by its whole name or its beginning.
func FindGap(joint string) (GapChoice, bool) {
	want := strings.ToLower(strings.TrimSpace(joint))
	for _, c := range GapChoices() {
		if want != "" && strings.HasPrefix(strings.ToLower(c.Joint), want) {
			return c, true
		}
	}
	return GapChoice{}, false
}
