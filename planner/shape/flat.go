package shape

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plane"
)

// Round is a hole along Z beside the axis.
type Round struct{ X, Y, Radius, Z0, Z1 float64 }

// Flat is a flat part's metal at some moment: the region inside its rim, between two planes, less its holes. How far each edge of the outline
// still stands out of its finished place is kept, so that the rim can always be made from the drawing.
type Flat struct {
	Drawn       plane.Region // the finished outline, at the middle of its limits
	Left        []float64    // metal left on each edge of Drawn, square to it; 0 = finished
	Back, Front float64      // planes of the faces
	Holes       []Round
}

// Rim is the outline as it now is. Where the metal left on neighbours does not meet, it is the drawn outline moved by the most left anywhere.
func (f Flat) Rim() plane.Region {
	rim, err := f.Drawn.Moved(f.Left)
	if err == nil {
		return rim
	}
	most := 0.0
	for _, l := range f.Left {
		most = math.Max(most, l)
	}
	even := make([]float64, len(f.Left))
	for i := range even {
		even[i] = most
	}
	rim, _ = f.Drawn.Moved(even)
	return rim
}

// Metal is how far a place lies inside metal at any depth between the faces: less than 0 outside the rim or in a hole.
func (f Flat) Metal(x, y float64) float64 {
	in := f.Rim().Inside(x, y)
	for _, h := range f.Holes {
		in = math.Min(in, math.Hypot(x-h.X, y-h.Y)-h.Radius)
	}
	return in
}

// FlatCut is what an operation takes off a flat part. The zero FlatCut takes nothing (marks, threads).
type FlatCut struct {
	Back, Front *float64  // the plane that a face is brought to
	Edges       []EdgeCut // of the outline
	Holes       []Round
}

// EdgeCut brings one edge of the outline to where Left is on it.
type EdgeCut struct {
	Edge int // in the outline's order
	Left float64
}

// Apply takes a cut's metal off.
func (c FlatCut) Apply(f Flat) Flat {
	if c.Back != nil {
		f.Back = math.Max(f.Back, *c.Back)
	}
	if c.Front != nil {
		f.Front = math.Min(f.Front, *c.Front)
	}
	if len(c.Edges) > 0 {
		f.Left = append([]float64(nil), f.Left...)
		for _, e := range c.Edges {
			f.Left[e.Edge] = math.Min(f.Left[e.Edge], e.Left)
		}
	}
	f.Holes = append(f.Holes[:len(f.Holes):len(f.Holes)], c.Holes...)
	return f
}

// DrawnRegion is a part's outline as a figure.
func DrawnRegion(o *partspec.Outline) plane.Region {
	var r plane.Region
	for _, e := range o.Edges {
		edge := plane.Edge{X0: z(e.X0), Y0: z(e.Y0), X1: z(e.X1), Y1: z(e.Y1)}
		if e.Arc {
			edge.CX, edge.CY, edge.Radius, edge.Hollow = z(e.CX), z(e.CY), z(e.Radius), e.Hollow
		}
		r.Edges = append(r.Edges, edge)
	}
	return r
}
