package sheets

import (
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// refusals is the page that stands in place of a plan.
func refusals(s *sheet) []block {
	if len(s.part.Refusals) == 0 {
		return nil
	}
	out := []block{
		heading{2, "There is no plan for this part"},
		para("It cannot be made as drawn with this workshop. Nothing was left out or forced: below stands what found no way, and what would open one."),
	}
	for _, r := range s.part.Refusals {
		out = append(out, group{class: "refusal", blocks: refusal(r)})
	}
	return []block{group{class: "refusals", id: "refusals", blocks: out}}
}

func refusal(r plan.Refusal) []block {
	title := esc(words(": ", r.Feature, r.What))
	if title == "" {
		title = "The whole part"
	}
	out := []block{heading{3, title}}
	if len(r.Reasons) > 0 {
		out = append(out, para(bold("What was tried, and why it fails")), list{items: escapeAll(r.Reasons)})
	}
	if len(r.Remedies) > 0 {
		out = append(out, para(bold("What would make it possible")), list{items: escapeAll(r.Remedies)})
	}
	return out
}

// say is esc for the plan's own words, in which the names of the part file are shown as words. What a person wrote, or is asked to write, is esc's.
func say(text string) md { return esc(draw.Plain(text)) }

func sayAll(texts []string) []md {
	out := make([]md, len(texts))
	for i, t := range texts {
		out[i] = say(t)
	}
	return out
}

func escapeAll(texts []string) []md {
	out := make([]md, len(texts))
	for i, t := range texts {
		out[i] = esc(t)
	}
	return out
}
