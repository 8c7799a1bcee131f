package partspec

import (
	"fmt"
	"slices"

	"catchplate/partspec/units"
)

// rim is an edge with the room there is to break or fill it.
type rim struct {
	Edge
	axial, radial units.Length
}

// worked is an edge that a chamfer or a fillet takes.
type worked struct {
	entry         *entry
	rim           rim
	axial, radial units.Length
}

// rim finds the edge that a chamfer or fillet names, and its room.
func (s *shaper) rim(e *entry) (rim, bool) {
	name, end, ok := s.face(e, "edge", e.text("edge"))
	if !ok {
		return rim{}, false
	}
	if s.outlineEdge(e, name) {
		return rim{}, false
	}
	f := s.target(e, name, "edge")
	if f == nil {
		return rim{}, false
	}
	switch f := f.(type) {
	case *Spigot, *Profile:
		return s.outerRim(e, name, end)
	case *Taper:
		if f.Inside {
			return s.innerRim(e, f.piece(), end)
		}
		return s.outerRim(e, name, end)
	case *Bore:
		if s.flat {
			return s.mouthRim(e, f, end)
		}
		return s.innerRim(e, cylinder(f.Name, f.Span, f.Diameter.Value), end)
	case *Groove:
		return s.grooveRim(e, f, end)
	}
	s.c.fail(e, e.at("edge"), fmt.Sprintf("%s has no edge of its own", s.entryOf(name).title()),
		"%s", s.edgeOwners())
	return rim{}, false
}

func (s *shaper) outerRim(e *entry, name string, end End) (rim, bool) {
	i := slices.IndexFunc(s.outer, func(o *outside) bool { return o.entry.name == name })
	if i < 0 {
		return rim{}, false
	}
	p := s.outer[i].piece()
	z := p.span.At(end)
	own, beside := p.at(end), radiusBeside(s.outsidePieces(), z, end)
	r := rim{Edge: Edge{Feature: name, End: end, Z: z, R: s.cornerRadius(name, own), Axial: end.Other()}, axial: s.clearOf(name, p.span, end)}
	switch {
	case beside > own+sameLength:
		r.radial = beside - own
	case beside < own-sameLength:
		r.Convex = true
		r.radial = r.R - max(beside, radiusBeside(s.insidePieces(), z, end.Other()))
	default:
		return rim{}, s.noEdge(e, name)
	}
	return r, true
}

// cornerRadius is where the edge of a piece is: on a hexagon at its corners.
func (s *shaper) cornerRadius(name string, own units.Length) units.Length {
	if f, ok := s.done[name].(*Spigot); ok && f.AsSupplied {
		return s.part.Stock.EnvelopeDiameter() / 2
	}
	return own
}

// clearOf is the length of a piece from one end to the nearest groove.
func (s *shaper) clearOf(name string, span Span, end End) units.Length {
	clear := span.Length()
	for _, e := range s.entries {
		if g, ok := s.done[e.name].(*Groove); ok && g.On == name {
			clear = min(clear, (g.Span.At(end) - span.At(end)).Abs())
		}
	}
	return clear
}

func (s *shaper) innerRim(e *entry, p piece, end End) (rim, bool) {
	z := p.span.At(end)
	own, beside := p.at(end), radiusBeside(s.insidePieces(), z, end)
	r := rim{Edge: Edge{Feature: p.name, End: end, Z: z, R: own, Inside: true, Axial: end.Other()}, axial: p.span.Length()}
	open := z <= sameLength || z >= s.length()-sameLength
	switch {
	case open || beside > own+sameLength:
		r.Convex = true
		r.radial = radiusBeside(slices.Concat(s.outsidePieces()), z, end.Other()) - own
		if !open {
			r.radial = min(r.radial, beside-own)
		}
	case beside < own-sameLength:
		r.radial = own - beside
	default:
		return rim{}, s.noEdge(e, p.name)
	}
	return r, true
}

// grooveRim is the edge where a groove meets the surface that it is cut in.
func (s *shaper) grooveRim(e *entry, g *Groove, end End) (rim, bool) {
	i := slices.IndexFunc(s.outer, func(o *outside) bool { return o.entry.name == g.On })
	if i < 0 {
		return rim{}, false
	}
	p := s.outer[i].piece()
	z := g.Span.At(end)
	left := (p.span.At(end) - z).Abs()
	if left <= sameLength {
		return rim{}, s.noEdge(e, g.Name)
	}
	edge := Edge{Feature: g.Name, End: end, Z: z, R: p.radius(z), Convex: true, Axial: end}
	return rim{Edge: edge, axial: left, radial: edge.R - g.Bottom.Value/2}, true
}

func (s *shaper) noEdge(e *entry, name string) bool {
	s.c.fail(e, e.at("edge"), fmt.Sprintf("%s has no edge there", s.entryOf(name).title()),
		"What lies beside it has the same diameter.")
	return false
}

// checkEdges finds chamfers and fillets that need more room than there is.
func (s *shaper) checkEdges() {
	var all []worked
	for _, e := range s.entries {
		switch f := s.done[e.name].(type) {
		case *Chamfer:
			all = append(all, worked{e, s.rims[e.name], f.Size.Value, f.radial()})
		case *Fillet:
			all = append(all, worked{e, s.rims[e.name], f.Radius.Value, f.Radius.Value})
		}
	}
	for i, w := range all {
		if !s.checkRoom(w) {
			continue
		}
		for _, other := range all[:i] {
			if !w.entry.broken && !other.entry.broken {
				s.checkTogether(w, other)
			}
		}
	}
}

func (s *shaper) checkRoom(w worked) bool {
	knife := w.rim.Convex // a knife edge may not be left, but a fillet may fill its corner
	if w.axial > w.rim.axial+sameLength || w.radial > w.rim.radial+sameLength || knife && w.radial > w.rim.radial-sameLength {
		s.c.fail(w.entry, w.entry.head(), fmt.Sprintf("%s does not fit its edge", w.entry.title()),
			"It takes %s along the axis and %s across it; %s has %s and %s there.%s",
			s.shown(w.axial), s.shown(w.radial), w.rim.Feature,
			s.shown(w.rim.axial), s.shown(w.rim.radial), s.wrongUnit(w.axial, min(w.rim.axial, w.rim.radial)))
		return false
	}
	return true
}

// checkTogether judges two edges: of one place, of both ends of one feature, or
// inside and outside of one face.
func (s *shaper) checkTogether(w, other worked) {
	a, b := w.rim, other.rim
	samePlace := a.Inside == b.Inside && (a.Z-b.Z).Abs() <= sameLength && (a.R-b.R).Abs() <= sameLength && a.Axial == b.Axial
	oneFace := a.Inside != b.Inside && a.Convex && b.Convex && (a.Z-b.Z).Abs() <= sameLength && a.Axial == b.Axial
	switch {
	case samePlace:
		s.c.fail(w.entry, w.entry.at("edge"), fmt.Sprintf("%s and %s take the same edge", other.entry.title(), w.entry.title()),
			"Leave one out.")
	case a.Feature == b.Feature && w.axial+other.axial > a.axial+sameLength && a.axial == b.axial:
		s.c.fail(w.entry, w.entry.head(), fmt.Sprintf("%s and %s meet on %s", other.entry.title(), w.entry.title(), a.Feature),
			"Together they take %s of its %s.", s.shown(w.axial+other.axial), s.shown(a.axial))
	case oneFace && w.radial+other.radial >= (a.R-b.R).Abs()-sameLength:
		s.c.fail(w.entry, w.entry.head(), fmt.Sprintf("%s and %s leave no face between them", other.entry.title(), w.entry.title()),
			"Together they take %s of a wall of %s.", s.shown(w.radial+other.radial), s.shown((a.R - b.R).Abs()))
	}
}
