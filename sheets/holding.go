package sheets

import (
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// holdings print one section for each holding of the work.
func holdings(s *sheet) []block {
	var out []block
	for i := range s.part.Setups {
		out = append(out, s.holding(&s.part.Setups[i]))
	}
	return out
}

func (s *sheet) holding(setup *plan.Setup) block {
	n := itoa(setup.Number)
	head := []block{
		heading{2, say("Holding " + n + ": " + setup.Title)},
		s.figure(draw.Setup(s.base+"-setup-"+n, s.part, setup)),
		group{class: "hold", blocks: s.howToHold(setup)},
	}
	out := []block{group{class: "first", blocks: head}}
	for _, op := range setup.Operations {
		out = append(out, group{class: "operation", blocks: s.operation(setup, op)})
	}
	out = append(out, group{class: "release", blocks: release(setup)})
	out = append(out, reasons("Why this holding", setup.Why)...)
	return group{class: "holding", id: "holding-" + n, blocks: out}
}

// howToHold says what grips what, how hard, how true, and in which steps.
func (s *sheet) howToHold(setup *plan.Setup) []block {
	g := setup.Grip
	items := []md{
		labelled("Machine", say(setup.Machine)),
	}
	if setup.Holding != setup.Machine { // at the bench the work is held as the steps say
		items = append(items, labelled("Held by", say(words(", ", setup.Holding, gripText(g)))))
	}
	items = append(items, s.carried(setup)...)
	if g.Packing != "" {
		items = append(items, labelled("Packing", say(g.Packing)))
	}
	if setup.Tailstock {
		items = append(items, labelled("Tailstock", "a centre supports the free end"))
	}
	if setup.StickOutMM > 0 {
		items = append(items, labelled("Stick-out", esc("about "+units.Decimal(setup.StickOutMM, 1)+" mm")))
	}
	items = append(items, force(g)...)
	items = append(items, truth(setup)...)
	items = append(items, s.lobes(g)...)
	items = append(items, balance(setup.Balance)...)
	out := []block{heading{3, "How to hold it"}, group{class: "facts", blocks: []block{list{items: items}}}}
	out = append(out, clamps(setup)...)
	if len(setup.How) > 0 {
		out = append(out, para(bold("Set it up so")), list{numbered: true, items: sayAll(setup.How)})
	}
	return out
}

func surface(name string) string {
	switch name {
	case "stock":
		return "the stock"
	case "face.left":
		return "the left end face"
	case "face.right":
		return "the right end face"
	case "":
		return "the work"
	}
	return name
}

// gripText says which surface is gripped, and with how many jaws.
func gripText(g plan.Grip) string {
	on := "on "
	switch {
	case g.Kind == "centres":
		return "between centres"
	case g.Kind == "clamps" && g.Inside:
		return "by a screw and bush through " + surface(g.Surface)
	case g.Kind == "bench" || g.Kind == "clamps":
		return ""
	case g.Inside || g.Kind == "glued_bore":
		on = "in "
	}
	if g.Jaws > 0 {
		on = "with " + itoa(g.Jaws) + " jaws " + on
	}
	return on + surface(g.Surface)
}

// force is the window between what must hold and what may not harm, in newtons and as a feel.
func force(g plan.Grip) []md {
	if g.WorkingN == 0 && g.LeastN == 0 {
		return feel(g)
	}
	each := ""
	if g.Jaws > 0 {
		each = " a jaw"
	}
	items := []md{labelled("Hold with", esc("about "+newtons(g.WorkingN)+each))}
	items = append(items, feel(g)...)
	if g.LeastN > 0 { // a hand saw, or a scribed line, turns nothing
		items = append(items, labelled("No less than", esc(newtons(g.LeastN)+each+", or the cut may turn the work")))
	}
	if g.MostN > 0 && g.WorkingN > g.MostN {
		return append(items, labelled("For the finishing cuts, no more than", esc(newtons(g.MostN)+each+", or the grip harms the work: ease it first")))
	}
	if g.MostN > 0 {
		return append(items, labelled("No more than", esc(newtons(g.MostN)+each+", or the grip harms the work")))
	}
	return append(items, labelled("No more than", "the holding's own limit: no lower one was found for this work"))
}

func feel(g plan.Grip) []md {
	if g.Feel == "" {
		return nil
	}
	return []md{labelled("Feel", esc(g.Feel))}
}

// trusts say in words how far a figure for the work's distortion can be trusted.
var trusts = map[string]string{
	"good":  "this figure can be trusted",
	"rough": "a rough figure: the shape lies outside what the formulas are good for",
	"none":  "no trustworthy figure exists for this shape: measure after release and expect to correct",
}

// lobes is the out-of-round that the grip leaves, against what may pass.
func (s *sheet) lobes(g plan.Grip) []md {
	var items []md
	if g.ErrorMM > 0 || g.LimitMM > 0 {
		items = append(items, labelled("Out of round after release", esc(small(g.ErrorMM)+", peak to valley in radius")))
		items = append(items, labelled("May pass", esc(units.Length(g.LimitMM).String())))
		items = append(items, labelled("How sure", esc(trusts[g.Trust])))
	} else if g.Trust == "none" {
		items = append(items, labelled("Out of round after release", esc(trusts["none"])))
	}
	if g.StressMPa > 0 {
		items = append(items, labelled("Stress in the wall", esc(units.Decimal(g.StressMPa, 0)+" MPa")))
	}
	return items
}

// small shows a small length, and never as nought when it is not.
func small(mm float64) string {
	if text := units.Length(mm).String(); mm == 0 || text != units.Length(0).String() {
		return "about " + text
	}
	return "less than a micrometre"
}

// release is what is due before the work is let go, and whether one can stop here.
func release(setup *plan.Setup) []block {
	out := []block{heading{3, esc("Before you let go of holding " + itoa(setup.Number))}}
	items := []md{"Every operation of this holding is ticked."}
	for _, c := range setup.BeforeRelease {
		if printedAbove(setup, c) {
			c.IfLarge, c.IfSmall, c.Doubt, c.When = "", "", "", ""
		}
		items = append(items, check(c))
	}
	out = append(out, list{ticks: true, items: items})
	if setup.NoWayBack != "" {
		out = append(out, quote{para(bold("No way back after this.") + " " + say(setup.NoWayBack))})
	}
	if setup.SafeStop {
		out = append(out, para("A safe place to stop overnight."))
	}
	return out
}

// printedAbove reports whether an operation of this holding asks for the same measurement, and so says what follows from it.
func printedAbove(setup *plan.Setup, c plan.Check) bool {
	for _, op := range setup.Operations {
		for _, done := range op.Checks {
			if done == c {
				return true
			}
		}
	}
	return false
}

// reasons print sentences with their rules under a bold line.
func reasons(title string, list []plan.Reason) []block {
	if len(list) == 0 {
		return nil
	}
	var texts []string
	for _, r := range list {
		texts = append(texts, string(say(strings.TrimSuffix(r.Text, "."))+cite(r.Rule)))
	}
	return []block{para(bold(esc(title)+":") + " " + md(strings.Join(texts, "; ")) + ".")}
}
