package plane

import "math"

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
