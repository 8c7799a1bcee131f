package sheets

import "catchplate/partspec/units"

// passedOver lists holdings that were judged and not taken.
func passedOver(s *sheet) []block {
	if len(s.part.Rejected) == 0 || len(s.part.Refusals) > 0 {
		return nil
	}
	t := table{head: []md{"Holding", "For", "Why not"}}
	for _, r := range s.part.Rejected {
		t.rows = append(t.rows, []md{say(r.Holding), say(r.For), say(r.Reason) + cite(r.Rule)})
	}
	return []block{heading{2, "Holdings passed over"}, t}
}

// restsOn says on what the order of work rests, and no more than is known.
func restsOn(s *sheet) []block {
	o := s.part.Order
	if len(s.part.Setups) == 0 {
		return nil
	}
	out := []block{heading{2, "On what this order rests"}, para(esc(verdict(o.Proven, o.CostMinutes, o.BoundMinutes)) +
		" The figures count setting up, changing tools, cutting and a price for risk; they are reckoned minutes, and another shop's may differ.")}
	if len(o.Pairs) > 0 {
		t := table{head: []md{"First", "Then", "Because"}}
		for _, p := range o.Pairs {
			because := say(p.Text) + cite(p.Rule)
			if p.Rule == "" && p.ExtraMinutes > 0 {
				because += " " + esc("(the other way round: "+minutes(p.ExtraMinutes)+" more)")
			}
			t.rows = append(t.rows, []md{esc(p.Before), esc(p.After), because})
		}
		out = append(out, t)
	}
	return []block{group{class: "rests", id: "why-this-order", blocks: out}}
}

func verdict(proven bool, cost, bound float64) string {
	costText, boundText := units.Minutes(cost).String(), units.Minutes(bound).String()
	if proven {
		return "This order costs " + costText + ", and it is proven that no order of these operations in these holdings costs less."
	}
	return "This order costs " + costText + ". No order can cost less than " + boundText + "; that none lies between is not proven."
}
