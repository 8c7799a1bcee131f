package partspec

import (
	"fmt"

	"catchplate/partspec/units"
)

var flatShape = shapeOf{attrs: []attr{
	need("on", kindWord), may("distance", kindSize), may("across_flats", kindSize), may("depth", kindSize), may("angle", kindTurn), may("count", kindCount),
	may("length", kindSize), may("at", kindPosition), may("from", kindWord), may("note", kindText),
}}

// maxFlats is the most flats that are cut around one feature.
const maxFlats = 60

// planeFlat builds flats on the outside of a turned part: one, or several equally spaced.
func (s *shaper) planeFlat(e *entry) Feature {
	on := s.outer1(e)
	if on == nil {
		return nil
	}
	f := &Flat{FeatureHead: s.head(e), On: on.entry.name, Angle: units.Angle(e.number("angle")), Count: max(1, int(e.number("count"))), Span: *on.span}
	length := s.size(e, "length", useLength)
	switch {
	case e.has("length"):
		var ok bool
		if f.Span, ok = s.stretchOn(e, on, length.Value); !ok {
			return nil
		}
	case e.has("at") || e.has("from"):
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks length", e.title()), "Without a length it takes all of %s: write length, or leave at and from out.", on.entry.title())
	}
	if f.Count > maxFlats {
		s.c.fail(e, e.at("count"), "There are too many flats", "At most %d are believed.", maxFlats)
	}
	least, surface := over([]piece{on.piece()}, f.Span)
	f.Distance = s.flatDistance(e, f, surface)
	if e.broken {
		return nil
	}
	_, hollow := over(s.insidePieces(), f.Span)
	switch d := f.Distance.Value; {
	case d >= surface-sameLength:
		s.c.fail(e, e.head(), fmt.Sprintf("%s cuts nothing", e.title()), "It lies %s from the axis, and the surface %s.%s", s.shown(d), s.shown(surface), s.wrongUnit(d, surface))
	case d >= least-sameLength:
		s.c.report(question(e.head(), fmt.Sprintf("Is %s really only on part of %s?", e.title(), on.entry.title()), "It lies %s from the axis, and the surface from %s to %s.", s.shown(d), s.shown(least), s.shown(surface)))
	case d <= hollow+sameLength:
		s.c.fail(e, e.head(), fmt.Sprintf("%s breaks into the bore", e.title()), "It lies %s from the axis, and the hollow is %s in radius: cut less.", s.shown(d), s.shown(hollow))
	}
	if e.broken {
		return nil
	}
	return f
}

// flatDistance is from the axis to the plane: drawn so, as the size across opposite flats, or as a depth below the surface.
func (s *shaper) flatDistance(e *entry, f *Flat, surface units.Length) Size {
	said := 0
	for _, name := range []string{"distance", "across_flats", "depth"} {
		if e.has(name) {
			said++
		}
	}
	if said != 1 {
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say once how deep it is", e.title()),
			"Write one of: distance = 8 from the axis; depth = 1.5 below the surface; across_flats = 16 of an even count.")
		return Size{}
	}
	switch {
	case e.has("across_flats"):
		across := s.size(e, "across_flats", useShaft)
		if f.Count%2 != 0 {
			s.c.fail(e, e.at("across_flats"), "An odd count has no opposite flats", "Write count = 2, 4 or 6 beside it, or distance = 8 from the axis.")
		}
		half := Size{Dimension: units.Dimension{Value: across.Value / 2, InInches: across.InInches}, Range: across.Range}
		return half.within(units.Limits{Low: across.Low / 2, High: across.High / 2}, "half of "+across.Drawn()+" across flats, "+across.Basis)
	case e.has("depth"):
		depth := s.size(e, "depth", useLength)
		d := Size{Dimension: units.Dimension{Value: (surface - depth.Value).Round(positionDecimals), InInches: depth.InInches}, Range: depth.Range}
		if d.Value < leastSize {
			s.c.fail(e, e.at("depth"), fmt.Sprintf("%s leaves nothing", e.title()), "The surface is %s from the axis.%s", s.shown(surface), s.wrongUnit(depth.Value, surface))
			return d
		}
		return d.within(units.Limits{Low: (surface - depth.High).Round(positionDecimals), High: (surface - depth.Low).Round(positionDecimals)}, "depth "+depth.Drawn()+" below the surface, "+depth.Basis)
	}
	return s.size(e, "distance", useLength)
}
