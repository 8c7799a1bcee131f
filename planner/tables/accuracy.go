package tables

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"catchplate/partspec/units"
)

// Accuracy is what a process or a holding can be trusted to do on a small
// machine. Figures that are not known are zero.
type Accuracy struct {
	Name       string
	ITBest     int          // ISO 286 grade with care
	ITUsual    int          // the coarser end of the usual grades
	RaUm       Range        // roughness, micrometres
	RunOut     units.Limits // total indicator reading; for a position, its error
	Conditions string
	Source     string
	FromMemory bool
}

type accuracyRow struct {
	Accuracy
	record string // "process" or "holding"
}

func parseAccuracyRow(r *record) accuracyRow {
	row := accuracyRow{record: r.need("record"), Accuracy: Accuracy{
		Name: r.need("process_or_holding"), ITBest: int(r.number("it_grade_best")), ITUsual: coarserGrade(r),
		RaUm:       r.between("ra_um"),
		RunOut:     units.Limits{Low: r.length("tir_mm_low"), High: r.length("tir_mm_high")},
		Conditions: r.text("conditions"),
	}}
	row.Source, row.FromMemory = r.provenance("source")
	if row.record != "process" && row.record != "holding" {
		r.fail("record", "%q is not a record", row.record)
	}
	if !row.RunOut.Valid() {
		r.fail("tir_mm_low", "is above the high figure")
	}
	return row
}

// coarserGrade reads "8" or "12-13". A thread's class ("6g-8g") is no grade.
func coarserGrade(r *record) int {
	text := r.text("it_grade_usual")
	if text == "" || strings.Contains(text, "g") {
		return 0
	}
	last := text[strings.LastIndex(text, "-")+1:]
	grade, err := strconv.Atoi(last)
	if err != nil {
		r.fail("it_grade_usual", "%q is not a grade", text)
	}
	return grade
}

var accuracyRows = sync.OnceValue(func() []accuracyRow { return mustLoad("accuracy.csv", parseAccuracyRow) })

// Processes lists the processes with their grades and roughness.
func Processes() []Accuracy { return accuracyOf("process") }

// Holdings lists the holdings with their run-out.
func Holdings() []Accuracy { return accuracyOf("holding") }

func accuracyOf(record string) []Accuracy {
	var found []Accuracy
	for _, row := range accuracyRows() {
		if row.record == record {
			found = append(found, row.Accuracy)
		}
	}
	return found
}

// FindProcess returns the process of that name, or the first whose name begins
// with it.
func FindProcess(name string) (Accuracy, bool) { return findAccuracy(Processes(), name) }

// FindHolding returns the holding of that name, or the first whose name begins
// with it.
func FindHolding(name string) (Accuracy, bool) { return findAccuracy(Holdings(), name) }

func findAccuracy(rows []Accuracy, name string) (Accuracy, bool) {
	want := strings.ToLower(strings.TrimSpace(name))
	i := slices.IndexFunc(rows, func(a Accuracy) bool { return strings.ToLower(a.Name) == want })
	if i < 0 {
		i = slices.IndexFunc(rows, func(a Accuracy) bool { return want != "" && strings.HasPrefix(strings.ToLower(a.Name), want) })
	}
	if i < 0 {
		return Accuracy{}, false
	}
	return rows[i], true
}
