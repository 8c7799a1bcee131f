package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/solid"
)

// checkTarget holds that the finished work lies between the least and the most metal that the drawing allows.
//
// The drawn solids are laid on the faces where the work has them, and every drawn length between two faces is held against its own limits, so
// that no length's tolerance is shared out beforehand. Where the drawing has a face that is no step (a taper meeting a cylinder of its own
// diameter) both solids leave its place open within half the tightest length tolerance there.
func (w *walk) checkTarget() {
	if w.body.Empty() {
		w.fail(where{}, "finished part", "nothing is left")
		return
	}
	lengths := lengthsOf(w.part)
	d := w.drawing(lengths)
	w.checkLengths(lengths, d.outer, d.inner)
	w.checkChamferLegs(d)
	least, most := d.solids()
	for _, s := range w.keptSpots() {
		least = least.BoreTo(s)
	}
	if ok, at := solid.Within(least, w.body, same); !ok {
		r := at.R - at.By/2
		if at.Inside {
			r = at.R + at.By/2
		}
		w.fail(w.place(w.maker(at.Z, r)), "least metal", "it cuts %s mm too deep at %s from the left end, near Ø%s (%s)",
			mm(at.By), mm(at.Z), mm(2*at.R), w.nearestFeature(at))
	}
	w.checkHoles(least, most)
	w.checkMilled(least)
	if ok, at := solid.Within(w.body, most, same); !ok {
		w.fail(where{}, "most metal", "%s mm of metal is left too much at %s from the left end, near Ø%s (%s)", mm(at.By), mm(at.Z), mm(2*at.R), w.nearestFeature(at))
	}
}

// place turns a place in the plan's lists into one to tell.
func (w *walk) place(setup, op int) where {
	if setup < 0 {
		return where{}
	}
	s := w.plan.Setups[setup]
	return where{s.Number, s.Operations[op].ID}
}

// drawing is the part as drawn, laid on the faces of the work.
type drawing struct {
	part         *partspec.Part
	features     []partspec.Feature
	stockOuter   float64 // radius of surfaces left as supplied
	stockInner   float64
	z0, z1       float64
	outer, inner faces
}

func (w *walk) drawing(lengths []length) drawing {
	d := newDrawing(w.part, w.part.Features, w.part.Stock, float64(w.part.Length.Value))
	whole := d.z1
	flat := d
	flat.outer.lengths, flat.inner.lengths = lengths, lengths
	d.z0, d.z1 = w.body.Ends()
	d.outer = locate(flat.outerOf(middle), w.body.Outer, whole, d.z0, d.z1, lengths)
	d.inner = locate(flat.innerOf(middle), w.body.Inner, whole, d.z0, d.z1, lengths)
	d.inner = d.floors(d.inner, w.body.Inner)
	return d
}

func newDrawing(p *partspec.Part, features []partspec.Feature, stock partspec.Stock, whole float64) drawing {
	return drawing{part: p, features: features, stockOuter: float64(stock.EnvelopeDiameter()) / 2, stockInner: float64(stock.Inside.Value) / 2, z1: whole}
}

// nominalShape is the shape of existing stock.
func nominalShape(p *partspec.Part, s partspec.Stock) solid.Body {
	whole := 0.0
	for _, f := range s.Features {
		if _, right, ok := spanOf(f); ok {
			whole = math.Max(whole, right)
		}
	}
	d := newDrawing(p, s.Features, s, whole)
	return solid.NewBody(d.outerOf(middle), d.innerOf(middle))
}

// metal says which of the limits a solid is built to.
type metal int

const (
	middle metal = iota
	least
	most
)

// outside is the diameter of an outside surface; inside that of a hole.
func (m metal) outside(s partspec.Size) float64 {
	switch m {
	case least:
		return float64(s.Low)
	case most:
		return float64(s.High)
	}
	return float64(s.Mid())
}

func (m metal) inside(s partspec.Size) float64 {
	switch m {
	case least:
		return float64(s.High)
	case most:
		return float64(s.Low)
	}
	return float64(s.Mid())
}

// solids are the part with the least and with the most metal.
func (d drawing) solids() (leastBody, mostBody solid.Body) {
	corner := float64(d.part.InnerCorner)
	leastOuter, leastInner := d.edges(d.outerOf(least), least, false), d.edges(d.innerOf(least), least, true)
	mostOuter, mostInner := d.edges(d.outerOf(most), most, false), d.edges(d.innerOf(most), most, true)
	mostOuter = fillCorners(mostOuter, corner)
	mostInner = turnOver(fillCorners(turnOver(mostInner), corner))
	return solid.NewBody(leastOuter, leastInner), solid.NewBody(mostOuter, mostInner)
}

// fold lays a stretch of a surface on what there is: where both are, the one with less or with more metal, as m asks.
func (m metal) fold(c, d solid.Curve) solid.Curve {
	switch m {
	case least:
		return solid.Lower(c, d).Join(d)
	case most:
		return solid.Upper(c, d).Join(d)
	}
	return c.Join(d)
}

// ends are where a stretch of a surface begins and ends in the work, reaching over where an end is open.
func (d drawing) ends(f faces, left, right float64, m metal) (z0, z1 float64) {
	a, b := f.at(left), f.at(right)
	if m == middle {
		return math.Max(a.at, d.z0), math.Min(b.at, d.z1)
	}
	return math.Max(a.lo, d.z0), math.Min(b.hi, d.z1)
}

// spanOf is where a feature lies.
func spanOf(f partspec.Feature) (left, right float64, ok bool) {
	var s partspec.Span
	switch f := f.(type) {
	case *partspec.Spigot:
		s = f.Span
	case *partspec.Bore:
		s = f.Span
	case *partspec.Recess:
		s = f.Span
	case *partspec.Taper:
		s = f.Span
	case *partspec.Groove:
		s = f.Span
	case *partspec.Profile:
		s = f.Span
	case *partspec.Thread:
		s = f.Span
	case *partspec.Knurl:
		s = f.Span
	default:
		return 0, 0, false
	}
	return float64(s.Left), float64(s.Right), true
}

// nearestFeature names the narrowest feature of the side that lies at a place.
func (w *walk) nearestFeature(at solid.Place) string {
	name, width := "no feature", math.Inf(1)
	for _, f := range w.part.Features {
		left, right, ok := spanOf(f)
		if !ok || isInside(f) != at.Inside || at.Z < left-stepSearch || at.Z > right+stepSearch {
			continue
		}
		if right-left < width {
			name, width = f.Head().ID(), right-left
		}
	}
	return name
}

func isInside(f partspec.Feature) bool {
	switch f := f.(type) {
	case *partspec.Bore, *partspec.Recess:
		return true
	case *partspec.Taper:
		return f.Inside
	case *partspec.Thread:
		return f.Inside
	}
	return false
}
