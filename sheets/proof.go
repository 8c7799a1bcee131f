package sheets

import "catchplate/planner/plan"

// proof is the record of the replay.
func proof(s *sheet) []block {
	if s.part.Proof == nil {
		return nil
	}
	out := []block{heading{2, "Proof"}, para(esc("A separate check rebuilt " + itoa(s.part.Proof.Cuts) +
		" movements from holding, tool and dial readings, and found:"))}
	t := table{head: []md{"What was proved", "Found"}}
	for _, c := range s.part.Proof.Clauses {
		t.rows = append(t.rows, []md{say(c.Name), say(c.Text)})
	}
	if len(t.rows) > 0 {
		out = append(out, t)
	}
	return []block{group{class: "proof", id: "proof", blocks: out}}
}

// rulesCited prints the heads of the rules that this part's sheet names, with how sure each is and where it comes from.
func rulesCited(s *sheet) []block {
	cited := citedBy(s.part)
	t := table{head: []md{"Rule", "What it says", "Why", "How sure", "Source"}}
	for _, r := range s.plan.Rules {
		if !cited[r.ID] {
			continue
		}
		says := bold(esc(r.Title)+".") + " " + esc(r.Text)
		if r.Except != "" {
			says += " Except: " + esc(r.Except)
		}
		t.rows = append(t.rows, []md{esc(r.ID), says, esc(r.Why), esc(r.Sure), esc(r.Source)})
	}
	if len(t.rows) == 0 {
		return nil
	}
	return []block{group{class: "rules", id: "rules", blocks: []block{heading{2, "Rules cited"}, t}}}
}

// citedBy collects the rules that a part names. The map is only asked, never walked.
func citedBy(p *plan.Part) map[string]bool {
	cited := map[string]bool{}
	reasons := func(list []plan.Reason) {
		for _, r := range list {
			cited[r.Rule] = true
		}
	}
	for _, h := range p.MakeFirst {
		for _, id := range h.Rules {
			cited[id] = true
		}
	}
	for _, c := range p.Cautions {
		cited[c.Rule] = true
	}
	for _, r := range p.Rejected {
		cited[r.Rule] = true
	}
	for _, pair := range p.Order.Pairs {
		cited[pair.Rule] = true
	}
	for _, s := range p.Setups {
		reasons(s.Why)
		for _, op := range s.Operations {
			reasons(op.Why)
		}
	}
	return cited
}
