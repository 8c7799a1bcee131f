package sheets

import (
	"fmt"

	"catchplate/sheets/draw"
)

// opening names the part and says at once whether there is a plan, and whether it was proved.
func opening(s *sheet) []block {
	p := s.part
	out := []block{heading{1, esc(draw.Title(p.Name))}}
	if p.Note != "" {
		out = append(out, para(esc(p.Note)))
	}
	items := []md{labelled("Material", esc(p.MaterialName)), labelled("Pieces", esc(fmt.Sprint(p.Quantity)))}
	if len(p.Refusals) == 0 {
		items = append(items, labelled("Time", esc("about "+minutes(p.Minutes))))
	}
	items = append(items, labelled("Workshop", s.workshop()))
	for _, m := range p.Mates {
		text := fmt.Sprintf("the holes %s of %s are drilled; %s is spotted through from them", m.Feature, draw.Plain(m.Part), m.For)
		for i, e := range m.Flush {
			text += []string{", that part laid with ", " and "}[min(i, 1)] + fmt.Sprintf("its %s edge flush with the %s edge", e.On, e.Edge)
		}
		if m.Over {
			text += ", turned over"
		}
		items = append(items, labelled("Before this part", esc(text+fmt.Sprintf(" (%s)", m.Rule))))
	}
	out = append(out, group{class: "facts", blocks: []block{list{items: items}}})
	if len(p.Refusals) == 0 && p.Proof == nil {
		out = append(out, quote{para(bold("This plan has not been proved. Do not cut metal by it."))})
	}
	return out
}

func (s *sheet) workshop() md {
	if s.plan.BuiltInWorkshop {
		return esc(draw.Plain(s.plan.Workshop)) + " (no workshop was given, so the built-in one serves: check that its machines and tools are yours)"
	}
	return esc(draw.Plain(s.plan.Workshop))
}

// drawing shows the part as it was understood.
func drawing(s *sheet) []block {
	if len(s.part.Drawing.Section.Outer) == 0 && s.part.Drawing.Flat == nil {
		return nil
	}
	out := []block{
		heading{2, "The part as it was understood"},
		para("Hold this against the paper drawing, size by size, before any metal is cut."),
		s.figure(draw.Part(s.base+"-drawing", s.part)),
	}
	return []block{group{class: "drawing", id: "drawing", blocks: append(out, s.template()...)}}
}
