package plane

import "math"

// Set is a figure of the plane, or the rest of the plane around one. Its rim is closed; Has says on which side of it the set lies (places on the rim
// itself may count either way).
type Set interface {
	Rim() []Edge
	Has(x, y float64) bool
}

// Figure is a region as a set.
func (r Region) Figure() Set {
	f := figure{rim: r.Edges}
	for _, e := range r.Edges {
		for _, c := range e.chords() {
			f.chords = append(f.chords, chord{c, e})
		}
	}
	return f
}

type chord struct{ piece, of Edge }

type figure struct {
	rim    []Edge
	chords []chord
}

func (f figure) Rim() []Edge { return f.rim }

func (f figure) Has(x, y float64) bool {
	in := false
	for _, c := range f.chords {
		if (c.piece.Y0 > y) != (c.piece.Y1 > y) && c.of.crossing(c.piece, y) > x {
			in = !in
		}
	}
	return in
}

// Capsule is what a disc takes on its way along a line: a tool's path. With both ends in one place it is the disc.
type Capsule struct{ X0, Y0, X1, Y1, Radius float64 }

// Round is a disc as a set.
func Round(x, y, radius float64) Capsule { return Capsule{x, y, x, y, radius} }

// Grown is the capsule with a larger radius, or a smaller one where by is negative.
func (c Capsule) Grown(by float64) Capsule {
	c.Radius += by
	return c
}

// Length is how far the disc goes.
func (c Capsule) Length() float64 { return math.Hypot(c.X1-c.X0, c.Y1-c.Y0) }

// Rim is the capsule's edge, anticlockwise; it has none when its radius is not above 0.
func (c Capsule) Rim() []Edge {
	if c.Radius <= 0 {
		return nil
	}
	long := c.Length()
	if long <= Thin {
		return Disc(c.X0, c.Y0, c.Radius).Edges
	}
	ox, oy := (c.Y1-c.Y0)/long*c.Radius, -(c.X1-c.X0)/long*c.Radius // to the right of the way
	return []Edge{
		{X0: c.X0 + ox, Y0: c.Y0 + oy, X1: c.X1 + ox, Y1: c.Y1 + oy},
		{X0: c.X1 + ox, Y0: c.Y1 + oy, X1: c.X1 - ox, Y1: c.Y1 - oy, CX: c.X1, CY: c.Y1, Radius: c.Radius},
		{X0: c.X1 - ox, Y0: c.Y1 - oy, X1: c.X0 - ox, Y1: c.Y0 - oy},
		{X0: c.X0 - ox, Y0: c.Y0 - oy, X1: c.X0 + ox, Y1: c.Y0 + oy, CX: c.X0, CY: c.Y0, Radius: c.Radius},
	}
}

// Has reports whether a place lies within the radius of the way.
func (c Capsule) Has(x, y float64) bool { return c.Radius > 0 && c.Off(x, y) < c.Radius }

// Off is how far a place lies from the way itself.
func (c Capsule) Off(x, y float64) float64 {
	dx, dy := c.X1-c.X0, c.Y1-c.Y0
	t := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		t = math.Max(0, math.Min(1, ((x-c.X0)*dx+(y-c.Y0)*dy)/long))
	}
	return math.Hypot(x-c.X0-t*dx, y-c.Y0-t*dy)
}

// Around is the plane without a set.
func Around(s Set) Set { return around{s} }

type around struct{ Set }

func (a around) Has(x, y float64) bool { return !a.Set.Has(x, y) }
