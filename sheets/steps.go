package sheets

import (
	"bytes"
	"encoding/csv"
	"strconv"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// steps is the card of a curve that is cut in steps, in place of the lines of an ordinary card: the sketch, one row a step with the readings
// of both dials, and what the table rests on.
func (s *sheet) steps(op plan.Operation) []block {
	t := table{head: stepHead(op.Steps)}
	for _, r := range stepRows(op) {
		t.rows = append(t.rows, r.cells())
	}
	for column := len(t.head) - 1; column >= stepOptional; column-- {
		if t.empty(column) {
			t = t.without(column)
		}
	}
	title := para(bold("Step table") + ", counted from nought. " + stepWords(op.Steps) + meanings(op.Card))
	var before []block
	if lines := beforeSteps(op); len(lines) > 0 {
		rough := op
		rough.Card = lines
		before = card(rough)
	}
	return append(before,
		s.figure(draw.Steps(s.base+"-steps-"+itoa(op.Number), op.Title, op.Steps)),
		group{class: "steps", blocks: []block{title, t}},
		para(bold("What the table rests on")), list{items: stepFacts(op.Steps)},
	)
}

// stepWords tell how a step is cut.
func stepWords(t *plan.StepTable) md {
	across, depth := esc(t.AcrossDial), esc(t.DepthDial)
	if t.Along {
		return "Off the end of the work, set the " + depth + " to its figure, each time from the figure before it, so that it goes one way only. Then feed the " + across +
			" along to its figure, draw the tool out, go back and tick."
	}
	return "Set the " + across + " first, each time from the figure before it, so that it goes one way only through a run. Then feed the " + depth + " to its figure, draw it back and tick."
}

// beforeSteps are the lines of the card that are no step's: where each pass begins and ends, and the roughing that comes first.
func beforeSteps(op plan.Operation) []plan.Line {
	steps := map[string]bool{}
	for _, s := range op.Steps.Steps {
		steps[s.Label] = true
	}
	var lines []plan.Line
	for _, l := range op.Card {
		if !steps[l.Label] {
			lines = append(lines, l)
		}
	}
	return lines
}

// stepOptional is the first column of a step table that is left out when no row fills it.
const stepOptional = 9

func stepHead(t *plan.StepTable) []md {
	a, d := esc(t.AcrossDial), esc(t.DepthDial)
	return []md{"Done", "Step", a + ": turns", "marks", "from nought", d + ": turns", "marks", "from nought", "Crest, mm",
		"May stop: step measures", "Mind"}
}

// stepRow joins a step with its two lines of the card, which the replay has proved.
type stepRow struct {
	step          plan.Step
	across, depth plan.Line
}

// stepRows finds for each step its lines by their label.
func stepRows(op plan.Operation) []stepRow {
	lines := map[[2]string]plan.Line{}
	for _, l := range op.Card {
		lines[[2]string{l.Label, l.Dial}] = l
	}
	var rows []stepRow
	for _, s := range op.Steps.Steps {
		rows = append(rows, stepRow{s, lines[[2]string{s.Label, op.Steps.AcrossDial}], lines[[2]string{s.Label, op.Steps.DepthDial}]})
	}
	return rows
}

func (r stepRow) cells() []md {
	row := []md{tick, bold(esc(r.step.Label))}
	for _, l := range []plan.Line{r.across, r.depth} {
		turns := bold(esc(whole(l.Turns)))
		if !l.Counted {
			turns = "–"
		}
		row = append(row, turns, bold(esc(whole(l.Marks))), esc(whole(l.Total)))
	}
	crest := esc(units.Decimal(r.step.CrestMM, 3))
	if r.step.Partial {
		crest = "–"
	}
	return append(row, crest, stop(r.step), md(words("; ", string(mind(r.across)), string(mind(r.depth)))))
}

// stop is the size by which a place to stop is known.
func stop(s plan.Step) md {
	if s.Stop == "" {
		return ""
	}
	return bold(esc(s.Stop))
}

// stepFacts say what was proved and what it saves.
func stepFacts(t *plan.StepTable) []md {
	items := []md{
		labelled("Steps", esc(itoa(t.Count()))+provenWord(t)+partialWord(t)),
		labelled("Most that is left for the file", esc(units.Length(units.Length(t.WorstMM).Round(3)).String()+", square to the curve; allowed are "+units.Length(t.LeftoverMM).String())),
		labelled("Why", say(t.Why)),
	}
	if t.Count() > 1 {
		items = append(items, stepsByHand(t)...)
	}
	if t.FileMostMinutes > 0 {
		items = append(items, labelled("Filing takes", esc(units.Decimal(t.FileLeastMinutes, 1)+" to "+units.Decimal(t.FileMostMinutes, 1)+" min for the metal in the crests alone; blueing and trying come on top")))
	}
	return append(items, labelled("When a count is lost", "go back to the last place to stop, take up the backlash of both slides, and come to its figures again"))
}

// stepsByHand are the tables that people would make for themselves.
func stepsByHand(t *plan.StepTable) []md {
	var items []md
	if t.ConstantCount > 0 {
		items = append(items, labelled("With one dial going on by one constant number of marks", esc(itoa(t.ConstantCount)+" steps, "+whole(t.ConstantMarks)+" marks each")))
	}
	if t.EqualCount > 0 {
		items = append(items, labelled("With the best equal steps", esc(itoa(t.EqualCount)+" steps")))
	}
	custom := "leaves more than is allowed"
	if t.CustomCount > 0 {
		custom = itoa(t.CustomCount) + " steps"
	}
	return append(items, labelled("With the customary quarter of a millimetre", esc(custom)))
}

// partialWord tells of the passes that come beside the steps.
func partialWord(t *plan.StepTable) md {
	switch n := len(t.Steps) - t.Count(); n {
	case 0:
		return ""
	case 1:
		return "; 1 pass more, where one step is too deep for a pass"
	default:
		return esc("; " + itoa(n) + " passes more, where steps are too deep for one pass")
	}
}

func provenWord(t *plan.StepTable) md {
	if t.ProvenFewest {
		return ", proven to be the fewest on these dials"
	}
	return "; that there are no fewer is not proven"
}

// stepsHead names the columns of the table of steps.
var stepsHead = []string{"part", "holding", "operation", "step", "across_dial", "across_turns", "across_marks", "across_from_zero",
	"depth_dial", "depth_turns", "depth_marks", "depth_from_zero", "across_mm", "depth_mm", "crest_after_mm", "stop_here_measures"}

// stepsTable is all step tables of a part as CSV, one row for each step; nil where the part has none.
func stepsTable(p *plan.Part) ([]byte, error) {
	rows := [][]string{stepsHead}
	for _, s := range p.Setups {
		for _, op := range s.Operations {
			if op.Steps == nil {
				continue
			}
			for _, r := range stepRows(op) {
				rows = append(rows, append([]string{cell(p.Name), strconv.Itoa(s.Number), strconv.Itoa(op.Number)}, r.fields()...))
			}
		}
	}
	if len(rows) == 1 {
		return nil, nil
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	err := w.WriteAll(rows)
	return out.Bytes(), err
}

func (r stepRow) fields() []string {
	out := []string{cell(r.step.Label)}
	for _, l := range []plan.Line{r.across, r.depth} {
		out = append(out, dialFields(l)...)
	}
	return append(out, units.Decimal(r.step.AcrossMM, 4), units.Decimal(r.step.DepthMM, 4), units.Decimal(r.step.CrestMM, 4), cell(r.step.Stop))
}
