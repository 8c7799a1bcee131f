package tables

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"catchplate/partspec/units"
)

//go:embed data/*.csv
var files embed.FS

// Range is a published range of a figure. Both ends are zero where it is not known.
type Range struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Known reports whether the range holds a figure.
func (r Range) Known() bool { return r != Range{} }

// Middle is the figure half-way.
func (r Range) Middle() float64 { return (r.Low + r.High) / 2 }

// record reads the fields of one CSV row by column name and gathers what is
// wrong with them, so that one run of Check tells everything.
type record struct {
	file    string
	line    int
	columns map[string]int
	fields  []string
	errs    []error
}

func (r *record) fail(column, format string, args ...any) {
	r.errs = append(r.errs, fmt.Errorf("%s:%d: %s: %s", r.file, r.line, column, fmt.Sprintf(format, args...)))
}

// text returns a field, which may be empty.
func (r *record) text(column string) string {
	i, ok := r.columns[column]
	if !ok {
		r.fail(column, "no such column")
		return ""
	}
	return strings.TrimSpace(r.fields[i])
}

// need returns a field that must not be empty.
func (r *record) need(column string) string {
	text := r.text(column)
	if text == "" {
		r.fail(column, "is empty")
	}
	return text
}

// number returns a field as a figure; an empty field is 0.
func (r *record) number(column string) float64 {
	text := r.text(column)
	if text == "" {
		return 0
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || x-x != 0 { // x-x is not 0 for an infinity or a NaN
		r.fail(column, "%q is not a figure", text)
	}
	return x
}

// length returns a field in millimetres; an empty field is 0.
func (r *record) length(column string) units.Length { return units.Length(r.number(column)) }

// between returns a pair of columns as a range with its ends in order.
func (r *record) between(prefix string) Range {
	low, high := prefix+"_low", prefix+"_high"
	found := Range{r.number(low), r.number(high)}
	if r.text(low) != "" && r.text(high) != "" && found.Low > found.High {
		r.fail(low, "%g is above %g", found.Low, found.High)
	}
	return found
}

// provenance is the source of a row, which no row may lack.
func (r *record) provenance(column string) (source string, fromMemory bool) {
	source = r.need(column)
	return source, remembered(source)
}

// remembered reports whether a source was recalled and not read.
func remembered(source string) bool {
	return strings.Contains(strings.ToLower(source), "from memory")
}

// load reads a CSV file with one header row into typed rows, in file order.
func load[T any](file string, parse func(*record) T) ([]T, error) {
	raw, err := files.Open("data/" + file)
	if err != nil {
		return nil, err
	}
	defer raw.Close()
	lines, err := csv.NewReader(raw).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	if len(lines) < 2 {
		return nil, fmt.Errorf("%s: no rows", file)
	}
	columns := make(map[string]int, len(lines[0]))
	for i, name := range lines[0] {
		columns[name] = i
	}
	var rows []T
	var errs []error
	for i, fields := range lines[1:] {
		r := &record{file: file, line: i + 2, columns: columns, fields: fields}
		rows = append(rows, parse(r))
		errs = append(errs, r.errs...)
	}
	return rows, errors.Join(errs...)
}

// mustLoad is load for a lookup. The files are part of the program and Check
// has read them in a test, so that an error here cannot come from a user.
func mustLoad[T any](file string, parse func(*record) T) []T {
	rows, err := load(file, parse)
	if err != nil {
		panic("tables: " + err.Error())
	}
	return rows
}

// Check reads every table whole and returns all that is wrong with them.
func Check() error {
	var errs []error
	for _, check := range []func() error{
		checkOf("materials.csv", parseMaterial),
		checkOf("material_names.csv", parseMaterialName),
		checkOf("depth_per_pass.csv", parseDepthPerPass),
		checkOf("drills.csv", parseDrill),
		checkOf("threads.csv", parseThread),
		checkOf("threads_more.csv", parseThreadSize),
		checkOf("fits.csv", parseFitRow),
		checkOf("general_tolerances.csv", parseGeneralTolerance),
		checkOf("tapers.csv", parseTaper),
		checkOf("cutting.csv", parseCuttingRule),
		checkOf("accuracy.csv", parseAccuracyRow),
	} {
		errs = append(errs, check())
	}
	return errors.Join(errs...)
}

func checkOf[T any](file string, parse func(*record) T) func() error {
	return func() error {
		_, err := load(file, parse)
		return err
	}
}
