package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/solid"
)

// lay is the metal before the first cut: its thickness and size from the job, its place from the plan.
func (f *flatWalk) lay() bool {
	f.at = where{}
	p := f.plan.Stock.Flat
	if p == nil || len(p.Outline) < 2 || !(p.FrontZ > p.BackZ) || math.IsInf(p.FrontZ-p.BackZ, 0) {
		f.failOp("stock", "the plan does not say how the stock lies around the part")
		return false
	}
	outline := regionOf(p.Outline)
	if !closed(outline) {
		f.failOp("stock", "the outline of the stock is not closed")
		return false
	}
	f.work = flatWork{stock: outline.Figure(), back: p.BackZ, front: p.FrontZ}
	if f.part.Stock.Kind == partspec.Casting {
		f.checkCasting(outline)
	} else {
		f.checkPlate(outline)
	}
	if plane.Meet(f.drawn.least, plane.Around(f.work.stock)) {
		f.failOp("stock", "the part reaches out of the stock as it is laid")
	}
	return true
}

// regionOf is an outline of the plan as a figure.
func regionOf(outline []plan.OutlineSegment) plane.Region {
	var r plane.Region
	for _, s := range outline {
		r.Edges = append(r.Edges, plane.Edge{X0: s.X0, Y0: s.Y0, X1: s.X1, Y1: s.Y1, CX: s.CentreX, CY: s.CentreY, Radius: s.RadiusMM, Hollow: s.Hollow})
	}
	return r
}

// closed reports whether an outline ends where it begins, corner by corner, and has metal in it.
func closed(r plane.Region) bool {
	for i, e := range r.Edges {
		next := r.Edges[(i+1)%len(r.Edges)]
		if !(math.Hypot(e.X1-next.X0, e.Y1-next.Y0) <= figure) || !(e.Length() > 0) {
			return false
		}
	}
	return r.Area() > 0
}

// checkPlate holds the stock against what the job has: a rectangle of its thickness, no larger than the piece there is.
func (f *flatWalk) checkPlate(outline plane.Region) {
	s, p := f.part.Stock, f.plan.Stock.Flat
	x0, y0, x1, y1 := outline.Bounds()
	if math.Abs(outline.Area()-(x1-x0)*(y1-y0)) > figure*(x1-x0+y1-y0) {
		f.failOp("stock", "%s is a rectangle; the plan lays out another figure", s.Kind)
	}
	if thick := float64(s.Thickness.Value); math.Abs(p.FrontZ-p.BackZ-thick) > figure {
		f.failOp("stock", "the plan lays it out %s thick; it is %s", mm(p.FrontZ-p.BackZ), mm(thick))
	}
	if w := float64(s.Width.Value); w > 0 && x1-x0 > w+figure {
		f.failOp("stock", "the plan lays out %s across; there is %s", mm(x1-x0), mm(w))
	}
	if l := float64(s.Length.Value); l > 0 && y1-y0 > l+figure {
		f.failOp("stock", "the plan lays out %s along; there is %s", mm(y1-y0), mm(l))
	}
}

// checkCasting holds that a casting has its metal on every face, and no more.
func (f *flatWalk) checkCasting(outline plane.Region) {
	p, metal := f.plan.Stock.Flat, float64(f.part.Stock.Metal)
	by := make([]float64, len(f.drawn.outline.Edges))
	for i := range by {
		by[i] = metal
	}
	want, err := f.drawn.outline.Moved(by)
	if err != nil || math.Abs(want.Area()-outline.Area()) > figure*math.Sqrt(want.Area()) {
		f.failOp("stock", "the casting's outline is not the part's with %s more on every edge", mm(metal))
	}
	if math.Abs(p.BackZ+metal) > figure || math.Abs(p.FrontZ-float64(f.part.Length.Value)-metal) > figure {
		f.failOp("stock", "the casting's faces lie at %s and %s: not the part's with %s more on each", mm(p.BackZ), mm(p.FrontZ), mm(metal))
	}
}

// laySolid makes, for a lathe, the body of revolution that the work is to its tools: as far out as any metal swings, with the hole that is at its
// centre.
func (f *flatWalk) laySolid() {
	f.body = solid.Body{}
	if !f.onLathe() {
		return
	}
	back, front, ok := f.work.faces()
	if !ok {
		f.failOp("work", "nothing is left of the work")
		return
	}
	far := 0.0
	f.gaps = false
	rim := f.work.outer((back + front) / 2)
	f.rough = f.handLeft(rim)
	for _, e := range rim {
		far = math.Max(far, farthest(e, f.setup.CentreX, f.setup.CentreY))
		f.gaps = f.gaps || !e.IsArc() || math.Hypot(e.CX-f.setup.CentreX, e.CY-f.setup.CentreY) > figure
	}
	f.body = solid.Cylinder(back, front, far, 0)
	for _, t := range f.work.taken {
		f.layRound(t, back, front)
	}
}

// layRound takes a round off the body when it lies about the centre.
func (f *flatWalk) layRound(t taken, back, front float64) {
	x, y, r := t.centred((math.Max(t.z0, back) + math.Min(t.z1, front)) / 2)
	if math.IsNaN(x) || !t.centre || math.Hypot(x-f.setup.CentreX, y-f.setup.CentreY) > centreNear {
		return
	}
	if g, ok := t.swath.(turned); ok {
		f.body = f.body.BoreTo(g.curve)
		return
	}
	if lo, hi := math.Max(t.z0, back), math.Min(t.z1, front); hi > lo {
		f.body = f.body.BoreTo(solid.Const(lo, hi, r))
	}
}

// centreNear is how far beside the lathe's centre a hole may lie and still be the one that is bored: a boring tool takes up more.
const centreNear = 0.5

// farthest is how far an edge reaches from a place.
func farthest(e plane.Edge, x, y float64) float64 {
	far := math.Max(math.Hypot(e.X0-x, e.Y0-y), math.Hypot(e.X1-x, e.Y1-y))
	if !e.IsArc() {
		return far
	}
	d := math.Hypot(e.CX-x, e.CY-y)
	ux, uy := 1.0, 0.0
	if d > same {
		ux, uy = (e.CX-x)/d, (e.CY-y)/d
	}
	px, py := e.CX+e.Radius*ux, e.CY+e.Radius*uy
	if _, _, off := e.Nearest(px, py); off <= figure {
		far = math.Max(far, d+e.Radius)
	}
	return far
}
