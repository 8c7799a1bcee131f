package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// mouthRim is the edge of a flat part's bore at a face. Its room across is what its wall leaves to the outline and to what else is cut in that plate.
func (s *shaper) mouthRim(e *entry, f *Bore, end End) (rim, bool) {
	z := f.Span.At(end)
	if face := (Span{0, s.length()}).At(end); (z - face).Abs() > sameLength {
		s.c.fail(e, e.at("edge"), fmt.Sprintf("%s does not come out at the %s", capital(s.entryOf(f.Name).title()), s.endWord(end)),
			"On a flat part a chamfer breaks the edge of a bore at a face: name the bore that is open there, at its front or its back.")
		return rim{}, false
	}
	r := f.Diameter.Value / 2
	return rim{Edge: Edge{Feature: f.Name, End: end, Z: z, R: r, Inside: true, Convex: true, Axial: end.Other()}, axial: f.Span.Length(), radial: s.roomBeside(f, end) - r}, true
}

// outlineEdge refuses the edges of a flat part's outline, which are broken all alike, and reports whether it did.
func (s *shaper) outlineEdge(e *entry, name string) bool {
	if s.part.Outline == nil {
		return false
	}
	if _, found := s.part.Outline.Edge(name); !found {
		return false
	}
	s.c.fail(e, e.at("edge"), fmt.Sprintf("The edge %q of the outline gets no chamfer of its own", name),
		"Its sharp edges are broken with a file when the part is deburred: leave the chamfer out. One of a certain size is filed from the drawing.")
	return true
}

// roomBeside is the distance from a bore's centre to the nearest edge of the outline or of another mouth at a face.
func (s *shaper) roomBeside(f *Bore, end End) units.Length {
	room := units.Length(math.Inf(1))
	if s.part.Outline != nil {
		room, _ = s.part.Outline.nearestEdge(f.At.X.Value, f.At.Y.Value)
	}
	for _, o := range s.openings() {
		if samePlace(&o.at, f.At) || (o.span.At(end)-f.Span.At(end)).Abs() > sameLength {
			continue
		}
		mouth := o.mouth
		if b, ok := s.done[o.entry.name].(*Bore); ok {
			mouth += s.broken(b, end)
		}
		room = min(room, apart(o.at, *f.At)-mouth)
	}
	return room
}

// broken is how far the chamfer of a bore's mouth, where it is known already, reaches beyond its wall.
func (s *shaper) broken(b *Bore, end End) units.Length {
	for _, e := range s.entries {
		if c, ok := s.done[e.name].(*Chamfer); ok && c.Edge.Feature == b.Name && c.Edge.End == end {
			return c.radial()
		}
	}
	return 0
}

// endWord is the word of the file for an end: of a flat part a face.
func (s *shaper) endWord(end End) string {
	switch {
	case !s.flat:
		return end.String()
	case end == Left:
		return "back"
	case end == Right:
		return "front"
	}
	return end.String()
}

// edgeOwners says what an edge can belong to, for a message.
func (s *shaper) edgeOwners() string {
	if s.flat {
		return "Name the bore whose mouth is broken; the mouths of a pattern of holes are widened by a countersink { ... } in it."
	}
	return "Name the spigot, flange, taper, profile, bore or groove that the edge belongs to."
}

// threadBearers says what a thread can be cut on, for a message.
func (s *shaper) threadBearers() string {
	if s.flat {
		return "Name a bore; small tapped holes are a pattern: holes \"fixing\" { at = [[10, 10]], thread = \"M4\" } on lines of its own."
	}
	return "Name a spigot, a flange or a bore."
}

// someEdges is how an edge is written, for a message.
func (s *shaper) someEdges() string {
	if s.flat {
		return `a bore and a face, like "main.front" or "main.back"`
	}
	return `a feature and its end, like "rim.left" or "rim.right"`
}

// endNamed is the end that a word of the file names.
func (s *shaper) endNamed(word string) (End, bool) {
	for _, end := range []End{Left, Right} {
		if word == s.endWord(end) {
			return end, true
		}
	}
	return EndInvalid, false
}

// threadOf is the thread in a bore; nil when it has none.
func (s *shaper) threadOf(bore string) *Thread {
	for _, e := range s.entries {
		if t, ok := s.done[e.name].(*Thread); ok && t.On == bore {
			return t
		}
	}
	return nil
}
