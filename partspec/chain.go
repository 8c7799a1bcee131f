package partspec

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"catchplate/partspec/units"
)

// positionDecimals is where positions are rounded: to a nanometre, so that
// pieces which meet have the very same place.
const positionDecimals = 6

// outside is a feature that makes a stretch of the outside.
type outside struct {
	entry  *entry
	length *Size
	span   *Span
	piece  func() piece            // once it is placed
	put    func()                  // what else has to move there; nil when nothing has
	settle func(units.Length) bool // what follows from a length that was left out; nil when nothing does
	placed bool
}

// placeOf are the attributes that put a feature somewhere else than behind the
// one before it.
var placeOf = []attr{may("from", kindWord), may("at", kindPosition)}

// placeOutside puts the outside features in their places: each begins where the
// one before it in the file ended, unless it says from where. Then it checks
// that they cover the part from end to end.
func (s *shaper) placeOutside() {
	if s.length() <= 0 {
		return
	}
	previous := &outside{span: &Span{}, placed: true} // the left end
	known := true
	for i, o := range s.outer {
		if before := s.entryBefore(o.entry); before != nil && before.broken {
			known = false
		}
		last := i == len(s.outer)-1 && s.isLastOutside(o.entry)
		o.placed = s.placeOne(o, previous, known, last)
		if !o.placed {
			s.drop(o.entry)
		}
		previous, known = o, o.placed
	}
	s.outer = slices.DeleteFunc(s.outer, func(o *outside) bool { return !o.placed })
	slices.SortStableFunc(s.outer, func(a, b *outside) int { return cmp.Compare(a.span.Left, b.span.Left) })
	if !s.doubt {
		s.checkCover()
	}
	if !s.doubt && len(s.outer) == 1 {
		s.shareLength(&s.part.Length, s.outer[0].length)
	}
}

// shareLength gives the length of a part and of the one feature that it is made of the limits that keep both: they are one length.
func (s *shaper) shareLength(part, feature *Size) {
	low, high := max(part.Low, feature.Low), min(part.High, feature.High)
	if low > high {
		return
	}
	if feature.Width() < part.Width() {
		part.Basis = feature.Basis
	} else {
		feature.Basis = part.Basis
	}
	part.Low, part.High, feature.Low, feature.High = low, high, low, high
}

// entryBefore is the outside entry before this one in the file.
func (s *shaper) entryBefore(e *entry) *entry {
	var before *entry
	for _, other := range s.entries {
		if other == e {
			return before
		}
		if stageOf(other) == stageOutside {
			before = other
		}
	}
	return nil
}

func (s *shaper) isLastOutside(e *entry) bool {
	var last *entry
	for _, other := range s.entries {
		if stageOf(other) == stageOutside {
			last = other
		}
	}
	return last == e
}

func (s *shaper) placeOne(o, previous *outside, known, last bool) bool {
	e := o.entry
	start, towards := previous.span.Right, Right
	if e.has("from") {
		var ok bool
		if start, towards, ok = s.startFrom(e); !ok {
			return false
		}
	} else if e.has("at") {
		s.c.fail(e, e.at("at"), "at has nothing to count from",
			`Write from = "left", from = "right" or from = "OTHER.right" beside it.`)
		return false
	} else if !known {
		return false // the one before it failed: told already
	}
	if o.length.Value == 0 && !s.leftOver(o, start, towards, last) {
		return false
	}
	ends := []units.Length{start, start + o.length.Value}
	if towards == Left {
		ends = []units.Length{start - o.length.Value, start}
	}
	*o.span = s.snapped(Span{ends[0], ends[1]})
	if o.span.Left < 0 || o.span.Right > s.length() {
		s.c.fail(e, e.head(), fmt.Sprintf("%s reaches beyond the part", e.title()),
			"It would lie from %s to %s; the part is %s long.%s",
			s.shown(o.span.Left), s.shown(o.span.Right), s.shown(s.length()), s.unitHint(o.span.Right-s.length()))
		return false
	}
	if o.put != nil {
		o.put()
	}
	return true
}

// startFrom reads from and at: where a feature begins, and towards which end it
// lies. Offsets count into the part from its ends, and away from a feature.
func (s *shaper) startFrom(e *entry) (start units.Length, towards End, ok bool) {
	from, offset := e.text("from"), e.length("at")
	switch from {
	case "left":
		return offset, Right, true
	case "right":
		return s.length() - offset, Left, true
	}
	name, end, ok := s.face(e, "from", from)
	if !ok {
		return 0, EndInvalid, false
	}
	for _, o := range s.outer {
		if o.entry.name == name && o.placed {
			if end == Left {
				return o.span.Left - offset, Left, true
			}
			return o.span.Right + offset, Right, true
		}
	}
	if other := s.entryOf(name); other == nil || !other.broken {
		s.c.fail(e, e.at("from"), fmt.Sprintf("%s cannot be counted from here", from),
			`Name an end ("left", "right") or the face of an outside feature that stands before this one in the file, like "%s.right".`,
			s.someOuter())
	}
	return 0, EndInvalid, false
}

func (s *shaper) someOuter() string {
	if len(s.outer) > 0 {
		return s.outer[0].entry.name
	}
	return "hub"
}

// face parts "rim.left" into the feature and its end.
func (s *shaper) face(e *entry, attribute, text string) (name string, end End, ok bool) {
	name, side, _ := strings.Cut(text, ".")
	if end, ok := s.endNamed(side); ok {
		return name, end, true
	}
	if text != "" {
		s.c.fail(e, e.at(attribute), fmt.Sprintf("%q names no face", text),
			"Write %s.", s.someEdges())
	}
	return "", EndInvalid, false
}

// snapped moves the ends of a span onto the part's ends and the ends of the
// pieces that stand, where they are the same but for rounding.
func (s *shaper) snapped(span Span) Span {
	targets := []units.Length{0, s.length()}
	for _, o := range s.outer {
		if o.placed {
			targets = append(targets, o.span.Left, o.span.Right)
		}
	}
	snap := func(l units.Length) units.Length {
		for _, t := range targets {
			if (l - t).Abs() <= sameLength {
				return t
			}
		}
		return l.Round(positionDecimals)
	}
	return Span{snap(span.Left), snap(span.Right)}
}

// checkCover finds gaps and overlaps between the placed pieces.
func (s *shaper) checkCover() {
	if len(s.outer) == 0 {
		s.c.fail(s.owner, s.owner.head(), fmt.Sprintf("%s has no outside", s.owner.title()),
			`Write at least one spigot, flange, taper or profile: spigot "body" { diameter = 20 }.`)
		s.doubt = true
		return
	}
	reached, before := units.Length(0), "the left end"
	for _, o := range s.outer {
		s.checkMeet(o, before, o.span.Left-reached)
		reached, before = o.span.Right, o.entry.title()
	}
	if short := s.length() - reached; short > 0 {
		last := s.outer[len(s.outer)-1].entry
		s.c.fail(last, last.head(), fmt.Sprintf("The outside ends %s before the right end", s.shown(short)),
			"The features reach to %s; the part is %s long.%s Make a length or the part's length agree, or leave out the last length.",
			s.shown(reached), s.shown(s.length()), s.unitHint(-short))
		s.doubt = true
	}
}

func (s *shaper) checkMeet(o *outside, before string, gap units.Length) {
	switch {
	case gap > 0:
		s.c.fail(o.entry, o.entry.head(), fmt.Sprintf("There is a gap of %s between %s and %s", s.shown(gap), before, o.entry.title()),
			"The outside must be told from end to end. Make a length or at agree.%s", s.unitHint(-gap))
		s.doubt = true
	case gap < 0:
		s.c.fail(o.entry, o.entry.head(), fmt.Sprintf("%s and %s overlap by %s", before, o.entry.title(), s.shown(-gap)),
			"Two outside features cannot have one place. Make a length or at agree.%s", s.unitHint(-gap))
		s.doubt = true
	}
}

// unitHint asks about a length that would fit if it were read in the other
// unit. excess is how much too long the chain is, negative when it is short.
func (s *shaper) unitHint(excess units.Length) string {
	const near = 0.02 // of the excess: figures converted with few decimals
	if excess.Abs() <= sameLength {
		return ""
	}
	for _, o := range s.outer {
		l := o.length.Value
		switch {
		case (l - l/units.Inch - excess).Abs() <= near*excess.Abs():
			return fmt.Sprintf(" The length of %s is 25.4 times too long for it: is it in another unit?", o.entry.name)
		case (l - l*units.Inch - excess).Abs() <= near*excess.Abs():
			return fmt.Sprintf(" The length of %s is 25.4 times too short for it: is it in another unit?", o.entry.name)
		}
	}
	return ""
}
