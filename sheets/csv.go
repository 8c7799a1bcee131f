package sheets

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// dialHead names the columns of the dial table. Turns and marks are empty where a dial counts no turns.
var dialHead = []string{"part", "holding", "operation", "title", "line", "cut", "dial", "turns", "marks", "graduations_from_zero",
	"reads", "dial_figure", "work_then", "by_measure", "note"}

// dialTable is the dial cards of a part as CSV, one row for each line of a card.
func dialTable(p *plan.Part) ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	rows := [][]string{dialHead}
	for _, s := range p.Setups {
		for _, op := range s.Operations {
			for i, line := range op.Card {
				rows = append(rows, dialRow(p.Name, s.Number, op, i+1, line))
			}
		}
	}
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// holesHead names the columns of the table of holes.
var holesHead = []string{"part", "holding", "operation", "hole", "x_mm", "y_mm", "x_dial", "x_turns", "x_marks", "x_from_zero", "y_dial", "y_turns", "y_marks", "y_from_zero"}

// turnedHead names the columns that are added where a dividing head turns holes under the spindle.
var turnedHead = []string{"head_turns", "head_marks", "head_from_zero", "past_mm"}

// holesTable is all tables of holes of a part as CSV, one row for each hole; nil where the part has none.
func holesTable(p *plan.Part) ([]byte, error) {
	rows, turned := [][]string{holesHead}, turnsHoles(p)
	if turned {
		rows[0] = slices.Concat(holesHead, turnedHead)
	}
	for _, s := range p.Setups {
		for _, op := range s.Operations {
			for _, h := range op.Holes {
				row := []string{cell(p.Name), strconv.Itoa(s.Number), strconv.Itoa(op.Number), draw.HoleName(p, op.Feature, h.Number), units.Decimal(h.XMM, 4), units.Decimal(h.YMM, 4)}
				for _, l := range []plan.Line{h.X, h.Y} {
					row = append(row, dialFields(l)...)
				}
				if turned {
					row = append(row, headFields(h)...)
				}
				rows = append(rows, row)
			}
		}
	}
	if len(rows) == 1 {
		return nil, nil
	}
	var out bytes.Buffer
	err := csv.NewWriter(&out).WriteAll(rows)
	return out.Bytes(), err
}

// dialFields are a line's dial, turns, marks and graduations from nought; empty where there is no dial.
func dialFields(l plan.Line) []string {
	if l.Dial == "" {
		return []string{"", "", "", ""}
	}
	turns := ""
	if l.Counted {
		turns = whole(l.Turns)
	}
	return []string{cell(l.Dial), turns, whole(l.Marks), whole(l.Total)}
}

// turnsHoles reports whether a dividing head turns any hole of a part under the spindle.
func turnsHoles(p *plan.Part) bool {
	for _, s := range p.Setups {
		for _, op := range s.Operations {
			if slices.ContainsFunc(op.Holes, func(h plan.HoleLine) bool { return h.Head != nil }) {
				return true
			}
		}
	}
	return false
}

// headFields are the count of a dividing head for a hole, and how far past its place that drills it; empty where none turns it.
func headFields(h plan.HoleLine) []string {
	if h.Head == nil {
		return []string{"", "", "", ""}
	}
	return []string{whole(h.Head.Turns), whole(h.Head.Marks), whole(h.Head.Total), units.Decimal(h.PastMM, 4)}
}

func dialRow(part string, holding int, op plan.Operation, n int, l plan.Line) []string {
	turns := ""
	if l.Counted {
		turns = whole(l.Turns)
	}
	return []string{cell(part), strconv.Itoa(holding), strconv.Itoa(op.Number), cell(op.Title), strconv.Itoa(n), cell(l.Label), cell(l.Dial),
		turns, whole(l.Marks), whole(l.Total), cell(l.Reads), cell(l.Reading), cell(l.Makes), strconv.FormatBool(l.ByMeasure), cell(l.Note)}
}

func whole(n int64) string { return strconv.FormatInt(n, 10) }

// cell keeps a spreadsheet from taking words for a formula.
func cell(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}
