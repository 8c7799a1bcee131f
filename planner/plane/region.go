package plane

import (
	"errors"
	"math"
)

// Edge is a line, or an arc where Radius is not 0, of a region's rim. It runs from (X0, Y0) to (X1, Y1) with the metal on its left: an arc runs
// anticlockwise about its centre, or clockwise where it is Hollow.
type Edge struct {
	X0, Y0, X1, Y1 float64
	CX, CY, Radius float64
	Hollow         bool
}

// Region is a plane figure in one piece: its rim, closed and anticlockwise. The zero Region is empty. Holes are not part of it.
type Region struct{ Edges []Edge }

// Empty reports whether the region has no rim.
func (r Region) Empty() bool { return len(r.Edges) == 0 }

// Disc is a full circle, as two half circles.
func Disc(x, y, radius float64) Region {
	return Region{[]Edge{
		{X0: x + radius, Y0: y, X1: x - radius, Y1: y, CX: x, CY: y, Radius: radius},
		{X0: x - radius, Y0: y, X1: x + radius, Y1: y, CX: x, CY: y, Radius: radius},
	}}
}

// Rectangle spans two corners.
func Rectangle(x0, y0, x1, y1 float64) Region {
	return Region{[]Edge{
		{X0: x0, Y0: y0, X1: x1, Y1: y0}, {X0: x1, Y0: y0, X1: x1, Y1: y1},
		{X0: x1, Y0: y1, X1: x0, Y1: y1}, {X0: x0, Y0: y1, X1: x0, Y1: y0},
	}}
}

// IsArc reports whether the edge is an arc.
func (e Edge) IsArc() bool { return e.Radius > 0 }

// Sweep is the angle an arc turns through, in radians, positive anticlockwise; 0 for a line.
func (e Edge) Sweep() float64 {
	if !e.IsArc() {
		return 0
	}
	turn := math.Atan2(e.Y1-e.CY, e.X1-e.CX) - math.Atan2(e.Y0-e.CY, e.X0-e.CX)
	if e.Hollow {
		turn = -turn
	}
	for turn <= 1e-12 {
		turn += 2 * math.Pi
	}
	for turn > 2*math.Pi+1e-12 {
		turn -= 2 * math.Pi
	}
	if e.Hollow {
		return -turn
	}
	return turn
}

// Length is the length of the edge.
func (e Edge) Length() float64 {
	if e.IsArc() {
		return e.Radius * math.Abs(e.Sweep())
	}
	return math.Hypot(e.X1-e.X0, e.Y1-e.Y0)
}

// At is the point a share of the way along, from 0 to 1.
func (e Edge) At(share float64) (x, y float64) {
	if e.IsArc() {
		a := math.Atan2(e.Y0-e.CY, e.X0-e.CX) + share*e.Sweep()
		return e.CX + e.Radius*math.Cos(a), e.CY + e.Radius*math.Sin(a)
	}
	return e.X0 + share*(e.X1-e.X0), e.Y0 + share*(e.Y1-e.Y0)
}

// Outward is the unit normal, away from the metal, a share of the way along.
func (e Edge) Outward(share float64) (x, y float64) {
	if e.IsArc() {
		px, py := e.At(share)
		x, y = (px-e.CX)/e.Radius, (py-e.CY)/e.Radius
		if e.Hollow {
			return -x, -y
		}
		return x, y
	}
	l := e.Length()
	return (e.Y1 - e.Y0) / l, -(e.X1 - e.X0) / l
}

// Nearest is the point of the edge nearest to (x, y), and how far it is.
func (e Edge) Nearest(x, y float64) (nx, ny, off float64) {
	if e.IsArc() {
		a := math.Atan2(y-e.CY, x-e.CX) - math.Atan2(e.Y0-e.CY, e.X0-e.CX)
		s := e.Sweep()
		if s < 0 {
			a = -a
		}
		for a < 0 {
			a += 2 * math.Pi
		}
		if a >= 2*math.Pi {
			a -= 2 * math.Pi
		}
		if a <= math.Abs(s) {
			nx, ny = e.At(a / math.Abs(s))
			return nx, ny, math.Hypot(x-nx, y-ny)
		}
		return nearerEnd(e, x, y)
	}
	dx, dy := e.X1-e.X0, e.Y1-e.Y0
	t := ((x-e.X0)*dx + (y-e.Y0)*dy) / (dx*dx + dy*dy)
	nx, ny = e.At(math.Max(0, math.Min(1, t)))
	return nx, ny, math.Hypot(x-nx, y-ny)
}

func nearerEnd(e Edge, x, y float64) (nx, ny, off float64) {
	d0, d1 := math.Hypot(x-e.X0, y-e.Y0), math.Hypot(x-e.X1, y-e.Y1)
	if d0 <= d1 {
		return e.X0, e.Y0, d0
	}
	return e.X1, e.Y1, d1
}

// Inside is how far a point lies inside the rim; negative outside.
func (r Region) Inside(x, y float64) float64 {
	best := math.Inf(1)
	for _, e := range r.Edges {
		if _, _, d := e.Nearest(x, y); d < best {
			best = d
		}
	}
	if r.winding(x, y) {
		return best
	}
	return -best
}

// winding counts how often the rim crosses the ray from a point towards +X. The ray passes the corners of the rim: there its edges meet only within rounding.
func (r Region) winding(x, y float64) bool {
	for k := 0; k < len(r.Edges) && r.endsAt(y); k++ {
		y += besideCorner
	}
	in := false
	for _, e := range r.Edges {
		for _, c := range e.chords() {
			if (c.Y0 > y) != (c.Y1 > y) && e.crossing(c, y) > x {
				in = !in
			}
		}
	}
	return in
}

// besideCorner is how far beside a corner a ray is taken to pass it: far more than the rounding of coordinates, far less than any size.
const besideCorner = 1e-9

// endsAt reports whether an edge of the rim begins or ends at a height, within rounding.
func (r Region) endsAt(y float64) bool {
	for _, e := range r.Edges {
		if math.Abs(e.Y0-y) < besideCorner/2 || math.Abs(e.Y1-y) < besideCorner/2 {
			return true
		}
	}
	return false
}

// chords splits an edge where it turns back in Y, so that each piece is crossed at most once by a line along X.
func (e Edge) chords() []Edge {
	if !e.IsArc() {
		return []Edge{e}
	}
	start, sweep := math.Atan2(e.Y0-e.CY, e.X0-e.CX), e.Sweep()
	cuts := []float64{0}
	for k := -4; k <= 8; k++ { // top and bottom of the circle
		a := math.Pi/2 + float64(k)*math.Pi
		if t := (a - start) / sweep; t > 0 && t < 1 {
			cuts = append(cuts, t)
		}
	}
	cuts = append(cuts, 1)
	if len(cuts) > 2 { // in order, whichever way the arc runs
		for i := 1; i < len(cuts); i++ {
			for k := i; k > 0 && cuts[k] < cuts[k-1]; k-- {
				cuts[k], cuts[k-1] = cuts[k-1], cuts[k]
			}
		}
	}
	var out []Edge
	for i := 1; i < len(cuts); i++ {
		c := e
		if i > 1 {
			c.X0, c.Y0 = e.At(cuts[i-1])
		}
		if i < len(cuts)-1 {
			c.X1, c.Y1 = e.At(cuts[i])
		}
		out = append(out, c)
	}
	return out
}

// crossing is the X at which a piece that does not turn back reaches a height.
func (e Edge) crossing(c Edge, y float64) float64 {
	if !e.IsArc() {
		return c.X0 + (c.X1-c.X0)*(y-c.Y0)/(c.Y1-c.Y0)
	}
	dx := math.Sqrt(math.Max(0, e.Radius*e.Radius-(y-e.CY)*(y-e.CY)))
	side := c.X0 + c.X1 - 2*e.CX
	if math.Abs(side) <= touching { // from top to bottom, or back: the ends do not tell
		mx, _ := c.At(0.5)
		side = mx - e.CX
	}
	if side < 0 {
		return e.CX - dx
	}
	return e.CX + dx
}

// Area is the region's area, in square millimetres, and Centroid the centre of it.
func (r Region) Area() float64 { a, _, _ := r.moments(); return a }

// Centroid is the region's centre of area.
func (r Region) Centroid() (x, y float64) {
	a, mx, my := r.moments()
	return mx / a, my / a
}

// moments are area and first moments, by Green's theorem: the polygon of the edges' ends and the circular segment over each arc.
func (r Region) moments() (area, mx, my float64) {
	for _, e := range r.Edges {
		c := (e.X0*e.Y1 - e.X1*e.Y0) / 2
		area, mx, my = area+c, mx+c*(e.X0+e.X1)/3, my+c*(e.Y0+e.Y1)/3
		if s := e.Sweep(); s != 0 {
			half := math.Abs(s) / 2
			seg := e.Radius * e.Radius * (half - math.Sin(half)*math.Cos(half))
			if seg < 1e-15 {
				continue
			}
			off := 2 * math.Pow(e.Radius*math.Sin(half), 3) / 3 / seg // of the segment's centre from the arc's
			px, py := e.At(0.5)
			ux, uy := (px-e.CX)/e.Radius, (py-e.CY)/e.Radius
			seg = math.Copysign(seg, s)
			area, mx, my = area+seg, mx+seg*(e.CX+off*ux), my+seg*(e.CY+off*uy)
		}
	}
	return area, mx, my
}

// Bounds is the smallest rectangle around the region.
func (r Region) Bounds() (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	add := func(x, y float64) {
		x0, y0, x1, y1 = math.Min(x0, x), math.Min(y0, y), math.Max(x1, x), math.Max(y1, y)
	}
	for _, e := range r.Edges {
		add(e.X0, e.Y0)
		add(e.X1, e.Y1)
		if !e.IsArc() {
			continue
		}
		for k := range 4 {
			a := float64(k) * math.Pi / 2
			x, y := e.CX+e.Radius*math.Cos(a), e.CY+e.Radius*math.Sin(a)
			if _, _, d := e.Nearest(x, y); d < 1e-9 {
				add(x, y)
			}
		}
	}
	return x0, y0, x1, y1
}

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
