package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/solid"
)

// stock is the metal before the first cut: its section from the job, its ends where the plan lays them.
func (w *walk) stock() solid.Body {
	s, p := w.part.Stock, w.plan.Stock
	w.at = where{}
	length := p.RightZ - p.LeftZ
	if !(length > 0) || math.IsInf(length, 0) {
		w.failOp("stock", "its ends lie at %s and %s", mm(p.LeftZ), mm(p.RightZ))
		return solid.Body{}
	}
	if given := float64(s.Length.Value); given > 0 && length > given+same {
		w.failOp("stock", "the plan lays out %s of it, there is %s", mm(length), mm(given))
	}
	if p.LengthMM < length-figure {
		w.failOp("stock", "the list asks for %s, the plan uses %s", mm(p.LengthMM), mm(length))
	}
	if s.Kind == partspec.Existing && len(s.Features) > 0 {
		b := nominalShape(w.part, s)
		return solid.Body{Outer: b.Outer.Shift(p.LeftZ, 0), Inner: b.Inner.Shift(p.LeftZ, 0)}
	}
	r := float64(s.EnvelopeDiameter()) / 2
	return solid.Cylinder(p.LeftZ, p.RightZ, r, float64(s.Inside.Value)/2)
}
