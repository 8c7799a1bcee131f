package sheets

import "catchplate/planner/plan"

// card is the table of what the dials are turned to. A cell holds a dial's reading or a size, never both.
func card(op plan.Operation) []block {
	if len(op.Card) == 0 {
		return nil
	}
	t := table{head: []md{"Done", "Cut", "Dial", "Turns", "Marks", "Marks from nought", "Dial figure", "The work is then", "Mind"}}
	for _, l := range op.Card {
		t.rows = append(t.rows, cardRow(l))
	}
	return []block{group{class: "card", blocks: []block{
		para(bold("Dial card") + ": whole turns and marks counted from nought. Come to every figure from the side of nought; " +
			"when one is overshot, go back a whole turn and come again."),
		t,
	}}}
}

func cardRow(l plan.Line) []md {
	turns, marks := bold(esc(whole(l.Turns))), bold(esc(whole(l.Marks)))
	if !l.Counted {
		turns = "–"
	}
	return []md{tick, bold(esc(l.Label)), esc(words(", ", l.Dial, readsText(l.Reads))), turns, marks, esc(whole(l.Total)), esc(l.Reading), esc(l.Makes), mind(l)}
}

// readsText says what a dial's marks mean where that could be mistaken.
func readsText(reads string) string {
	switch reads {
	case "diameter", "radius":
		return "marks count " + reads
	}
	return ""
}

// mind is a line's note; where only measuring gives the size, it says so.
func mind(l plan.Line) md {
	note := l.Note
	if l.ByMeasure {
		note = words("; ", note, "the dial is a guide, end by measuring")
	}
	return esc(note)
}
