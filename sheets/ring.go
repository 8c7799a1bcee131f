package sheets

import (
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// ringTable is one line for each hole of a ring that a dividing head turns under the spindle: where it lies in the part, what the crank is counted to, and how far off along
// the ring that drills it, where no hole of the circle is nearer.
func (s *sheet) ringTable(op plan.Operation) []block {
	marks := op.Holes[0].Head.Reads
	t := table{head: []md{"Done", "Hole", "X, mm", "Y, mm", "head: turns", esc(marks), esc(marks + " from nought"), "Turned by", "Off along the ring, mm"}}
	exact := true
	for _, h := range op.Holes {
		off := "–"
		if h.PastMM != 0 {
			off, exact = signed(h.PastMM), false
		}
		t.rows = append(t.rows, []md{tick, bold(esc(draw.HoleName(s.part, op.Feature, h.Number))), esc(units.Decimal(h.XMM, 3)), esc(units.Decimal(h.YMM, 3)),
			bold(esc(whole(h.Head.Turns))), bold(esc(whole(h.Head.Marks))), esc(whole(h.Head.Total)), esc(h.Head.Reading), esc(off)})
	}
	title := bold("Holes") + ", at the places in the sketch, each counted from the head's nought and never from the hole before; with every tool once round, turning on through nought."
	if exact {
		t = t.without(len(t.head) - 1)
	} else {
		title += " No circle owned divides them exactly: each is at the nearest hole, + is past its place, anticlockwise as seen from the right end. The errors do not add up."
	}
	return []block{group{class: "holes", blocks: []block{para(title), t}}}
}

// signed is a length to a thousandth, with its sign.
func signed(mm float64) string {
	if mm > 0 {
		return "+" + units.Decimal(mm, 3)
	}
	return units.Decimal(mm, 3)
}
