package partspec

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec/units"
)

var grooveShape = shapeOf{attrs: []attr{
	need("on", kindWord), need("at", kindPosition), may("from", kindWord), may("width", kindSize), may("depth", kindSize),
	may("diameter", kindSize), may("angle", kindAngle), may("bottom_width", kindPosition), may("note", kindText),
}}

// groove builds an outside groove, square or vee.
func (s *shaper) groove(e *entry) Feature {
	on := s.outer1(e)
	if on == nil {
		return nil
	}
	f := &Groove{FeatureHead: s.head(e), On: on.entry.name, Angle: e.angle("angle"), Width: s.size(e, "width", useLength)}
	f.Bottom = s.grooveBottom(e, on)
	if e.broken || !s.grooveForm(e, f, on) || !s.grooveSpan(e, f, on) {
		return nil
	}
	return f
}

// outer1 finds the outside feature that a groove, thread or knurl is on.
func (s *shaper) outer1(e *entry) *outside {
	name := e.text("on")
	f := s.target(e, name, "on")
	if f == nil {
		return nil
	}
	i := slices.IndexFunc(s.outer, func(o *outside) bool { return o.entry.name == name })
	if i < 0 {
		s.c.fail(e, e.at("on"), fmt.Sprintf("A %s cannot be on %s", e.word, s.entryOf(name).title()),
			"Name an outside feature: a spigot or a flange.")
		return nil
	}
	return s.outer[i]
}

// grooveBottom is the diameter at the bottom, from the diameter or the depth
// that is drawn. It stays zero when a vee finds it from its width.
func (s *shaper) grooveBottom(e *entry, on *outside) Size {
	bottom, depth := s.size(e, "diameter", useShaft), s.size(e, "depth", useLength)
	_, isSpigot := s.done[on.entry.name].(*Spigot)
	switch {
	case e.has("diameter") && e.has("depth"):
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s tells its bottom twice", e.title()), "Write depth or diameter, not both.")
	case !isSpigot && !e.has("diameter"):
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks diameter", e.title()),
			"On a taper or a profile a groove's depth has no one place to be measured: write the diameter at its bottom.")
	case e.has("depth") && !e.broken:
		_, most := on.piece().extremes()
		surface := 2 * most
		return Size{
			Dimension: units.Dimension{Value: (surface - 2*depth.Value).Round(positionDecimals), InInches: depth.InInches},
			Range:     depth.Range,
		}.within(units.Limits{Low: (surface - 2*depth.High).Round(positionDecimals), High: (surface - 2*depth.Low).Round(positionDecimals)},
			"depth "+depth.Drawn()+" below the surface, "+depth.Basis)
	}
	return bottom
}

// grooveForm finds what is open of width, bottom and bottom width.
func (s *shaper) grooveForm(e *entry, f *Groove, on *outside) bool {
	_, most := on.piece().extremes()
	depth := most - f.Bottom.Value/2
	bottomOpen := !e.has("depth") && !e.has("diameter")
	if f.Angle == 0 {
		if e.has("bottom_width") {
			s.c.fail(e, e.at("bottom_width"), "bottom_width belongs to a vee",
				"Write angle beside it, or leave it out: a square groove is as wide below as above.")
		}
		if !e.has("width") {
			s.c.fail(e, e.head(), fmt.Sprintf("%s lacks width", e.title()), "Write width = 3.")
		}
		if bottomOpen {
			s.c.fail(e, e.head(), fmt.Sprintf("%s lacks depth", e.title()), "Write depth = 2, or the diameter at the bottom.")
		}
		f.BottomWidth = f.Width.Value
	} else {
		s.vee(e, f, 2*most, depth, bottomOpen)
	}
	if !e.broken && (f.Bottom.Value < leastSize || f.Bottom.Value/2 >= most-sameLength) {
		s.c.fail(e, e.head(), fmt.Sprintf("%s has no metal or no depth", e.title()), "Its bottom is %s across, the surface %s.",
			s.shown(f.Bottom.Value), s.shown(2*most))
	}
	return !e.broken
}

// vee relates the sizes of a vee: width = bottom width + 2 depth tan(angle/2).
func (s *shaper) vee(e *entry, f *Groove, surface, depth units.Length, bottomOpen bool) {
	perDepth := units.Length(2 * math.Tan(f.Angle.Radians()/2))
	f.BottomWidth = e.length("bottom_width")
	switch {
	case f.Angle < 1:
		s.c.fail(e, e.at("angle"), "The angle is too small for a vee",
			"It is the included angle, like angle = 60. For a square groove leave it out.")
	case f.BottomWidth < 0:
		s.c.fail(e, e.at("bottom_width"), "bottom_width is negative", "Write 0 or more.")
	case e.has("width") && !bottomOpen:
		rest := (f.Width.Value - perDepth*depth).Round(positionDecimals)
		if rest < 0 || e.has("bottom_width") && (rest-f.BottomWidth).Abs() > sameLength {
			s.c.fail(e, e.head(), fmt.Sprintf("The sizes of %s do not make a vee", e.title()),
				"At %s the sides take %s of the width %s. Leave out width, depth or bottom_width.",
				f.Angle, s.shown(perDepth*depth), s.shown(f.Width.Value))
		}
		f.BottomWidth = rest
	case e.has("width"):
		d := (f.Width.Value - f.BottomWidth) / perDepth
		f.Bottom = s.derived(e, "depth", surface-2*d, useShaft)
	case !bottomOpen:
		f.Width = s.derived(e, "width", f.BottomWidth+perDepth*depth, useLength)
	default:
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say enough", e.title()),
			"Write its width, or its depth, or the diameter at its bottom.")
	}
}

// startOn is where at counts from on a feature, and towards which end: its left
// face, or what from names, into the feature.
func (s *shaper) startOn(e *entry, on *outside) (start units.Length, towards End, ok bool) {
	switch from := e.text("from"); from {
	case "", "left":
		return on.span.Left, Right, true
	case "right":
		return on.span.Right, Left, true
	default:
		name, end, ok := s.face(e, "from", from)
		if !ok {
			return 0, EndInvalid, false
		}
		span, known := s.spanOf(name)
		if !known {
			if s.entryOf(name) == nil && name != "face" {
				s.c.fail(e, e.at("from"), fmt.Sprintf("There is no feature %q", name), "%s", didYouMean(name, s.names(), noFeatures))
			}
			return 0, EndInvalid, false
		}
		if end == Left == (name == on.entry.name || name == "face") {
			return span.At(end), Right, true
		}
		return span.At(end), Left, true
	}
}

// stretchOn is the stretch that a cut of some length takes of its feature.
func (s *shaper) stretchOn(e *entry, on *outside, length units.Length) (Span, bool) {
	start, towards, ok := s.startOn(e, on)
	if !ok {
		return Span{}, false
	}
	at := start + e.length("at")
	if towards == Left {
		at = start - e.length("at") - length
	}
	span := Span{at.Round(positionDecimals), (at + length).Round(positionDecimals)}
	if span.Left < on.span.Left-sameLength || span.Right > on.span.Right+sameLength {
		s.c.fail(e, e.head(), fmt.Sprintf("%s is not on %s", e.title(), on.entry.title()),
			"It would lie from %s to %s, the %s lies from %s to %s, from the left end.",
			s.shown(span.Left), s.shown(span.Right), on.entry.word, s.shown(on.span.Left), s.shown(on.span.Right))
		return span, false
	}
	return span, true
}

// grooveSpan puts the groove on its feature.
func (s *shaper) grooveSpan(e *entry, f *Groove, on *outside) bool {
	var ok bool
	if f.Span, ok = s.stretchOn(e, on, f.Width.Value); !ok {
		return false
	}
	surface := on.piece()
	if lowest := min(surface.radius(f.Span.Left), surface.radius(f.Span.Right)); f.Bottom.Value/2 >= lowest-sameLength {
		s.c.fail(e, e.head(), fmt.Sprintf("%s has no depth at one of its sides", e.title()),
			"Its bottom is %s across, the surface there %s.", s.shown(f.Bottom.Value), s.shown(2*lowest))
		return false
	}
	return true
}

// piece is the groove's own surface: the flat at its bottom and, of a vee, the
// sides.
func (g *Groove) piece() piece {
	if g.Angle == 0 {
		return cylinder(g.Name, g.Span, g.Bottom.Value)
	}
	middle, flat := (g.Span.Left+g.Span.Right)/2, g.BottomWidth/2
	rise := units.Length(1 / math.Tan(g.Angle.Radians()/2))
	return piece{name: g.Name, span: g.Span, turns: []units.Length{middle - flat, middle + flat}, radius: func(z units.Length) units.Length {
		return g.Bottom.Value/2 + max(0, (z-middle).Abs()-flat)*rise
	}}
}

// spanOf is the stretch of an outside feature, or of the whole part for "face".
func (s *shaper) spanOf(name string) (Span, bool) {
	if name == "face" {
		return Span{0, s.length()}, true
	}
	for _, o := range s.outer {
		if o.entry.name == name && s.done[name] != nil {
			return *o.span, true
		}
	}
	return Span{}, false
}

func (s *shaper) names() []string {
	var names []string
	for _, e := range s.entries {
		names = append(names, e.name)
	}
	return names
}

// checkGrooves: two grooves may lie inside one another, the inner one narrower
// and deeper, but not across one another.
func (s *shaper) checkGrooves() {
	var grooves []*Groove
	for _, e := range s.entries {
		if g, ok := s.done[e.name].(*Groove); ok {
			grooves = append(grooves, g)
		}
	}
	for i, a := range grooves {
		for _, b := range grooves[:i] {
			if _, meet := common(a.Span, b.Span); meet && !nested(a, b) && !nested(b, a) && s.done[a.Name] != nil {
				e, other := s.entryOf(a.Name), s.entryOf(b.Name)
				s.c.fail(e, e.head(), fmt.Sprintf("%s and %s overlap", e.title(), other.title()),
					"They lie from %s to %s and from %s to %s. A groove inside another must be narrower at its top than the other at its bottom, and deeper.",
					s.shown(a.Span.Left), s.shown(a.Span.Right), s.shown(b.Span.Left), s.shown(b.Span.Right))
				s.drop(e)
			}
		}
	}
}

// nested reports whether the inner groove begins within the bottom of the outer
// one and goes deeper.
func nested(inner, outer *Groove) bool {
	side := (outer.Width.Value - outer.BottomWidth) / 2
	bottom := Span{outer.Span.Left + side, outer.Span.Right - side}
	return inner.Span.Left >= bottom.Left-sameLength && inner.Span.Right <= bottom.Right+sameLength &&
		inner.Bottom.Value < outer.Bottom.Value-sameLength
}
