package sheets

import (
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// index is the list of the parts of a job, as index.md and index.html.
func index(p *plan.Plan, names []string, paper string) ([]File, error) {
	html, err := htmlPage("Operation sheets", paper, indexTree(p, names, ".html"), nil)
	if err != nil {
		return nil, err
	}
	return []File{{"index.md", []byte(markdown(indexTree(p, names, ".md")))}, {"index.html", html}}, nil
}

func indexTree(p *plan.Plan, names []string, ending string) []block {
	t := table{head: []md{"Part", "Pieces", "Metal to fetch", "Holdings", "Time"}}
	for i := range p.Parts {
		part := &p.Parts[i]
		link := "[" + esc(draw.Title(part.Name)) + "](" + md(names[i]+ending) + ")"
		if len(part.Refusals) > 0 {
			t.rows = append(t.rows, []md{link, esc(itoa(part.Quantity)), bold("no plan: see its sheet"), "", ""})
			continue
		}
		t.rows = append(t.rows, []md{link, esc(itoa(part.Quantity)), esc(part.MaterialName + ", " + part.Stock.Text),
			esc(itoa(len(part.Setups))), esc("about " + minutes(part.Minutes))})
	}
	return []block{heading{1, "Operation sheets"}, labelledPara("Workshop", draw.Plain(p.Workshop)), t,
		quote{para("Defer to local codes and licensed practice.")}}
}

func labelledPara(label, value string) block { return para(labelled(label, esc(value))) }
