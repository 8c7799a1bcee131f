package shape

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plane"
)

// Round is a hole along Z beside the axis.
type Round struct{ X, Y, Radius, Z0, Z1 float64 }

// Groove is a slot with round ends along Z.
type Groove struct {
	plane.Capsule
	Z0, Z1 float64
}

// Trough is a seat across a face: part of a cylinder whose axis lies along X or Y.
type Trough struct {
	Feature               string
	On                    partspec.End // the face: Left is the back
	AlongY                bool
	Middle                float64 // of the axis, along Y or, of one along Y, along X
	Radius, Across, Depth float64 // Depth at its crown, below the face
}

// Raw stands for the metal on an edge that nothing has come near: the blank is there as it came.
var Raw = math.Inf(1)

// Flat is a flat part's metal at some moment: the region inside its rim, between two planes, less its holes and slots. How far each edge of the outline
// still stands out of its finished place is kept, so that the rim can always be made from the drawing and the blank.
type Flat struct {
	Drawn       plane.Region // the finished outline, nominal
	Left        []float64    // metal left on each edge of Drawn, square to it; 0 = finished, Raw = the blank's corner stands over it
	Blank       plane.Region // rectangle that it is cut from; empty = none, and nothing is Raw
	Back, Front float64      // planes of the faces
	Holes       []Round
	Slots       []Groove
	Seats       []Trough
}

// Metal is how far a place lies inside metal at any depth between the faces: less than 0 outside the rim or in a hole.
func (f Flat) Metal(x, y float64) float64 {
	in := f.Rim().Inside(x, y)
	for _, h := range f.Holes {
		in = math.Min(in, math.Hypot(x-h.X, y-h.Y)-h.Radius)
	}
	for _, g := range f.Slots {
		in = math.Min(in, g.Off(x, y)-g.Radius)
	}
	return in
}

// FlatCut is what an operation takes off a flat part. The zero FlatCut takes nothing (marks, threads).
type FlatCut struct {
	Back, Front *float64  // the plane that a face is brought to
	Edges       []EdgeCut // of the outline
	Holes       []Round
	Slots       []Groove
	Seats       []Trough
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
	f.Slots = append(f.Slots[:len(f.Slots):len(f.Slots)], c.Slots...)
	f.Seats = append(f.Seats[:len(f.Seats):len(f.Seats)], c.Seats...)
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
