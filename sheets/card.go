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
	for column := len(t.head) - 1; column >= firstOptional; column-- {
		if t.empty(column) {
			t = t.without(column)
		}
	}
	title := para(bold("Dial card") + ", counted from nought and come to from nought's side." + meanings(op.Card))
	return []block{group{class: "card", blocks: []block{title, t}}}
}

// firstOptional is the first column of a card that is left out when no line fills it: what the work then measures, then the notes.
const firstOptional = 7

// oneWay is the rule for every dial card; the sheet says it once in full.
const oneWay = "On every dial card, count whole turns and then marks from nought, and come to a figure only from the side of nought, so that the " +
	"screw stays loaded one way. When a figure is overshot, go back a whole turn and come again."

// meanings say once for each dial what its marks count, where that could be mistaken.
func meanings(card []plan.Line) md {
	var said once
	for _, l := range card {
		if l.Reads == "diameter" || l.Reads == "radius" {
			said.add("The " + l.Dial + " dial's marks count " + l.Reads + ".")
		}
	}
	if len(said) == 0 {
		return ""
	}
	return " " + esc(words(" ", said...))
}

func cardRow(l plan.Line) []md {
	turns, marks := bold(esc(whole(l.Turns))), bold(esc(whole(l.Marks)))
	if !l.Counted {
		turns = "–"
	}
	return []md{tick, bold(esc(l.Label)), esc(l.Dial), turns, marks, esc(whole(l.Total)), esc(l.Reading), say(l.Makes), mind(l)}
}

// mind is a line's note; where only measuring gives the size, or the place lies before nought, it says so.
func mind(l plan.Line) md {
	note := l.Note
	if l.Total < 0 {
		note = words("; ", note, "minus: marks still short of nought")
	}
	if l.ByMeasure {
		note = words("; ", note, "a guide: end by measuring")
	}
	return say(note)
}
