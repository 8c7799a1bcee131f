package sheets

import (
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// operation is one thing done with one tool: settings, zeros and dial card, which stay on one page, then measurements, notes and reasons.
func (s *sheet) operation(setup *plan.Setup, op plan.Operation) []block {
	work := []block{heading{3, esc(itoa(op.Number)) + " " + say(op.Title)}}
	work = append(work, group{class: "facts", blocks: []block{list{items: s.settings(op)}}})
	work = append(work, s.zeros(setup, op.Zeros)...)
	if op.Steps != nil {
		work = append(work, s.steps(op)...)
	} else {
		work = append(work, s.holeTable(op)...)
		work = append(work, card(op)...)
	}
	out := []block{group{class: "work", blocks: work}}
	out = append(out, s.edgesLeft(setup, op)...)
	out = append(out, s.chords(op)...)
	out = append(out, checks(op.Checks)...)
	if len(op.Notes) > 0 {
		out = append(out, para(bold("Mind")), list{items: sayAll(op.Notes)})
	}
	return append(out, reasons("Why here, why so", op.Why)...)
}

// speedOf names the speed at the head of an operation: where drills follow each other it is the last one's, and each of the others has its own.
func speedOf(op plan.Operation) string {
	if op.Process == plan.Drill && len(toolsOf(op)) > 1 {
		return "Speed of the last drill"
	}
	return "Speed"
}

// settings are one labelled figure a line.
func (s *sheet) settings(op plan.Operation) []md {
	var items []md
	if tools := toolsOf(op); len(tools) > 0 {
		items = append(items, labelled("Tool", say(words(", ", tools...))))
	}
	if op.RPM > 0 {
		items = append(items, labelled(speedOf(op), bold(esc(units.Speed(op.RPM).String()))))
		items = append(items, labelled("Speed reckoned", esc(units.Speed(op.WantedRPM).String())+ruledBy(op.SpeedWhy)))
		items = append(items, feed(op))
	}
	if op.Passes > 0 {
		items = append(items, labelled("Passes", esc(itoa(op.Passes))))
	}
	if op.DepthMM > 0 {
		items = append(items, labelled("Deepest pass", esc(s.length(op.DepthMM))))
	}
	if op.TopSlideDeg != 0 {
		items = append(items, labelled("Top slide set over", esc(setOver(op.TopSlideDeg))))
	}
	if op.ForceN > 0 {
		items = append(items, labelled("Cutting force", esc("about "+newtons(op.ForceN))))
	}
	return append(items, labelled("Time", esc(minutes(op.Minutes))))
}

func ruledBy(why string) md {
	if why == "" {
		return ""
	}
	return ", ruled by: " + say(why)
}

func feed(op plan.Operation) md {
	if op.FeedMM == 0 {
		return labelled("Feed", "by hand")
	}
	return labelled("Feed", esc(units.Length(op.FeedMM).String()+" a turn"))
}

// zeros are the lines that set a dial to nought.
func (s *sheet) zeros(setup *plan.Setup, zeros []plan.Zero) []block {
	if len(zeros) == 0 {
		return nil
	}
	var items []md
	for _, z := range zeros {
		text := bold(esc(draw.DialName(setup, z.Dial))+" dial to nought") + ": " + say(z.How) + " (" + esc(s.reference(setup, z)) + ")"
		items = append(items, text)
	}
	return []block{para(bold("Set nought")), list{ticks: true, items: items}}
}

// reference says where a dial's nought lies and which way it counts.
func (s *sheet) reference(setup *plan.Setup, z plan.Zero) string {
	switch {
	case z.Dial == "cross" && z.Outward:
		return "nought at Ø" + s.length(z.ReferenceMM) + ", count away from the axis"
	case z.Dial == "cross":
		return "nought at Ø" + s.length(z.ReferenceMM) + ", count towards the axis"
	case z.Dial == "top":
		return "count along the top slide"
	case setup.MachineKind == "mill" || setup.MachineKind == "drill" || setup.MachineKind == plan.OnSlide:
		return s.tableReference(setup, z)
	}
	return "nought " + s.length(z.ReferenceMM) + " from the part's " + s.leftEnd() + ", count towards the headstock"
}

// checks are the measurements of an operation, each with a place for what was found.
func checks(list_ []plan.Check) []block {
	if len(list_) == 0 {
		return nil
	}
	var items []md
	for _, c := range list_ {
		items = append(items, check(c))
	}
	return []block{group{class: "checks", blocks: []block{para(bold("Measure")), list{ticks: true, items: items}}}}
}

func check(c plan.Check) md {
	text := bold(say(c.What)+":") + " " + bold(esc(c.Limits))
	if c.Instrument != "" {
		text += ", with the " + say(c.Instrument)
	} else {
		text += ", by the mating part or a gauge"
	}
	if c.When != "" {
		text += ", " + bold(say(c.When))
	}
	text += "."
	for _, more := range []struct{ label, text string }{{"If large", c.IfLarge}, {"If small", c.IfSmall}, {"Mind", c.Doubt}} {
		if more.text != "" {
			text += " " + md(more.label) + ": " + say(more.text) + "."
		}
	}
	return text + " Found: …………………"
}

// setOver is the top slide's angle from the axis; one that has gone past square also as people set it, from square.
func setOver(deg float64) string {
	const square = 90
	a := units.Angle(deg)
	text := a.String() + " from the axis (" + a.DegreesMinutes() + ")"
	if past := math.Abs(deg) - square; past > 0 {
		text += ", which is " + units.Angle(past).String() + " past square"
	}
	return text
}
