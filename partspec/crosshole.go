package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

var crossHoleShape = shapeOf{attrs: []attr{
	need("on", kindWord), need("at", kindSize), may("from", kindWord), may("angle", kindTurn),
	may("diameter", kindSize), may("clearance", kindWord), may("thread", kindWord), may("dowel", kindSize),
	may("full_thread", kindSize), may("class", kindWord), may("hand", kindWord),
	may("depth", kindSize), may("through", kindFlag), may("into", kindWord), may("note", kindText),
}}

// crossHole builds a hole square to the axis.
func (s *shaper) crossHole(e *entry) Feature {
	on := s.outer1(e)
	made := &Holes{FeatureHead: s.head(e)}
	s.holeMake(e, made)
	if on == nil || e.broken {
		return nil
	}
	f := &CrossHole{FeatureHead: s.head(e), Make: made.Make, Angle: units.Angle(e.number("angle")), Diameter: made.Diameter, Thread: made.Thread,
		Screw: made.Screw, On: on.entry.name, Through: e.flag("through"), Into: e.text("into")}
	s.crossPlace(e, f, on)
	s.crossDepth(e, f, on)
	if e.broken {
		return nil
	}
	return f
}

// crossPlace puts the hole on its feature.
func (s *shaper) crossPlace(e *entry, f *CrossHole, on *outside) {
	start, towards, ok := s.startOn(e, on)
	at := s.size(e, "at", useLength)
	if !ok || e.broken {
		e.broken = true
		return
	}
	f.ZFrom = start
	f.Z = Size{Dimension: units.Dimension{Value: (start + at.Value).Round(positionDecimals), InInches: at.InInches}, Range: at.Range}
	low, high := start+at.Low, start+at.High
	if towards == Left {
		f.Z.Value = (start - at.Value).Round(positionDecimals)
		low, high = start-at.High, start-at.Low
	}
	f.Z.Low, f.Z.High, f.Z.Basis = low.Round(positionDecimals), high.Round(positionDecimals), at.Basis
	r := f.largest()
	if f.Z.Value-r < on.span.Left-sameLength || f.Z.Value+r > on.span.Right+sameLength {
		s.c.fail(e, e.at("at"), fmt.Sprintf("%s does not lie on %s", e.title(), on.entry.title()),
			"It takes from %s to %s, the %s lies from %s to %s, from the left end.%s", s.shown(f.Z.Value-r), s.shown(f.Z.Value+r), on.entry.word,
			s.shown(on.span.Left), s.shown(on.span.Right), s.wrongUnit(at.Value, on.span.Length()))
		return
	}
	least, _ := over([]piece{on.piece()}, Span{f.Z.Value - r, f.Z.Value + r})
	if r >= least-sameLength {
		s.c.fail(e, e.head(), fmt.Sprintf("%s is as wide as %s", e.title(), on.entry.title()), "It is %s across, the %s %s: nothing holds the two halves together.",
			s.shown(2*r), on.entry.word, s.shown(2*least))
		return
	}
	near := min(f.Z.Value-on.span.Left, on.span.Right-f.Z.Value)
	if want := edgePerDiameter * f.Diameter.Value; near < want-sameLength && s.freeEnd(f.Z.Value, near, on) {
		s.c.report(question(e.at("at"), fmt.Sprintf("Is %s really so near to the end of %s?", e.title(), on.entry.title()),
			"Its centre is %s from it; %s or more keeps the metal from bulging (rule A-34).", s.shown(near), s.shown(want)))
	}
}

// freeEnd reports whether the nearer end of a feature is one where metal ends.
func (s *shaper) freeEnd(z, near units.Length, on *outside) bool {
	end := Left
	if on.span.Right-z <= near+sameLength {
		end = Right
	}
	return radiusBeside(s.outsidePieces(), on.span.At(end), end) < on.piece().at(end)-sameLength
}

// largest is the radius that the hole takes, its thread included.
func (f *CrossHole) largest() units.Length {
	d := f.Diameter.Value
	if f.Thread != nil {
		d = max(d, f.Thread.Thread.Major)
	}
	return d / 2
}

// crossDepth: right through, into a bore, or blind; through when nothing is written.
func (s *shaper) crossDepth(e *entry, f *CrossHole, on *outside) {
	ways := 0
	for _, way := range []bool{f.Through, e.has("into"), e.has("depth")} {
		if way {
			ways++
		}
	}
	switch {
	case ways > 1:
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say once where it ends", e.title()), `Write one of: through = true; into = "main", a bore; depth = 6.`)
		return
	case ways == 0 && f.Thread != nil && e.has("full_thread") && !e.has("through"):
		t := f.Thread.Thread
		f.Depth = s.derived(e, "depth", max(f.Thread.Length.Value+tapLeadPitches*t.Pitch, f.Thread.Length.Value*(1+deeper(t))), useLength)
	case ways == 0 && e.has("through"):
		s.c.fail(e, e.at("through"), fmt.Sprintf("%s lacks depth", e.title()), `Write depth = 6, or into = "main" for a hole that ends in a bore.`)
	case ways == 0:
		f.Through = true
	case e.has("depth"):
		f.Depth = s.size(e, "depth", useLength)
	}
	if e.broken {
		return
	}
	r := f.largest()
	stretch := Span{f.Z.Value - r, f.Z.Value + r}
	least, surface := over([]piece{on.piece()}, stretch)
	_, hollow := over(s.insidePieces(), stretch)
	wall := surface - hollow
	switch {
	case e.has("into"):
		s.crossInto(e, f, stretch)
	case f.Through:
	case hollow > 0 && f.Depth.Value+pointPerDiameter*f.Diameter.Value >= least-hollow-sameLength:
		s.c.fail(e, e.head(), fmt.Sprintf("%s reaches the bore", e.title()),
			"The wall there is %s thick and the hole with its point %s deep: write into = and the bore's name, through = true, or a smaller depth.",
			s.shown(least-hollow), s.shown(f.Depth.Value+pointPerDiameter*f.Diameter.Value))
	case f.Depth.Value+pointPerDiameter*f.Diameter.Value >= 2*least-sameLength:
		s.c.fail(e, e.head(), fmt.Sprintf("%s goes right through", e.title()), "The part there is %s across: write through = true, or a smaller depth.", s.shown(2*least))
	}
	s.crossThread(e, f, wall, surface)
}

// crossInto: the bore that a hole ends in lies under all of it.
func (s *shaper) crossInto(e *entry, f *CrossHole, stretch Span) {
	target := s.target(e, f.Into, "into")
	b, ok := target.(*Bore)
	switch {
	case target == nil:
	case !ok:
		s.c.fail(e, e.at("into"), fmt.Sprintf("%s is no bore", s.entryOf(f.Into).title()), "Name the bore that the hole ends in.")
	case b.Span.Left > stretch.Left+sameLength || b.Span.Right < stretch.Right-sameLength:
		s.c.fail(e, e.at("into"), fmt.Sprintf("%s does not lie under %s", s.entryOf(f.Into).title(), e.title()), "The bore lies from %s to %s, the hole from %s to %s, from the left end.",
			s.shown(b.Span.Left), s.shown(b.Span.Right), s.shown(stretch.Left), s.shown(stretch.Right))
	case f.Diameter.Value > b.Diameter.Value+sameLength:
		s.c.report(question(e.head(), fmt.Sprintf("Is %s really wider than the bore that it ends in?", e.title()), "It is %s across, the bore %s.", s.shown(f.Diameter.Value), s.shown(b.Diameter.Value)))
	}
}

// crossThread: the thread ends in the metal that it is cut in.
func (s *shaper) crossThread(e *entry, f *CrossHole, wall, surface units.Length) {
	if f.Thread == nil || e.broken {
		return
	}
	most := f.Depth.Value - f.Thread.Thread.Pitch
	switch {
	case f.Through:
		most = 2 * surface
	case f.Into != "":
		most = wall
	}
	if !e.has("full_thread") {
		if !f.Through && f.Into == "" {
			s.c.fail(e, e.head(), fmt.Sprintf("%s does not say how deep its thread is full", e.title()), "Write full_thread = 6; depth is that of the drilled hole and may then be left out.")
			return
		}
		f.Thread.Length = s.derived(e, "full_thread", most, useLength)
	}
	if f.Thread.Length.Value > most+sameLength {
		s.c.fail(e, e.at("full_thread"), fmt.Sprintf("The thread of %s is deeper than the metal", e.title()), "There is room for %s: write less.", s.shown(units.Length(math.Max(0, float64(most)))))
	}
}

// checkCrossings finds cross holes whose mouths meet on the outside.
func (s *shaper) checkCrossings() {
	var before []*CrossHole
	for _, e := range s.entries {
		f, ok := s.done[e.name].(*CrossHole)
		if !ok {
			continue
		}
		for _, other := range before {
			if s.mouthsMeet(f, other) {
				s.c.fail(e, e.head(), fmt.Sprintf("%s and %s meet", capital(s.entryOf(other.Name).title()), e.title()), "Their mouths on the outside run into each other: move one, turn it by angle, or make it smaller.")
				break
			}
		}
		before = append(before, f)
	}
}

// mouthsMeet compares every mouth of one cross hole with every one of another; one that goes through has two.
func (s *shaper) mouthsMeet(a, b *CrossHole) bool {
	dz := float64(a.Z.Value - b.Z.Value)
	surface := float64(min(s.surfaceAt(a), s.surfaceAt(b)))
	for _, turnA := range a.mouths() {
		for _, turnB := range b.mouths() {
			across := 2 * surface * math.Sin(float64(turnA-turnB)*math.Pi/360)
			if units.Length(math.Hypot(dz, across)) < a.largest()+b.largest()+sameLength {
				return true
			}
		}
	}
	return false
}

// mouths are the directions of the hole's mouths.
func (f *CrossHole) mouths() []units.Angle {
	if f.Through {
		return []units.Angle{f.Angle, f.Angle + 180}
	}
	return []units.Angle{f.Angle}
}

// surfaceAt is the radius of the outside where a cross hole enters.
func (s *shaper) surfaceAt(f *CrossHole) units.Length {
	_, most := over(s.outsidePieces(), Span{f.Z.Value - f.largest(), f.Z.Value + f.largest()})
	return most
}
