package partspec

import "fmt"

var knurlShape = shapeOf{attrs: []attr{need("on", kindWord), need("pitch", kindLength), may("pattern", kindWord), may("note", kindText)}}

// knurl builds a pressed pattern on the whole of a spigot.
func (s *shaper) knurl(e *entry) Feature {
	on := s.target(e, e.text("on"), "on")
	if on == nil {
		return nil
	}
	base, ok := on.(*Spigot)
	if !ok {
		s.c.fail(e, e.at("on"), fmt.Sprintf("A knurl cannot be on %s", s.entryOf(on.Head().Name).title()),
			"Name a spigot or a flange.")
		return nil
	}
	if _, threaded := s.threadOn(base.Name); threaded {
		s.c.fail(e, e.at("on"), fmt.Sprintf("%s has a thread", s.entryOf(base.Name).title()), "A knurl and a thread need a spigot each.")
	}
	f := &Knurl{FeatureHead: s.head(e), On: base.Name, Pitch: e.length("pitch"), Pattern: e.text("pattern"), Span: base.Span}
	switch f.Pattern {
	case "":
		f.Pattern = "diamond"
	case "diamond", "straight":
	default:
		s.c.fail(e, e.at("pattern"), fmt.Sprintf("There is no knurl %q", f.Pattern),
			`Write pattern = "diamond" (also when none is written) or pattern = "straight".`)
	}
	const coarsest = 3.0 // mm, the coarsest wheels of small knurling tools; common practice, no source
	if f.Pitch > coarsest || f.Pitch > base.Diameter.Value/4 {
		s.c.fail(e, e.at("pitch"), "The pitch of the knurl is too coarse",
			"Usual pitches are 0.5 to 2 mm, and less than a quarter of the diameter.")
	}
	return f
}
