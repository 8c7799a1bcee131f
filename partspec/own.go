package partspec

import "slices"

// own judges what the attributes of a feature say each by itself. It runs for a
// feature that could not be built, because the builder may have stopped before
// it read them all; what both of them tell is told once (tidy).
func (s *shaper) own(e *entry) {
	switch e.word {
	case "spigot", "flange":
		s.ownSizes(e, useShaft, "diameter")
		s.ownFace(e, "from", "left", "right")
	case "bore", "counterbore":
		s.ownSizes(e, useHole, "diameter")
		s.ownSizes(e, useLength, "depth")
		s.boreFrom(e)
	case "holes":
		s.ownHoles(e)
	case "slot":
		s.ownSizes(e, useHole, "width")
		s.ownSizes(e, useLength, "depth")
		if s.flat {
			s.holesFrom(e)
		} else {
			s.ownName(e, "on")
			s.ownFace(e, "from", "left", "right")
		}
	case "seat":
		s.ownSizes(e, useLength, "radius", "chord", "rise", "depth")
		s.byFile(e)
	case "cross_hole":
		s.ownName(e, "on")
		s.ownSizes(e, useHole, "diameter", "dowel")
		s.ownSizes(e, useLength, "at", "depth", "full_thread")
		s.ownFace(e, "from", "left", "right")
		s.leftHand(e)
	case "flat":
		s.ownName(e, "on")
		s.ownSizes(e, useShaft, "across_flats")
		s.ownSizes(e, useLength, "distance", "depth")
		s.ownFace(e, "from", "left", "right")
	case "taper":
		s.ownTaper(e)
	case "profile":
		s.ownProfile(e)
	case "groove":
		s.ownSizes(e, useShaft, "diameter")
		s.ownSizes(e, useLength, "width", "depth")
		s.ownName(e, "on")
		s.ownFace(e, "from", "left", "right")
	case "recess":
		s.ownSizes(e, useHole, "diameter")
		s.ownSizes(e, useLength, "width")
		s.ownName(e, "on")
	case "thread":
		s.ownName(e, "on")
		s.threadSize(e)
		s.leftHand(e)
		s.fromEnd(e, EndInvalid)
	case "knurl":
		s.ownName(e, "on")
		s.knurlPattern(e)
		s.knurlPitch(e)
	case "chamfer":
		s.ownSizes(e, useEdge, "size")
		s.chamferAngle(e)
		s.ownFace(e, "edge")
	case "fillet":
		s.ownSizes(e, useEdge, "radius")
		s.ownFace(e, "edge")
	}
	s.ownSizes(e, useLength, "length")
}

// ownHoles judges what each attribute of a pattern says by itself.
func (s *shaper) ownHoles(e *entry) {
	s.ownSizes(e, useHole, "diameter", "dowel")
	s.ownSizes(e, useLength, "circle", "depth", "full_thread")
	s.holesFrom(e)
	s.locateBy(e)
	s.leftHand(e)
	for _, in := range e.children {
		s.ownSizes(in, useHole, "diameter")
		s.ownSizes(in, useLength, "depth")
	}
}

func (s *shaper) ownSizes(e *entry, as use, names ...string) {
	for _, name := range names {
		s.size(e, name, as)
	}
}

// ownStock judges what the stock and the features of an existing piece say each
// by itself.
func (s *shaper) ownStock(e *entry) {
	s.ownSizes(e, useShaft, "diameter", "across_flats", "outside")
	s.ownSizes(e, useHole, "inside")
	s.ownSizes(e, useLength, "length")
	piece := &shaper{c: s.c, part: s.part, owner: e, entries: e.children}
	for _, child := range e.children {
		piece.own(child)
	}
}

// ownRelation judges the names in a binding.
func (s *shaper) ownRelation(e *entry) {
	for _, attribute := range []string{"of", "to"} {
		if surface, ok := s.surfaceName(e, attribute); ok && surface.Feature != "face" {
			s.isThere(e, surface.Feature, attribute)
		}
	}
}

// ownTaper: whether a class is one of a hole or of a shaft is open when inside
// has failed.
func (s *shaper) ownTaper(e *entry) {
	switch {
	case e.flag("inside"):
		s.ownSizes(e, useHole, "large", "small")
		s.fromEnd(e, EndInvalid)
	case !e.has("inside") || e.known("inside"):
		s.ownSizes(e, useShaft, "large", "small")
		s.ownFace(e, "from", "left", "right")
	}
	s.slope(e, &Taper{})
	if e.known("large_at") {
		s.largeAt(e)
	}
}

func (s *shaper) ownProfile(e *entry) {
	s.ownFace(e, "from", "left", "right")
	s.finishFile(e)
	if e.known("zone") {
		s.zone(e, nil)
	}
	for _, block := range e.children {
		if block.known("bulge") {
			s.bulge(e, block)
		}
	}
}

// ownFace judges an attribute that is one of some words, or names a feature and
// its end.
func (s *shaper) ownFace(e *entry, attribute string, words ...string) {
	text := e.text(attribute)
	if slices.Contains(words, text) || s.flat && findFeatureKind(e.word).on != onBoth { // a flat part has no ends that it could name
		return
	}
	if name, _, ok := s.face(e, attribute, text); ok && name != "face" {
		s.isThere(e, name, attribute)
	}
}

func (s *shaper) ownName(e *entry, attribute string) {
	if e.known(attribute) {
		s.isThere(e, e.text(attribute), attribute)
	}
}
