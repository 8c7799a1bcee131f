package partspec

import "fmt"

var recessShape = shapeOf{attrs: []attr{
	need("on", kindWord), need("diameter", kindSize), need("width", kindSize), need("at", kindPosition), may("note", kindText),
}}

// recess builds a groove inside a bore. at counts from the end face that the
// bore is open at, as the bore's depth does.
func (s *shaper) recess(e *entry) Feature {
	on := s.target(e, e.text("on"), "on")
	if on == nil {
		return nil
	}
	bore, ok := on.(*Bore)
	if !ok {
		s.c.fail(e, e.at("on"), fmt.Sprintf("A recess cannot be on %s", s.entryOf(on.Head().Name).title()),
			"A recess is cut in a bore; outside it is a groove.")
		return nil
	}
	f := &Recess{FeatureHead: s.head(e), On: bore.Name, Diameter: s.size(e, "diameter", useHole), Width: s.size(e, "width", useLength)}
	f.Span = fromMouth(bore.From, e.length("at"), e.length("at")+f.Width.Value, s.length())
	if f.Span.Left < bore.Span.Left-sameLength || f.Span.Right > bore.Span.Right+sameLength {
		s.c.fail(e, e.head(), fmt.Sprintf("%s is not in %s", e.title(), s.entryOf(bore.Name).title()),
			"It would lie from %s to %s, the bore lies from %s to %s, from the left end.",
			s.shown(f.Span.Left), s.shown(f.Span.Right), s.shown(bore.Span.Left), s.shown(bore.Span.Right))
	}
	if f.Diameter.Value <= bore.Diameter.Value+sameLength {
		s.c.fail(e, e.at("diameter"), fmt.Sprintf("%s is not larger than its bore", e.title()),
			"The bore is %s across; a recess is larger.", s.shown(bore.Diameter.Value))
	}
	return f
}
