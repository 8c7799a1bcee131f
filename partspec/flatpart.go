package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/plane"
)

// frame is whether a part is turned on an axis or cut flat to an outline, which decides what its blocks may say.
func (p *partEntry) isFlat() bool { return p.outline != nil || p.has("thickness") }

// buildFrame finds the part's length, or its thickness and outline.
func (s *shaper) buildFrame(p *partEntry) {
	switch {
	case !p.isFlat():
		if !p.has("length") {
			s.c.fail(p.entry, p.head(), p.title()+" lacks length", "Write %s; of a flat part write its thickness and its outline.", example(attr{"length", kindSize, true}))
		}
		s.part.Length = s.size(p.entry, "length", useLength)
		return
	case p.has("length"):
		s.c.fail(p.entry, p.at("length"), "A flat part has no length",
			"Its outline says how large it is, and thickness the rest. Of a turned part leave outline and thickness out.")
	case p.outline == nil:
		s.c.fail(p.entry, p.at("thickness"), p.title()+" has a thickness and no outline",
			`Write outline "rectangle" { width = 60, height = 40 } on lines of its own; a turned part has a length instead.`)
	case !p.has("thickness"):
		s.c.fail(p.entry, p.outline.head(), p.title()+" has an outline and no thickness", "Write thickness = 4.")
	}
	s.part.Length = s.size(p.entry, "thickness", useLength)
	if p.outline != nil {
		s.part.Outline = s.buildOutline(p.outline)
	}
	s.flat, s.doubt = true, s.part.Outline == nil || s.doubt
}

// region is the outline as a plane figure.
func (o *Outline) region() plane.Region {
	var r plane.Region
	for _, e := range o.Edges {
		r.Edges = append(r.Edges, e.figure())
	}
	return r
}

func (e OutlineEdge) figure() plane.Edge {
	f := plane.Edge{X0: float64(e.X0), Y0: float64(e.Y0), X1: float64(e.X1), Y1: float64(e.Y1)}
	if e.Arc {
		f.CX, f.CY, f.Radius, f.Hollow = float64(e.CX), float64(e.CY), float64(e.Radius), e.Hollow
	}
	return f
}

// nearestEdge is how far a place lies inside the outline, and the edge that is nearest to it.
func (o *Outline) nearestEdge(x, y units.Length) (inside units.Length, edge OutlineEdge) {
	best := math.Inf(1)
	for _, e := range o.Edges {
		if _, _, off := e.figure().Nearest(float64(x), float64(y)); off < best {
			best, edge = off, e
		}
	}
	if o.region().Inside(float64(x), float64(y)) < 0 {
		best = -best
	}
	return units.Length(best).Round(positionDecimals), edge
}

// named finds the place that an attribute names: the centre of an arc of the outline ("top.centre"), or a bore that stands before in the file.
func (s *shaper) named(e *entry, attribute, text string) (Point, bool) {
	if name, ok := cutCentre(text); ok {
		return s.arcCentre(e, attribute, name)
	}
	if b, ok := s.done[text].(*Bore); ok && b.At != nil {
		return *b.At, true
	}
	if other := s.entryOf(text); other != nil && other.broken {
		e.broken = true
		return Point{}, false
	}
	s.c.fail(e, e.at(attribute), fmt.Sprintf("%q names no place", text),
		`Write coordinates like [30, 70], a bore that stands before this in the file like "main", or the centre of an arc of the outline like "top.centre".`)
	return Point{}, false
}

func cutCentre(text string) (string, bool) {
	const tail = ".centre"
	if n := len(text) - len(tail); n > 0 && text[n:] == tail {
		return text[:n], true
	}
	return "", false
}

// arcCentre is the centre of an arc of the outline, with the limits of its coordinates.
func (s *shaper) arcCentre(e *entry, attribute, name string) (Point, bool) {
	if s.part.Outline == nil {
		e.broken = true
		return Point{}, false
	}
	edge, found := s.part.Outline.Edge(name)
	if !found || !edge.Arc {
		arcs := s.part.Outline.arcNames()
		s.c.fail(e, e.at(attribute), fmt.Sprintf("The outline has no arc %q", name), "%s", didYouMean(name, arcs, "Write coordinates, like [30, 70]."))
		return Point{}, false
	}
	at := func(l units.Length) units.Toleranced {
		return units.Toleranced{Nominal: units.Dimension{Value: l, InInches: s.part.Inches}}
	}
	return s.pointAbout(e, place{at(edge.CX), at(edge.CY)}, edge.Radius, e.at(attribute)), true
}

func (o *Outline) arcNames() []string {
	var names []string
	for _, e := range o.Edges {
		if e.Arc {
			names = append(names, e.Name)
		}
	}
	return names
}

// place reads an attribute that says where something lies.
func (s *shaper) place(e *entry, attribute string) (Point, bool) {
	v := e.value(attribute)
	switch {
	case !e.known(attribute):
		return Point{}, false
	case v.text != "":
		return s.named(e, attribute, v.text)
	}
	return s.point(e, v.places[0], e.at(attribute)), true
}

// samePlace reports whether two centres are one.
func samePlace(a, b *Point) bool {
	if a == nil || b == nil {
		return a == b
	}
	return (a.X.Value-b.X.Value).Abs() <= sameLength && (a.Y.Value-b.Y.Value).Abs() <= sameLength
}

// apart is the distance between two places.
func apart(a, b Point) units.Length {
	return units.Length(math.Hypot(float64(a.X.Value-b.X.Value), float64(a.Y.Value-b.Y.Value)))
}

// boreFrom is the end that a bore opens at: of a turned part the left one, of a flat one the front, unless the file says otherwise.
func (s *shaper) boreFrom(e *entry) End {
	if s.flat {
		return s.holesFrom(e)
	}
	return s.fromEnd(e, Left)
}

// middle is the middle of a disc, or a turned part's axis, within what the smallest general tolerance lets a place lie beside it: the same as at = [0, 0].
func (s *shaper) middle(e *entry, at Range) *Point {
	off := s.coordinate(e, units.Toleranced{Nominal: units.Dimension{InInches: s.part.Inches}}, 0, at)
	return &Point{off, off}
}

// boreAt is where a bore of a flat part lies; on a turned part it lies on the axis.
func (s *shaper) boreAt(e *entry) *Point {
	switch {
	case !s.flat && e.has("at"):
		s.c.fail(e, e.at("at"), fmt.Sprintf("%s lies on the axis", e.title()),
			"Leave at out; holes beside the axis are written as holes. A bore off the axis of a turned part is not known to this version.")
	case s.flat && !e.has("at") && s.part.Outline != nil && s.part.Outline.Kind != "disc":
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks at", e.title()), "Write %s.", example(attr{"at", kindPlace, true}))
	case s.flat && !e.has("at"):
		return s.middle(e, e.head())
	case s.flat:
		if p, ok := s.place(e, "at"); ok {
			return &p
		}
		e.broken = true
	}
	return nil
}
