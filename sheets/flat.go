package sheets

import (
	"fmt"

	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// template points at the file to be printed at full size, where there is something to mark out.
func (s *sheet) template() []block {
	page, ok := draw.Template(s.base+"-template", s.part)
	if !ok {
		return nil
	}
	s.figure(page)
	file := page.Name + ".svg"
	return []block{para(bold("Marking-out template, full size:") + " [" + esc(file) + "](" + md(file) + "). Print it at 100 %, without fitting to the page, and measure its two check lines before use.")}
}

// leftEnd is what the part's end at Z = 0 is called.
func (s *sheet) leftEnd() string {
	if s.part.Drawing.Flat != nil {
		return "back"
	}
	return "left end"
}

// tiltedReference says the same of work that is set over: heights and ways are counted from where its axis goes through its left end.
func (s *sheet) tiltedReference(z plan.Zero) string {
	at := s.length(z.ReferenceMM)
	switch z.Dial {
	case "x":
		return "nought " + at + " along x from the part's axis, count to the right"
	case "y":
		return "nought " + at + " along y from the middle of the part's left end, as it is set over, count away from you"
	}
	return "nought " + at + " above the middle of the part's left end, as it is set over, count into the work"
}

// tableReference says where a dial of a table or a quill stands at nought, and which way it counts.
func (s *sheet) tableReference(setup *plan.Setup, z plan.Zero) string {
	at, away := s.length(z.ReferenceMM), "count away from you"
	if setup.MachineKind == plan.OnSlide {
		away = "count as the work goes down"
	}
	if setup.Tilt != nil {
		return s.tiltedReference(z)
	}
	switch {
	case z.Dial == "quill" || z.Dial == "z":
		if setup.Across {
			return "nought " + at + " above the part's axis, count into the work"
		}
		return "nought " + at + " from the part's " + s.leftEnd() + ", count into the work"
	case setup.Across && z.Dial == "x":
		return "nought " + at + " from the part's left end, count to the right"
	case setup.Across:
		return "nought " + at + " from the part's axis, " + away
	case z.Dial == "x":
		return "nought at X " + at + ", count to the right"
	}
	return "nought at Y " + at + ", " + away
}

// truth is how truly the work runs on a lathe, or how near it lies to where the dials have it.
func truth(setup *plan.Setup) []md {
	if setup.ThrowMM > 0 {
		return []md{labelled("Set over by", esc(fmt.Sprintf("%s mm, so that the axis %s runs true; the clock on %s swings %.3f to %.3f mm", units.Decimal(setup.ThrowMM, 3), setup.Axis, setup.Locates, setup.SwingLowMM, setup.SwingHighMM)))}
	}
	var items []md
	if setup.MachineKind != "bench" && (setup.RunOutMM > 0 || setup.LocateMM == 0) {
		items = append(items, labelled("Expect run-out", say("up to "+units.Length(setup.RunOutMM).String()+", full indicator reading, of "+surface(setup.Locates))))
	}
	if setup.LocateMM > 0 {
		from := surface(setup.Locates)
		if setup.Dividing != nil && !setup.Across {
			from = "the dividing head's own axis"
		}
		items = append(items, labelled("Its place is good to", say(units.Length(setup.LocateMM).String()+" either way, found from "+from)))
	}
	return items
}

// carried is what the work lies on, and where a tool may come through.
func (s *sheet) carried(setup *plan.Setup) []md {
	b := setup.Bed
	if b == nil {
		return nil
	}
	var items []md
	if b.Kind != "" && b.Kind != "jaws" && b.Kind != "plate" { // those the holding says itself
		text := b.Kind
		if b.HeightMM > 0 {
			text += ", " + s.length(b.HeightMM) + " high"
		}
		items = append(items, labelled("Lies on", say(text)))
	}
	if b.GapMM > 0 && strings.Contains(b.Kind, "board") {
		items = append(items, labelled("Tools may run into it", esc(s.length(b.GapMM))))
	} else if b.GapMM > 0 {
		items = append(items, labelled("Clear behind the work", esc(s.length(b.GapMM)+", for a tool that comes through")))
	}
	return items
}

// balance is the counterweight of off-centre work, and the speed that it allows.
func balance(b *plan.Balance) []md {
	if b == nil {
		return nil
	}
	items := []md{labelled("Turning mass", esc(units.Decimal(b.MassKg, 2)+" kg, off balance by "+units.Decimal(b.UnbalanceKgMM, 1)+" kg·mm"))}
	if b.WeightKg > 0 {
		items = append(items, labelled("Counterweight", esc(units.Decimal(b.WeightKg, 2)+" kg, its middle "+units.Decimal(b.RadiusMM, 0)+" mm from the axis, "+
			units.Decimal(b.AngleDeg, 0)+"° from the part's X")))
		items = append(items, labelled("Balance it so", "out of gear, move or change the weight until the plate stops anywhere"))
	}
	if b.MostRPM > 0 {
		items = append(items, labelled("No faster than", esc(units.Speed(b.MostRPM).String()+", with "+units.Decimal(b.LeftOverKgMM, 1)+" kg·mm left over and a shaking force of "+newtons(b.ShakingN))))
	}
	return items
}

// clamps are the places of all clamps, numbered as in the sketch.
func clamps(setup *plan.Setup) []block {
	list, words := setup.Clamps, md("**Clamps**, as in the sketch; each toe over metal that is carried below.")
	if l := setup.Ledge; l != nil {
		list, words = l.Straps, "**Straps**, as in the sketch; each toe on an edge, over metal that is solid down to the ledge."
	}
	if len(list) == 0 {
		return nil
	}
	const stud = 6 // the column
	t := table{head: []md{"Done", "Clamp", "Toe at X, mm", "Y, mm", "Toe wide, mm", "Stud towards", "Stud from toe, mm", "Presses with"}}
	for i, c := range list {
		t.rows = append(t.rows, []md{tick, bold(esc(itoa(i + 1))), esc(units.Decimal(c.XMM, 1)), esc(units.Decimal(c.YMM, 1)), esc(units.Decimal(c.ToeMM, 1)),
			esc(units.Decimal(c.AngleDeg, 0) + "° from X"), positive(c.StudMM), esc(newtons(c.ForceN))})
	}
	if t.empty(stud) {
		t = t.without(stud)
	}
	return []block{group{class: "clamps", blocks: []block{para(words), t}}}
}

// positive shows a length in millimetres, and nothing where none is known.
func positive(mm float64) md {
	if mm <= 0 {
		return ""
	}
	return esc(units.Decimal(mm, 1))
}

// holeTable is one line a hole: where it lies in the part, and what the dials then read.
func (s *sheet) holeTable(op plan.Operation) []block {
	if len(op.Holes) == 0 {
		return nil
	}
	if op.Holes[0].Head != nil {
		return s.ringTable(op)
	}
	first := op.Holes[0]
	dials := first.X.Dial != "" || first.Y.Dial != ""
	head := []md{"Done", "Hole", "X, mm", "Y, mm"}
	if dials {
		for _, d := range []string{first.X.Dial, first.Y.Dial} {
			head = append(head, esc(d)+": turns", "marks", "from nought")
		}
		head = append(head, "Mind")
	}
	t := table{head: head}
	for _, h := range op.Holes {
		row := []md{tick, bold(esc(draw.HoleName(s.part, op.Feature, h.Number))), esc(units.Decimal(h.XMM, 3)), esc(units.Decimal(h.YMM, 3))}
		if dials {
			for _, l := range []plan.Line{h.X, h.Y} {
				turns := bold(esc(whole(l.Turns)))
				if !l.Counted {
					turns = "–"
				}
				row = append(row, turns, bold(esc(whole(l.Marks))), esc(whole(l.Total)))
			}
			row = append(row, md(words("; ", string(mind(h.X)), string(mind(h.Y)))))
		}
		t.rows = append(t.rows, row)
	}
	title := bold("Holes") + ", at the places in the sketch."
	if dials {
		if last := len(t.head) - 1; t.empty(last) {
			t = t.without(last)
		}
		title = bold("Holes") + ", counted from nought: go to each from nought, never from hole to hole, and come to both figures from nought's side."
	}
	return []block{group{class: "holes", blocks: []block{para(title), t}}}
}

// chords are distances over two holes to be measured when a pattern is drilled.
func (s *sheet) chords(op plan.Operation) []block {
	if len(op.Chords) == 0 {
		return nil
	}
	t := table{head: []md{"Done", "From hole", "to hole", "Between centres, mm", "Over two pins, mm", "Pins, mm", "Within, mm", "Found"}}
	for _, c := range op.Chords {
		over, pin := units.Decimal(c.OverMM, 2), units.Decimal(c.PinMM, 2)
		if c.PinMM == 0 {
			over, pin = "", ""
		}
		t.rows = append(t.rows, []md{tick, esc(draw.HoleName(s.part, op.Feature, c.From)), esc(draw.HoleName(s.part, op.Feature, c.To)), bold(esc(units.Decimal(c.DistanceMM, 3))),
			bold(esc(over)), esc(pin), esc("±" + units.Decimal(c.WithinMM, 3)), ""})
	}
	return []block{group{class: "checks", blocks: []block{para(bold("Measure hole to hole") + ", over the far sides of two pins or shanks."), t}}}
}

// edgesLeft is what sawing or filing leaves on each edge; before a file it is the map of the metal to come off.
func (s *sheet) edgesLeft(setup *plan.Setup, op plan.Operation) []block {
	if len(op.Edges) == 0 {
		return nil
	}
	var out []block
	if op.Process == plan.FileEdge {
		if before := s.standing(setup, op); len(before) > 0 {
			out = append(out, group{class: "map", blocks: []block{para(bold("Metal to file") + ", as the work stands before this:"),
				s.figure(draw.FileMap(s.base+"-file-"+itoa(op.Number), op.Title, s.part, before))}})
		}
	}
	t := table{head: []md{"Done", "Edge", "Left on it, mm", "Within, mm"}}
	for _, e := range op.Edges {
		left := units.Decimal(e.LeftMM, 2)
		if e.LeftMM == 0 {
			left = "none: at its line"
		}
		t.rows = append(t.rows, []md{tick, say(e.Edge), bold(esc(left)), esc("±" + units.Decimal(e.WithinMM, 2))})
	}
	return append(out, group{class: "edges", blocks: []block{para(bold("What is then left on the edges") + ", square to them."), t}})
}

// standing is the metal on the edges of an operation before it, as the operation that last cut each of them left it.
func (s *sheet) standing(setup *plan.Setup, op plan.Operation) []plan.EdgeLeft {
	last := map[string]plan.EdgeLeft{} // only asked, never walked
	for _, earlier := range s.part.Setups {
		for _, o := range earlier.Operations {
			if earlier.Number > setup.Number || earlier.Number == setup.Number && o.Number >= op.Number {
				break
			}
			for _, e := range o.Edges {
				last[e.Edge] = e
			}
		}
	}
	var out []plan.EdgeLeft
	for _, e := range op.Edges {
		if before, ok := last[e.Edge]; ok && before.LeftMM > 0 {
			out = append(out, before)
		}
	}
	return out
}
