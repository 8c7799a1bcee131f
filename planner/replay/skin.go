package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// What rule A-24 asks of the first cut along the outside of black or cast stock: how deep it goes, on radius; how little it may leave instead, where there is less metal
// than that; and its share of the fastest cutting speed.
const (
	underSkin  = 1.5
	leftBySkin = 0.3
	skinShare  = 0.75
)

// checkSkin holds that a turning tool that meets the skin goes under it. A blade plunges on through it, and needs no telling.
func (w *walk) checkSkin(op plan.Operation, m motion, before solid.Body) {
	s := w.part.Stock
	if !s.Rough || s.Kind != partspec.Bar && s.Kind != partspec.Tube || w.part.Seen != nil || m.Kind != partspec.Turning || m.inside || m.across() {
		return
	}
	skin := float64(s.Outside.Value) / 2
	cut := solid.Lost(before, w.body, same)
	if !cut.Any() || before.Outer.Greatest(cut.Z0, cut.Z1) < skin-same {
		return
	}
	if fast := fastest(w.part.Material, m.cutter) * skinShare; fast > 0 && op.RPM > slowest(w.machine)+sameSpeed && 2*math.Pi*skin*op.RPM/1000 > fast*overSpeed {
		w.failOp("skin", "cut %q meets the skin at %s rev/min; it is gone under at no more than %s m/min (rule A-24)", m.name, mm(op.RPM), mm(fast))
	}
	deep := skin - math.Max(m.from.R, m.to.R)
	drawn := newDrawing(w.part, w.part.Features, s, float64(w.part.Length.Value)).outerOf(middle)
	left := math.Max(m.from.R, m.to.R) - drawn.Greatest(cut.Z0, cut.Z1)
	if deep < underSkin-same && left > leftBySkin+w.slack(m)+same {
		w.failOp("skin", "cut %q goes %s mm under the skin, and leaves %s; its first cut is %s deep or takes what there is (rule A-24)", m.name, mm(deep), mm(left), mm(underSkin))
	}
}
