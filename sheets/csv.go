package sheets

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"catchplate/planner/plan"
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
