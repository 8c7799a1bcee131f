package partspec

import (
	"fmt"

	"catchplate/partspec/units"
	"catchplate/planner/plane"
)

var slotShape = shapeOf{attrs: []attr{
	need("width", kindSize), may("depth", kindSize), may("note", kindText),
	may("ends", kindPlaces), may("through", kindFlag), // of flat parts
	may("on", kindWord), may("length", kindSize), may("at", kindPosition), may("angle", kindTurn), // of turned parts
	may("from", kindWord),
}}

// slot builds a straight groove with parallel sides, a flat floor and round ends.
func (s *shaper) slot(e *entry) Feature {
	f := &Slot{FeatureHead: s.head(e), Width: s.size(e, "width", useHole)}
	strangers := []string{"ends", "through"}
	if s.flat {
		strangers = []string{"on", "length", "at", "angle"}
	}
	for _, name := range strangers {
		if e.has(name) {
			s.c.fail(e, e.at(name), fmt.Sprintf("%s belongs to a slot of a %s part", name, map[bool]string{true: "turned", false: "flat"}[s.flat]), "Leave it out.")
		}
	}
	if e.broken {
		return nil
	}
	if s.flat {
		s.faceSlot(e, f)
	} else {
		s.sideSlot(e, f)
	}
	if e.broken {
		return nil
	}
	return f
}

// faceSlot lies in the front or the back of a flat part, or goes through it.
func (s *shaper) faceSlot(e *entry, f *Slot) {
	f.From = s.holesFrom(e)
	ends := e.value("ends").places
	switch {
	case len(ends) != 2:
		s.c.fail(e, e.at("ends"), fmt.Sprintf("%s lacks its two ends", e.title()), "Write the centres of its round ends: ends = [[20, 15], [40, 15]].")
		return
	case e.has("depth") == e.flag("through"):
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say once how deep it is", e.title()), "Write depth = 2, or through = true.")
		return
	}
	f.Ends = [2]Point{s.point(e, ends[0], e.at("ends")), s.point(e, ends[1], e.at("ends"))}
	if apart(f.Ends[0], f.Ends[1]) <= sameLength {
		s.c.fail(e, e.at("ends"), fmt.Sprintf("%s has both ends in one place", e.title()), "That is a hole: write holes %q { at = [...], diameter = %s }.", e.name, s.shown(f.Width.Value))
	}
	f.Through, f.Depth = e.flag("through"), s.part.Length
	if !f.Through {
		f.Depth = s.size(e, "depth", useLength)
		if f.Depth.Value > s.length()-sameLength {
			s.c.fail(e, e.at("depth"), fmt.Sprintf("%s is deeper than the part", e.title()), "The part is %s thick: write through = true, or a smaller depth.%s",
				s.shown(s.length()), s.wrongUnit(f.Depth.Value, s.length()))
		}
	}
	f.Span = fromMouth(f.From, 0, min(f.Depth.Value, s.length()), s.length())
}

// sideSlot lies along the outside of a turned part.
func (s *shaper) sideSlot(e *entry, f *Slot) {
	for _, name := range []string{"on", "length", "depth"} {
		if !e.has(name) {
			s.c.fail(e, e.head(), fmt.Sprintf("%s lacks %s", e.title(), name), "Write on, the feature that it is cut in, its length (round ends included) and its depth from the surface.")
			return
		}
	}
	on := s.outer1(e)
	length := s.size(e, "length", useLength)
	f.Depth, f.Angle = s.size(e, "depth", useLength), units.Angle(e.number("angle"))
	if on == nil || e.broken {
		e.broken = true
		return
	}
	f.On = on.entry.name
	var ok bool
	if f.Span, ok = s.stretchOn(e, on, length.Value); !ok {
		return
	}
	least, _ := over([]piece{on.piece()}, f.Span)
	_, hollow := over(s.insidePieces(), f.Span)
	switch {
	case length.Value < f.Width.Value-sameLength:
		s.c.fail(e, e.at("length"), fmt.Sprintf("%s is shorter than it is wide", e.title()), "Its round ends alone take %s.", s.shown(f.Width.Value))
	case f.Width.Value/2 >= least-sameLength:
		s.c.fail(e, e.at("width"), fmt.Sprintf("%s is wider than the part", e.title()), "The %s is %s across.%s", on.entry.word, s.shown(2*least), s.wrongUnit(f.Width.Value, 2*least))
	case least-f.Depth.Value <= hollow+sameLength:
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s breaks through the wall", e.title()), "The metal there is %s thick: write less.%s", s.shown(least-hollow), s.wrongUnit(f.Depth.Value, least))
	}
}

// capsule is what a slot of a flat part takes of the plane.
func (f *Slot) capsule() plane.Capsule {
	a, b := f.Ends[0], f.Ends[1]
	return plane.Capsule{X0: float64(a.X.Value), Y0: float64(a.Y.Value), X1: float64(b.X.Value), Y1: float64(b.Y.Value), Radius: float64(f.Width.Value) / 2}
}

// checkSlots: slots of flat parts lie in the outline, and clear of holes, bores and one another.
func (s *shaper) checkSlots(openings []opening) {
	if s.part.Outline == nil {
		return
	}
	figure := s.part.Outline.region().Figure()
	var before []*Slot
	for _, e := range s.entries {
		f, ok := s.done[e.name].(*Slot)
		if !ok {
			continue
		}
		if len(plane.Common([]plane.Set{f.capsule()}, []plane.Set{figure})) > 0 {
			s.c.fail(e, e.head(), fmt.Sprintf("%s runs out of the outline", e.title()), "With its round ends it takes %s around the line between its ends. An open slot is part of the outline: draw it there.", s.shown(f.Width.Value/2))
			continue
		}
		for _, o := range openings {
			web := units.Length(f.capsule().Off(float64(o.at.X.Value), float64(o.at.Y.Value))) - o.mouth - f.Width.Value/2
			if _, meet := common(o.span, f.Span); meet && web < sameLength && !e.broken && !o.entry.broken {
				s.c.fail(e, e.head(), fmt.Sprintf("%s and %s meet", capital(o.title()), e.title()), "Move one, or make it smaller.")
			}
		}
		for _, other := range before {
			if _, meet := common(other.Span, f.Span); meet && plane.Meet(f.capsule(), other.capsule()) && !e.broken {
				s.c.fail(e, e.head(), fmt.Sprintf("%s and %s meet", capital(s.entryOf(other.Name).title()), e.title()), "Move one, or make it smaller.")
			}
		}
		before = append(before, f)
	}
}
