package sheets

import "catchplate/planner/plan"

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

func escapeAll(texts []string) []md {
	out := make([]md, len(texts))
	for i, t := range texts {
		out[i] = esc(t)
	}
	return out
}
