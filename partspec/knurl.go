package partspec

import (
	"fmt"

	"catchplate/partspec/units"
)

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
	f := &Knurl{FeatureHead: s.head(e), On: base.Name, Pitch: s.knurlPitch(e), Pattern: s.knurlPattern(e), Span: base.Span}
	if f.Pitch > base.Diameter.Value/4 {
		s.tooCoarse(e)
	}
	return f
}

func (s *shaper) knurlPattern(e *entry) string {
	switch pattern := e.text("pattern"); pattern {
	case "":
		return "diamond"
	case "diamond", "straight":
		return pattern
	default:
		s.c.fail(e, e.at("pattern"), fmt.Sprintf("There is no knurl %q", pattern),
			`Write pattern = "diamond" (also when none is written) or pattern = "straight".`)
		return ""
	}
}

func (s *shaper) knurlPitch(e *entry) units.Length {
	const coarsest = 3 * units.MM // the coarsest wheels of small knurling tools; common practice, no source
	pitch := e.length("pitch")
	if pitch > coarsest {
		s.tooCoarse(e)
	}
	return pitch
}

func (s *shaper) tooCoarse(e *entry) {
	s.c.fail(e, e.at("pitch"), "The pitch of the knurl is too coarse",
		"Usual pitches are 0.5 to 2 mm, and less than a quarter of the diameter.")
}
