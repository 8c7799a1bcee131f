package plane

import (
	"errors"
	"math"
)

// errNoCorner tells that edges which were moved no longer meet.
var errNoCorner = errors.New("plane: two neighbouring edges no longer meet once they are moved")

// Moved is the region with each edge moved outward (square to itself; inward when negative) and its corners where the moved neighbours then meet.
// Neighbours that run into each other smoothly and are moved by different amounts get a short step at right angles between them.
func (r Region) Moved(by []float64) (Region, error) {
	n := len(r.Edges)
	moved := make([]Edge, n)
	for i, e := range r.Edges {
		m, ok := e.moved(by[i])
		if !ok {
			return Region{}, errNoCorner
		}
		moved[i] = m
	}
	var out []Edge
	starts, ends := make([][2]float64, n), make([][2]float64, n)
	steps := make([]bool, n) // a step follows edge i
	for i := range moved {
		k := (i + 1) % n
		if smooth(r.Edges[i], r.Edges[k]) {
			ends[i] = [2]float64{moved[i].X1, moved[i].Y1}
			starts[k] = [2]float64{moved[k].X0, moved[k].Y0}
			steps[i] = math.Abs(by[i]-by[k]) > 1e-12
			continue
		}
		x, y, ok := meet(moved[i], moved[k], r.Edges[i].X1, r.Edges[i].Y1)
		if !ok {
			return Region{}, errNoCorner
		}
		ends[i], starts[k] = [2]float64{x, y}, [2]float64{x, y}
	}
	for i, m := range moved {
		m.X0, m.Y0, m.X1, m.Y1 = starts[i][0], starts[i][1], ends[i][0], ends[i][1]
		out = append(out, m)
		if steps[i] {
			k := (i + 1) % n
			out = append(out, Edge{X0: ends[i][0], Y0: ends[i][1], X1: starts[k][0], Y1: starts[k][1]})
		}
	}
	return Region{out}, nil
}

func (e Edge) moved(by float64) (Edge, bool) {
	if e.IsArc() {
		grown := e.Radius + by
		if e.Hollow {
			grown = e.Radius - by
		}
		if grown <= 0 {
			return e, false
		}
		k := grown / e.Radius
		e.X0, e.Y0 = e.CX+k*(e.X0-e.CX), e.CY+k*(e.Y0-e.CY)
		e.X1, e.Y1 = e.CX+k*(e.X1-e.CX), e.CY+k*(e.Y1-e.CY)
		e.Radius = grown
		return e, true
	}
	ox, oy := e.Outward(0)
	return Edge{X0: e.X0 + by*ox, Y0: e.Y0 + by*oy, X1: e.X1 + by*ox, Y1: e.Y1 + by*oy}, true
}

// smooth reports whether an edge runs into the next without a corner.
func smooth(a, b Edge) bool {
	ax, ay := a.Outward(1)
	bx, by := b.Outward(0)
	return ax*bx+ay*by > 1-1e-9
}

// meet is where two edges, prolonged, cross nearest to a place.
func meet(a, b Edge, nearX, nearY float64) (x, y float64, ok bool) {
	var all [][2]float64
	switch {
	case !a.IsArc() && !b.IsArc():
		dx, dy, ex, ey := a.X1-a.X0, a.Y1-a.Y0, b.X1-b.X0, b.Y1-b.Y0
		if det := dx*ey - dy*ex; math.Abs(det) > 1e-12 {
			t := ((b.X0-a.X0)*ey - (b.Y0-a.Y0)*ex) / det
			all = append(all, [2]float64{a.X0 + t*dx, a.Y0 + t*dy})
		}
	case a.IsArc() && b.IsArc():
		all = twoCircles(a, b)
	case a.IsArc():
		all = lineAndCircle(b, a)
	default:
		all = lineAndCircle(a, b)
	}
	best := math.Inf(1)
	for _, p := range all {
		if d := math.Hypot(p[0]-nearX, p[1]-nearY); d < best {
			x, y, ok, best = p[0], p[1], true, d
		}
	}
	return x, y, ok
}

// touching is how far a line may pass a circle, or two circles each other, and still touch it: rounding of coordinates up to metres.
const touching = 1e-9

func lineAndCircle(l, c Edge) [][2]float64 {
	dx, dy := l.X1-l.X0, l.Y1-l.Y0
	n := math.Hypot(dx, dy)
	dx, dy = dx/n, dy/n
	t := (c.CX-l.X0)*dx + (c.CY-l.Y0)*dy
	fx, fy := l.X0+t*dx, l.Y0+t*dy
	off := math.Hypot(fx-c.CX, fy-c.CY)
	if off > c.Radius+touching {
		return nil
	}
	h := math.Sqrt(math.Max(0, c.Radius*c.Radius-off*off))
	return [][2]float64{{fx - h*dx, fy - h*dy}, {fx + h*dx, fy + h*dy}}
}

func twoCircles(a, b Edge) [][2]float64 {
	dx, dy := b.CX-a.CX, b.CY-a.CY
	d := math.Hypot(dx, dy)
	if d == 0 {
		return nil
	}
	if d > a.Radius+b.Radius+touching || d < math.Abs(a.Radius-b.Radius)-touching {
		return nil
	}
	t := (d*d + a.Radius*a.Radius - b.Radius*b.Radius) / (2 * d)
	h := math.Sqrt(math.Max(0, a.Radius*a.Radius-t*t))
	dx, dy = dx/d, dy/d
	px, py := a.CX+t*dx, a.CY+t*dy
	return [][2]float64{{px - h*dy, py + h*dx}, {px + h*dy, py - h*dx}}
}
