package drawing

import (
	"fmt"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// axes are the axes beside the main one, with what is turned about them.
func axes(p *partspec.Part) []plan.Axis {
	var out []plan.Axis
	for _, a := range p.Axes {
		axis := plan.Axis{Name: a.Name, ThrowMM: mm(a.Offset.Value), Text: "throw " + sizeText(p, a.Offset)}
		for _, f := range a.Features {
			switch f := f.(type) {
			case *partspec.Spigot:
				axis.Eccentrics = append(axis.Eccentrics, plan.Eccentric{Feature: f.Name, Z0: mm(f.Span.Left), Z1: mm(f.Span.Right), RadiusMM: mm(f.Diameter.Value) / 2})
			case *partspec.Bore:
				axis.Eccentrics = append(axis.Eccentrics, plan.Eccentric{Feature: f.Name, Z0: mm(f.Span.Left), Z1: mm(f.Span.Right), RadiusMM: mm(f.Diameter.Value) / 2, Inside: true})
			}
		}
		out = append(out, axis)
	}
	return out
}

// axisDims are the dimensions of what is turned about an offset axis, on the side towards which that lies.
func axisDims(p *partspec.Part) []plan.Dim {
	var out []plan.Dim
	for _, a := range p.Axes {
		for _, f := range a.Features {
			switch f := f.(type) {
			case *partspec.Spigot:
				out = append(out, leader(mm(f.Span.Left+f.Span.Right)/2, mm(a.Offset.Value+f.Diameter.Value/2), false, f.Name, diameterText(p, f.Diameter)+" about "+a.Name),
					length(mm(f.Span.Left), mm(f.Span.Right), f.Name, sizeText(p, f.Length)))
			case *partspec.Bore:
				out = append(out, leader(mm(f.Span.Left)+mm(f.Span.Right)/3, mm(a.Offset.Value+f.Diameter.Value/2), true, f.Name, diameterText(p, f.Diameter)+" about "+a.Name))
			}
		}
	}
	return out
}

// axisNotes say where the offset axes lie.
func axisNotes(p *partspec.Part) []string {
	var out []string
	for _, a := range p.Axes {
		var names []string
		for _, f := range a.Features {
			names = append(names, f.Head().Name)
		}
		note := fmt.Sprintf("Axis %s: %s beside the main one and parallel to it; about it: %s.", a.Name, sizeText(p, a.Offset), strings.Join(names, ", "))
		if a.Note != "" {
			note += " " + a.Note
		}
		out = append(out, note)
	}
	return out
}
