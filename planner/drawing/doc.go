// Package drawing draws a part back from its description: the half section of a turned part's nominal shape, or a flat part's outline and holes,
// and the dimensions as they were written, with their limits.
//
// In flows a checked partspec.Part; out flows a plan.Drawing. Nothing is decided here about making the part.
//
// What holds after: both curves of the section run from left to right without a step back; every feature of the part is dimensioned or
// named; the text of a dimension begins as the drawing wrote it.
package drawing

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// Of makes the drawing of a part.
func Of(p *partspec.Part) plan.Drawing {
	if p.Flat() {
		return ofFlat(p)
	}
	d := plan.Drawing{
		Section: plan.Section{Outer: outside(p), Inner: hollow(p)},
		Hexagon: p.Stock.Kind == partspec.Hexagon,
		Beside:  holesOf(p),
		Rings:   rings(p),
		Crossed: crossed(p),
		Axes:    axes(p),
		Notes:   notes(p),
	}
	for _, f := range p.Features {
		d.Dims = append(d.Dims, dims(p, f)...)
	}
	d.Dims = append(d.Dims, axisDims(p)...)
	if !sameAsOne(p) {
		d.Dims = append(d.Dims, length(0, mm(p.Length.Value), "part", sizeText(p, p.Length)))
	}
	return d
}

// sameAsOne is true when one spigot is as long as the part: its length is then the part's.
func sameAsOne(p *partspec.Part) bool {
	for _, f := range p.Features {
		if s, ok := f.(*partspec.Spigot); ok && s.Span.Left == 0 && s.Span.Right == p.Length.Value {
			return true
		}
	}
	return false
}
