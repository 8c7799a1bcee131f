package sheets

import (
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// stock is the metal to fetch.
func stock(s *sheet) []block {
	if s.part.Stock.Text == "" {
		return nil
	}
	return []block{heading{2, "Metal to fetch"}, list{ticks: true, items: []md{esc(s.part.MaterialName + ", " + s.part.Stock.Text)}}}
}

// kit is all that must lie ready: machines, holdings, tools and instruments, each once, in the order of their first use.
func kit(s *sheet) []block {
	if len(s.part.Setups) == 0 {
		return nil
	}
	var machines, held, tools, gauges once
	for _, setup := range s.part.Setups {
		machines.add(setup.Machine)
		held.add(s.toLay(setup))
		if setup.Ledge != nil {
			held.add(setup.Ledge.Faceplate)
		}
		held.add(setup.Grip.Packing)
		for _, op := range setup.Operations {
			for _, tool := range toolsOf(op) {
				tools.add(tool)
			}
			gauges.addChecks(op.Checks)
		}
		gauges.addChecks(setup.BeforeRelease)
	}
	out := []block{heading{2, "Lay ready"}}
	var lists []block
	for _, k := range []struct {
		title string
		names once
	}{{"Machines", machines}, {"Holding", held}, {"Tools", tools}, {"Measuring", gauges}} {
		if len(k.names) > 0 {
			lists = append(lists, group{class: "kit", blocks: []block{para(bold(md(k.title))), list{ticks: true, items: sayAll(k.names)}}})
		}
	}
	return append(out, group{class: "kits", blocks: lists})
}

// toLay names a holding that is fetched; one that is made first is not there yet, and the bench holds work by itself.
func (s *sheet) toLay(setup plan.Setup) string {
	if setup.Holding == setup.Machine {
		return ""
	}
	for _, h := range s.part.MakeFirst {
		if h.ForSetup == setup.Number {
			return setup.Holding + " (see Make first)"
		}
	}
	return setup.Holding
}

// once collects names, each once, in the order in which they come.
type once []string

func (o *once) add(name string) {
	if name == "" {
		return
	}
	for _, n := range *o {
		if n == name {
			return
		}
	}
	*o = append(*o, name)
}

func (o *once) addChecks(checks []plan.Check) {
	for _, c := range checks {
		o.add(c.Instrument)
	}
}

// toolsOf names the tools of an operation: its own, and before it those that only some of its cuts take, such as a centre drill.
func toolsOf(op plan.Operation) once {
	var tools once
	for _, c := range op.Cuts {
		tools.add(cutTool(c))
	}
	tools.add(op.Tool.Text)
	return tools
}

// cutTool names a cut's own tool in the words of its id, "drills/metric set" and 7.5 becoming "7.5 mm drill".
func cutTool(c plan.Cut) string {
	kind, name, _ := strings.Cut(c.ToolID, "/")
	switch {
	case c.ToolID == "":
		return ""
	case c.ToolSizeMM == 0:
		return name
	}
	word := strings.TrimSuffix(strings.ReplaceAll(kind, "_", " "), "s")
	if kind == "boring_head" || kind == "fly_cutter" { // set to a size, from pass to pass
		return word
	}
	return units.Length(c.ToolSizeMM).String() + " " + word
}

// makeFirst lists the small things to make before or during the job.
func makeFirst(s *sheet) []block {
	if len(s.part.MakeFirst) == 0 {
		return nil
	}
	out := []block{heading{2, "Make first"}}
	for _, h := range s.part.MakeFirst {
		title := say(h.Title) + " " + esc("(for holding "+itoa(h.ForSetup)+", "+minutes(h.Minutes)+")")
		blocks := []block{heading{3, title}, list{numbered: true, items: sayAll(h.Steps)}}
		if len(h.Rules) > 0 {
			blocks = append(blocks, para("Rules: "+esc(words(", ", h.Rules...))+"."))
		}
		out = append(out, group{class: "helper", blocks: blocks})
	}
	return out
}
