package partspec

import (
	"fmt"

	"catchplate/partspec/units"
)

// opening is a hole or a bore along Z, for the checks of what lies beside it.
type opening struct {
	entry  *entry
	number int // within its pattern, from 1; 0 = a bore
	at     Point
	radius units.Length
	mouth  units.Length // radius of its widened mouth; its own without one
	span   Span
	bore   bool
	wants  units.Length // from its centre to an edge, by rule A-34
}

func (o opening) title() string {
	if o.number == 0 {
		return o.entry.title()
	}
	return fmt.Sprintf("hole %d of %s", o.number, o.entry.title())
}

// Distances below which a hole is asked about. Rule A-34 wants its centre one and a half diameters from an edge and two from a neighbour of its size, and
// of a tapped hole half the thread and three pitches. An edge is asked about only under one diameter: the flanges of EN 1092-1 go down to 1.07 (DN 10, PN 16).
const (
	edgePerDiameter  units.Length = 1
	spacePerDiameter units.Length = 2
	edgePitches      units.Length = 3 // beside half of the thread's diameter
	leastWeb         units.Length = 1.5
	webPerBore       units.Length = 0.1
)

// wanted is the distance from an edge below which the holes are asked about.
func (f *Holes) wanted() units.Length {
	if f.Thread != nil {
		return f.Thread.Thread.Major/2 + edgePitches*f.Thread.Thread.Pitch
	}
	return edgePerDiameter * f.Diameter.Value
}

// largest is the radius that the holes take of the metal beside them, the thread included.
func (f *Holes) largest() units.Length {
	d := f.Diameter.Value
	if f.Thread != nil {
		d = max(d, f.Thread.Thread.Major)
	}
	return d / 2
}

// openings lists all holes and bores along Z, in file order.
func (s *shaper) openings() []opening {
	var list []opening
	for _, e := range s.entries {
		switch f := s.done[e.name].(type) {
		case *Bore:
			if f.At != nil {
				r := f.Diameter.Value / 2
				if t := s.threadOf(f.Name); t != nil {
					r = t.Thread.Major / 2
				}
				list = append(list, opening{entry: e, at: *f.At, radius: r, mouth: r, span: f.Span, bore: true, wants: r + max(leastWeb, webPerBore*2*r)})
			}
		case *Holes:
			o := opening{entry: e, radius: f.largest(), mouth: f.mouth(), span: f.Span, wants: f.wanted()}
			for i, p := range f.Places {
				o.number, o.at = i+1, p
				list = append(list, o)
			}
		}
	}
	return list
}

// checkHoles gives holes their stretch along the axis and judges holes and bores against the edges of the part and against one another.
func (s *shaper) checkHoles() {
	for _, e := range s.entries {
		if f, ok := s.done[e.name].(*Holes); ok && !s.holeSpan(e, f) {
			s.drop(e)
		}
	}
	list := s.openings()
	if len(list) > maxOpenings {
		s.c.fail(s.owner, s.owner.head(), fmt.Sprintf("%s has too many holes", s.owner.title()), "A part has at most %d; make several parts of it.", maxOpenings)
		return
	}
	if s.flat && s.part.Outline != nil {
		s.checkRims(list)
	}
	if !s.flat {
		s.checkFaces()
	}
	s.checkNeighbours(list)
	s.checkSlots(list)
	s.checkSeats()
	s.checkCrossings()
}

// holeSpan places holes along the axis, and refuses depths that the part has no metal for.
func (s *shaper) holeSpan(e *entry, f *Holes) bool {
	f.Span = Span{0, s.length()}
	if !s.flat {
		var ok bool
		if f.Span, ok = s.endSpan(e, f); !ok {
			return false
		}
		s.settleThrough(f)
	}
	metal := f.Span.Length()
	if f.Thread != nil && f.Thread.Length.Value > metal+sameLength {
		s.c.fail(e, e.at("full_thread"), fmt.Sprintf("The thread of %s is deeper than the metal", e.title()), "There is %s: write %s or less.%s", s.shown(metal), s.shown(metal), s.wrongUnit(f.Thread.Length.Value, metal))
		return false
	}
	if f.Sink != nil {
		s.checkSink(e, f, metal)
	}
	if !f.Through {
		s.checkBlind(e, f, metal)
		if f.From == Right {
			f.Span.Left = (f.Span.Right - f.Depth.Value).Round(positionDecimals)
		} else {
			f.Span.Right = (f.Span.Left + f.Depth.Value).Round(positionDecimals)
		}
	}
	if f.Thread != nil {
		f.Thread.Span = fromMouthOf(f.Span, f.From, f.Thread.Length.Value)
	}
	return !e.broken
}

// settleThrough gives through holes of a turned part the depth of the metal that they go through.
func (s *shaper) settleThrough(f *Holes) {
	if !f.Through {
		return
	}
	metal := f.Span.Length()
	f.Depth = s.derived(s.entryOf(f.Name), "depth", metal, useLength)
	if f.Thread != nil && f.Thread.Length.Value == s.length() {
		f.Thread.Length = f.Depth
	}
}

// fromMouthOf is the stretch of a length from the end of a span.
func fromMouthOf(span Span, from End, length units.Length) Span {
	if from == Right {
		return Span{(span.Right - length).Round(positionDecimals), span.Right}
	}
	return Span{span.Left, (span.Left + length).Round(positionDecimals)}
}

// checkBlind: the floor and the drill's point stay in the metal, and the thread stays in the hole.
func (s *shaper) checkBlind(e *entry, f *Holes, metal units.Length) {
	at, word := e.at("depth"), "depth"
	if !e.has("depth") {
		at, word = e.at("full_thread"), "full_thread"
	}
	point := f.Diameter.Value * pointPerDiameter
	switch {
	case f.Depth.Value > metal-sameLength:
		s.c.fail(e, at, fmt.Sprintf("%s is deeper than the metal", e.title()),
			"It is drilled %s deep and there is %s. Write a smaller %s, or through = true.%s", s.shown(f.Depth.Value), s.shown(metal), word, s.wrongUnit(f.Depth.Value, metal))
	case metal-f.Depth.Value <= point:
		s.c.fail(e, at, fmt.Sprintf("The drill's point breaks through behind %s", e.title()),
			"Its floor is %s thick, the point %s long. Write a smaller %s, or through = true.", s.shown(metal-f.Depth.Value), s.shown(point), word)
	case f.Thread != nil && f.Thread.Length.Value > f.Depth.Value-f.Thread.Thread.Pitch+sameLength:
		s.c.fail(e, e.at("full_thread"), fmt.Sprintf("The thread of %s reaches the floor of its hole", e.title()),
			"No tap cuts full thread to the floor. Leave depth out, or write %s or more.", s.shown(f.Thread.Length.Value+tapLeadPitches*f.Thread.Thread.Pitch))
	}
}

// checkSink: the widened mouth leaves metal under it.
func (s *shaper) checkSink(e *entry, f *Holes, metal units.Length) {
	deep := f.sinkDepth()
	if deep > metal-sameLength {
		s.c.fail(e, f.Sink.Diameter.Range, fmt.Sprintf("The widened mouth of %s goes right through", e.title()),
			"It is %s deep and there is %s of metal.%s", s.shown(deep), s.shown(metal), s.wrongUnit(deep, metal))
	} else if !f.Through && deep > f.Depth.Value-sameLength {
		s.c.fail(e, f.Sink.Diameter.Range, fmt.Sprintf("The widened mouth of %s is deeper than its holes", e.title()),
			"It is %s deep, the holes %s.", s.shown(deep), s.shown(f.Depth.Value))
	}
}

// checkRims: holes lie in the outline, and not so near to its edge that the metal bulges or breaks out.
func (s *shaper) checkRims(list []opening) {
	asked := map[*entry]bool{}
	for _, o := range list {
		if o.entry.broken {
			continue
		}
		inside, edge := s.part.Outline.nearestEdge(o.at.X.Value, o.at.Y.Value)
		switch {
		case inside < 0:
			s.c.fail(o.entry, o.entry.head(), fmt.Sprintf("%s lies outside the outline", capital(o.title())),
				"Its centre is %s beyond the edge %q. Coordinates are counted from the outline's origin.%s", s.shown(-inside), edge.Name, s.farOut(o))
		case inside < o.radius+sameLength:
			s.c.fail(o.entry, o.entry.head(), fmt.Sprintf("%s breaks through the edge %q", capital(o.title()), edge.Name),
				"Its centre is %s from the edge and it is %s across: move it, or make it smaller.", s.shown(inside), s.shown(2*o.radius))
		case inside < o.mouth+sameLength:
			s.c.fail(o.entry, o.entry.head(), fmt.Sprintf("The widened mouth of %s breaks through the edge %q", o.title(), edge.Name),
				"The hole's centre is %s from the edge and the mouth is %s across.", s.shown(inside), s.shown(2*o.mouth))
		case inside < o.wants-sameLength && !asked[o.entry]:
			asked[o.entry] = true
			s.c.report(question(o.entry.head(), fmt.Sprintf("Is %s really so near to the edge %q?", o.title(), edge.Name),
				"Its centre is %s from it; %s or more keeps the metal from bulging, breaking out or springing (rule A-34).", s.shown(inside), s.shown(o.wants)))
		}
	}
}

// farOut asks about coordinates that only make sense in another unit.
func (s *shaper) farOut(o opening) string {
	x0, y0, x1, y1 := s.part.Outline.region().Bounds()
	reach := units.Length(max(x1, y1, -x0, -y0))
	return s.wrongUnit(max(o.at.X.Value.Abs(), o.at.Y.Value.Abs()), reach)
}

// checkNeighbours: no two holes or bores meet, and holes leave metal between them.
func (s *shaper) checkNeighbours(list []opening) {
	type pair struct{ a, b *entry }
	told := map[pair]bool{}
	for i, a := range list {
		for _, b := range list[i+1:] {
			p := pair{a.entry, b.entry}
			nested := a.bore && b.bore && samePlace(&a.at, &b.at)
			if nested || told[p] || a.entry.broken || b.entry.broken && a.entry != b.entry {
				continue
			}
			if _, meet := common(a.span, b.span); meet {
				told[p] = s.checkSpace(a, b)
			}
		}
	}
}

// checkSpace judges two openings and reports whether it said something.
func (s *shaper) checkSpace(a, b opening) bool {
	between := apart(a.at, b.at)
	if web := between - a.radius - b.radius; web < sameLength {
		s.c.fail(b.entry, b.entry.head(), fmt.Sprintf("%s and %s meet", capital(a.title()), b.title()),
			"Their centres are %s apart, and their radii make %s: move one, or make it smaller.", s.shown(between), s.shown(a.radius+b.radius))
		return true
	}
	if between < a.mouth+b.mouth-sameLength {
		s.c.fail(b.entry, b.entry.head(), fmt.Sprintf("The widened mouths of %s and %s meet", a.title(), b.title()),
			"Their centres are %s apart.", s.shown(between))
		return true
	}
	if a.bore || b.bore {
		return s.checkWeb(a, b, between)
	}
	if want := spacePerDiameter * (a.radius + b.radius); between < want-sameLength {
		s.c.report(question(b.entry.head(), fmt.Sprintf("Are %s and %s really so near to each other?", a.title(), b.title()),
			"Their centres are %s apart; %s or more keeps the metal between them from bulging (rule A-34).", s.shown(between), s.shown(want)))
		return true
	}
	return false
}

// checkWeb judges the metal beside a bore, which is an edge to what lies there.
func (s *shaper) checkWeb(a, b opening, between units.Length) bool {
	if a.bore && !b.bore {
		a, b = b, a
	}
	near, want := between-b.radius, a.wants
	if a.bore { // both are
		want = a.radius + max(a.wants-a.radius, b.wants-b.radius)
	}
	if near >= want-sameLength {
		return false
	}
	s.c.report(question(a.entry.head(), fmt.Sprintf("Is %s really so near to %s?", a.title(), b.title()),
		"Its centre is %s from the bore's wall; %s or more keeps the metal from bulging, breaking out or springing (rule A-34).", s.shown(near), s.shown(want)))
	return true
}

// capital begins a sentence.
func capital(text string) string {
	if text == "" {
		return ""
	}
	if c := text[0]; 'a' <= c && c <= 'z' {
		return string(c-'a'+'A') + text[1:]
	}
	return text
}
