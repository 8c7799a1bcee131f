package partspec

import (
	"fmt"

	"catchplate/partspec/units"
)

var spigotShape = shapeOf{attrs: append([]attr{
	may("diameter", kindSize), may("length", kindSize), may("as_supplied", kindFlag), may("measured", kindLength),
	may("roughness", kindNumber), may("note", kindText), aboutAxis,
}, placeOf...)}

// spigot builds an outside cylinder. Its place is found later, with the chain.
func (s *shaper) spigot(e *entry) Feature {
	f := &Spigot{
		FeatureHead: s.head(e), Length: s.size(e, "length", useLength), Roughness: e.number("roughness"),
		AsSupplied: e.flag("as_supplied"), Measured: measured(e),
	}
	s.onMainAxis(e)
	f.Diameter = s.spigotDiameter(e)
	if e.broken {
		return nil
	}
	s.askMeasured(e, f.Diameter.Value)
	s.outer = append(s.outer, &outside{entry: e, length: &f.Length, span: &f.Span, piece: func() piece {
		return cylinder(f.Name, f.Span, f.Diameter.Value)
	}})
	return f
}

// spigotDiameter is what is drawn, the stock's own outside, or the blank of the
// thread on it. An existing piece has several outsides, so that there the
// diameter is written beside as_supplied.
func (s *shaper) spigotDiameter(e *entry) Size {
	if e.flag("as_supplied") && s.part.Stock.Kind != Existing {
		if e.has("diameter") {
			s.c.fail(e, e.at("diameter"), fmt.Sprintf("%s has two diameters", e.title()),
				"as_supplied leaves the stock's own outside: leave diameter or as_supplied out.")
		}
		if s.part.Stock.Outside.Value == 0 {
			e.broken = true // the stock failed: told already
		}
		size := s.part.Stock.Outside
		size.Range, size.general = e.at("as_supplied"), false
		return size
	}
	threaded, found := s.threadOn(e.name)
	if !found && !e.has("diameter") && s.strayThread() {
		e.broken = true
		return Size{}
	}
	if !found && !e.has("diameter") {
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks diameter", e.title()),
			"Write %s, or as_supplied = true to leave the stock's own outside.", example(attr{"diameter", kindSize, true}))
		return Size{}
	}
	if found {
		return s.threadBlank(e, threaded)
	}
	return s.size(e, "diameter", useShaft)
}

// measured is an as-made diameter; nil when the file gives none.
func measured(e *entry) *units.Length {
	if !e.has("measured") || e.broken {
		return nil
	}
	l := e.length("measured")
	return &l
}

// askMeasured asks about an as-made diameter that is far from the drawn one:
// more than 1 mm and a twentieth of it.
func (s *shaper) askMeasured(e *entry, drawn units.Length) {
	const far, farPart = units.MM, 20
	off := (e.length("measured") - drawn).Abs()
	if e.has("measured") && off > far && off > drawn/farPart {
		s.c.report(question(e.at("measured"), fmt.Sprintf("Is %s really measured %s where %s is drawn?", e.title(), s.shown(e.length("measured")), s.shown(drawn)),
			"Whatever depends on it will follow. Take measured out if it has not been made."))
	}
}
