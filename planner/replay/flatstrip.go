package replay

import (
	"math"

	"catchplate/planner/plane"
	"catchplate/planner/solid"
)

// strip is what hand work takes beyond one edge of the outline, where what it leaves on the edge and what stands on its neighbours do not meet: out to as far as any
// metal stands, between the lines that halve the corners at the edge's ends. Of a hollow arc it is all in to the arc's centre: beyond that its neighbours are.
type strip struct {
	edge        plane.Edge
	start, end  [2]float64 // outward directions of those lines
	moved, sure float64    // how far out the edge is left, and within how much
	far         float64
}

func (s strip) at(_, by float64) plane.Set {
	by *= s.sure
	inner, ok1 := s.between(s.moved - by)
	if !ok1 {
		return plane.Round(0, 0, 0)
	}
	run := inner // backwards, so that what goes lies on its left
	run.X0, run.Y0, run.X1, run.Y1 = inner.X1, inner.Y1, inner.X0, inner.Y0
	if inner.IsArc() {
		run.Hollow = !inner.Hollow
	}
	if inner.IsArc() && inner.Hollow && s.far >= inner.Radius {
		return plane.Region{Edges: []plane.Edge{
			run,
			{X0: inner.X0, Y0: inner.Y0, X1: inner.CX, Y1: inner.CY},
			{X0: inner.CX, Y0: inner.CY, X1: inner.X1, Y1: inner.Y1},
		}}.Figure()
	}
	outer, ok2 := s.between(s.moved - by + s.far)
	if !ok2 {
		return plane.Round(0, 0, 0)
	}
	r := plane.Region{Edges: []plane.Edge{
		run,
		{X0: inner.X0, Y0: inner.Y0, X1: outer.X0, Y1: outer.Y0},
		outer,
		{X0: outer.X1, Y0: outer.Y1, X1: inner.X1, Y1: inner.Y1},
	}}
	return r.Figure()
}

// between is the edge moved outward, from one corner's line to the other's.
func (s strip) between(by float64) (plane.Edge, bool) {
	e := s.edge
	if e.IsArc() {
		e.Radius += by
		if e.Hollow {
			e.Radius -= 2 * by
		}
		if e.Radius <= 0 {
			return e, false
		}
	}
	x0, y0, ok0 := s.meets(e, s.edge.X0, s.edge.Y0, s.start, by)
	x1, y1, ok1 := s.meets(e, s.edge.X1, s.edge.Y1, s.end, by)
	e.X0, e.Y0, e.X1, e.Y1 = x0, y0, x1, y1
	return e, ok0 && ok1
}

// meets is where the moved edge meets a corner's line, which goes out from the corner.
func (s strip) meets(e plane.Edge, x, y float64, way [2]float64, by float64) (px, py float64, ok bool) {
	if !e.IsArc() {
		ox, oy := s.edge.Outward(0)
		cos := ox*way[0] + oy*way[1]
		if cos <= 0 {
			return 0, 0, false
		}
		return x + by/cos*way[0], y + by/cos*way[1], true
	}
	// |corner + t way - centre| = radius, for the t nearest to 0
	dx, dy := x-e.CX, y-e.CY
	b, c := dx*way[0]+dy*way[1], dx*dx+dy*dy-e.Radius*e.Radius
	d := b*b - c
	if d < 0 {
		return 0, 0, false
	}
	t := -b + math.Sqrt(d)
	if other := -b - math.Sqrt(d); math.Abs(other) < math.Abs(t) {
		t = other
	}
	return x + t*way[0], y + t*way[1], true
}

// strips are what hand work takes beyond each edge that it names, one by one.
func (f *flatWalk) strips(t trimmed, named map[int]bool, key cutKey) []taken {
	var all []taken
	n := len(t.outline.Edges)
	for i, e := range t.outline.Edges {
		if !named[i] {
			continue
		}
		s := strip{edge: e, start: halving(t.outline.Edges[(i+n-1)%n], e), end: halving(e, t.outline.Edges[(i+1)%n]), moved: t.moved[i], sure: t.sure[i], far: f.reach()}
		all = append(all, taken{swath: s, z0: -solid.Far, z1: solid.Far, off: 1, key: key})
	}
	return all
}

// halving is the outward direction that halves the corner where an edge meets the next.
func halving(a, b plane.Edge) [2]float64 {
	ax, ay := a.Outward(1)
	bx, by := b.Outward(0)
	x, y := ax+bx, ay+by
	if long := math.Hypot(x, y); long > same {
		return [2]float64{x / long, y / long}
	}
	return [2]float64{ax, ay}
}

// alongside is what a file takes beyond a straight side of the outline: it goes right along the piece, past the ends of the edge too, as nothing of the part lies
// beyond that line.
type alongside struct {
	edge             plane.Edge
	moved, sure, far float64 // how far out the edge is left, within how much, and farther than any metal
}

func (a alongside) at(_, by float64) plane.Set {
	ox, oy := a.edge.Outward(0)
	out := a.moved - by*a.sure
	place := func(x, y, along, off float64) (px, py float64) { return x + off*ox - along*oy, y + off*oy + along*ox }
	var corners [4][2]float64
	corners[0][0], corners[0][1] = place(a.edge.X1, a.edge.Y1, a.far, out)
	corners[1][0], corners[1][1] = place(a.edge.X0, a.edge.Y0, -a.far, out)
	corners[2][0], corners[2][1] = place(a.edge.X0, a.edge.Y0, -a.far, out+a.far)
	corners[3][0], corners[3][1] = place(a.edge.X1, a.edge.Y1, a.far, out+a.far)
	var r plane.Region
	for i, c := range corners {
		next := corners[(i+1)%4]
		r.Edges = append(r.Edges, plane.Edge{X0: c[0], Y0: c[1], X1: next[0], Y1: next[1]})
	}
	return r.Figure()
}

// besideSides are what a file takes right along the sides that it is put to.
func (f *flatWalk) besideSides(t trimmed, named map[int]bool, key cutKey) []taken {
	var all []taken
	for i, e := range t.outline.Edges {
		if named[i] && f.outermost(i, named) {
			all = append(all, taken{swath: alongside{e, t.moved[i], t.sure[i], f.reach()}, z0: -solid.Far, z1: solid.Far, off: 1, key: key})
		}
	}
	return all
}

// outermost reports whether nothing of the outline lies beyond a straight edge, and along its line only edges that are named too.
func (f *flatWalk) outermost(edge int, named map[int]bool) bool {
	e := f.drawn.outline.Edges[edge]
	if e.IsArc() {
		return false
	}
	ox, oy := e.Outward(0)
	for i, o := range f.drawn.outline.Edges {
		out0, out1 := (o.X0-e.X0)*ox+(o.Y0-e.Y0)*oy, (o.X1-e.X0)*ox+(o.Y1-e.Y0)*oy
		if o.IsArc() && !o.Hollow {
			if _, _, off := o.Nearest(o.CX+o.Radius*ox, o.CY+o.Radius*oy); off <= same { // its crown that way is part of it
				out0 = (o.CX-e.X0)*ox + (o.CY-e.Y0)*oy + o.Radius
			}
		}
		if math.Max(out0, out1) > same || !named[i] && !o.IsArc() && math.Min(out0, out1) > -same {
			return false
		}
	}
	return true
}
