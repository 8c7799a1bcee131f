package partspec

import (
	"fmt"
	"slices"
)

// datum reads the edges that the drawing measures from. Where they are not the ones on the frame's axes, the limits of the sizes across the part pass
// to the edges that then lie opposite.
func (s *shaper) datum(e *entry, o *Outline) {
	if e.broken || o.Kind == "disc" {
		return
	}
	o.Datum = e.texts("datum")
	if !e.has("datum") {
		o.Datum = []string{"left", "bottom"}
		if o.Kind == "chain" && !o.straight("left", true) || !o.straight("bottom", false) {
			o.Datum = nil // coordinates are measured from the origin
		}
		o.begin()
		return
	}
	across := 0
	for _, name := range o.Datum {
		edge, found := o.Edge(name)
		if !found {
			s.c.fail(e, e.at("datum"), fmt.Sprintf("There is no edge %q", name), "%s", didYouMean(name, o.edgeNames(), "Draw the edge first."))
			return
		}
		if !o.straight(name, true) && !o.straight(name, false) {
			s.c.fail(e, e.at("datum"), fmt.Sprintf("The edge %s cannot be a datum", name), "Name straight edges that lie along X and Y, like datum = [\"left\", \"bottom\"].")
			return
		}
		if (edge.X0 - edge.X1).Abs() <= sameLength {
			across++
		}
	}
	if len(o.Datum) != 2 || across != 1 {
		s.c.fail(e, e.at("datum"), "The datum is not two edges at right angles",
			`Write one edge that coordinates to the side are measured from and one for those up, like datum = ["left", "bottom"].`)
		return
	}
	if !o.straight(o.Datum[0], true) {
		o.Datum[0], o.Datum[1] = o.Datum[1], o.Datum[0]
	}
	if o.Kind == "chain" {
		o.begin()
		return
	}
	o.shiftLimits("left", "right")
	o.shiftLimits("bottom", "top")
}

// straight reports whether an edge is a line along Y (upright), or along X.
func (o *Outline) straight(name string, upright bool) bool {
	edge, found := o.Edge(name)
	off := edge.Y0 - edge.Y1
	if upright {
		off = edge.X0 - edge.X1
	}
	return found && !edge.Arc && off.Abs() <= sameLength
}

// begin gives datum edges no limits: coordinates begin there.
func (o *Outline) begin() {
	for i, e := range o.Edges {
		if slices.Contains(o.Datum, e.Name) {
			o.Edges[i].Off, o.Edges[i].On, o.Edges[i].Basis = 0, 0, datumBasis
		}
	}
}

// shiftLimits gives an edge on an axis the limits of the opposite one when that is the datum.
func (o *Outline) shiftLimits(on, opposite string) {
	i := slices.IndexFunc(o.Edges, func(e OutlineEdge) bool { return e.Name == on })
	k := slices.IndexFunc(o.Edges, func(e OutlineEdge) bool { return e.Name == opposite })
	if i < 0 || k < 0 || !slices.Contains(o.Datum, opposite) {
		return
	}
	a, b := &o.Edges[i], &o.Edges[k]
	a.Off, a.On, a.Basis, b.Off, b.On, b.Basis = b.Off, b.On, b.Basis, a.Off, a.On, a.Basis
}

func (o *Outline) edgeNames() []string {
	var names []string
	for _, e := range o.Edges {
		names = append(names, e.Name)
	}
	return names
}
