package partspec

import (
	"cmp"
	"fmt"
	"slices"

	"catchplate/partspec/units"
)

var boreShape = shapeOf{attrs: []attr{
	may("at", kindPlace), may("diameter", kindSize), may("depth", kindSize), may("through", kindFlag), may("from", kindWord), may("flat", kindFlag),
	may("as_supplied", kindFlag), may("measured", kindLength), may("roughness", kindNumber), may("note", kindText), aboutAxis,
}}

// bore builds an inside cylinder. Which stretch is left to it is found by
// nestBores, when all are known.
func (s *shaper) bore(e *entry) Feature {
	f := &Bore{
		FeatureHead: s.head(e), From: s.boreFrom(e), At: s.boreAt(e), FlatBottom: e.flag("flat") || e.word == "counterbore",
		Roughness: e.number("roughness"), AsSupplied: e.flag("as_supplied"), Measured: measured(e),
	}
	s.onMainAxis(e)
	f.Diameter = s.boreDiameter(e)
	s.boreDepth(e, f)
	if e.broken {
		return nil
	}
	s.askMeasured(e, f.Diameter.Value)
	f.Span = fromMouth(f.From, 0, f.Depth.Value, s.length())
	return f
}

// fromEnd reads the end that a feature begins at.
func (s *shaper) fromEnd(e *entry, otherwise End) End {
	from := e.text("from")
	if from == "" {
		return otherwise
	}
	end, ok := s.endNamed(from)
	if !ok {
		s.c.fail(e, e.at("from"), fmt.Sprintf("A %s cannot begin from %q", e.word, from),
			"Write from = %q or from = %q: the end face that it is open at.", s.endWord(Left), s.endWord(Right))
	}
	return end
}

// fromMouth is the stretch between two depths, counted from an end face.
func fromMouth(from End, shallow, deep, length units.Length) Span {
	if from == Right {
		return Span{(length - deep).Round(positionDecimals), (length - shallow).Round(positionDecimals)}
	}
	return Span{shallow.Round(positionDecimals), deep.Round(positionDecimals)}
}

func (s *shaper) boreDepth(e *entry, f *Bore) {
	switch {
	case e.has("depth") && e.flag("through"):
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s is both through and blind", e.title()), "Leave out depth or through.")
	case e.has("depth"):
		f.Depth = s.size(e, "depth", useLength)
		s.checkDepth(e, f)
	case e.word == "counterbore" || e.has("through") && !e.flag("through"):
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks depth", e.title()), "Write depth = 5, counted from its end face.")
	case e.flag("flat"):
		s.c.fail(e, e.at("flat"), "A through bore has no floor", "Write its depth beside flat, or leave flat out.")
	default:
		f.Through, f.Depth = true, s.part.Length
	}
}

func (s *shaper) checkDepth(e *entry, f *Bore) {
	length := s.length()
	if f.Depth.Value > length-sameLength {
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s is deeper than the part", e.title()),
			"The part is %s long. For a through bore leave depth out.%s",
			s.shown(length), s.wrongUnit(f.Depth.Value, length))
	}
	if f.AsSupplied && !s.flat {
		s.c.fail(e, e.at("depth"), "The stock's own bore goes right through", "Leave depth out.")
	}
}

// boreDiameter is what is drawn, the stock tube's own bore, or the core of the
// thread in it.
func (s *shaper) boreDiameter(e *entry) Size {
	if e.flag("as_supplied") && s.flat {
		s.c.fail(e, e.at("as_supplied"), "Plate has no bore", "Leave as_supplied out and write the diameter.")
		return Size{}
	}
	if e.flag("as_supplied") && s.part.Stock.Kind != Existing {
		if e.has("diameter") {
			s.c.fail(e, e.at("diameter"), fmt.Sprintf("%s has two diameters", e.title()),
				"as_supplied leaves the stock's own bore: leave diameter or as_supplied out.")
		}
		if s.part.Stock.Inside.Value == 0 && s.part.Stock.Kind != StockInvalid {
			s.c.fail(e, e.at("as_supplied"), "The stock has no bore", "Only a tube has one: write the diameter.")
		}
		size := s.part.Stock.Inside
		size.Range, size.general = e.at("as_supplied"), false
		if size.Value == 0 {
			e.broken = true
		}
		return size
	}
	threaded, found := s.threadOn(e.name)
	if !found && !e.has("diameter") && s.strayThread() {
		e.broken = true
		return Size{}
	}
	if !found && !e.has("diameter") {
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks diameter", e.title()), "Write %s. Only under a thread it may be left out.",
			example(attr{"diameter", kindSize, true}))
		return Size{}
	}
	if found {
		return s.threadCore(e, threaded)
	}
	return s.size(e, "diameter", useHole)
}

// hollow is a bore or an inside taper on its way into its place.
type hollow struct {
	entry        *entry
	at           *Point // centre, where it is not the axis
	from         End
	begin, deep  units.Length // counted from its end face
	through      bool
	wide, narrow units.Length // diameters at begin and at deep
	keep         func(Span)   // takes the stretch that is left
	pointed      bool         // a drill's point may stay behind its depth
}

func (h hollow) span(length units.Length) Span { return fromMouth(h.from, h.begin, h.deep, length) }

// hollows lists bores and inside tapers, deepest first.
func (s *shaper) hollows() []hollow {
	var list []hollow
	for _, e := range s.entries {
		switch f := s.done[e.name].(type) {
		case *Bore:
			list = append(list, hollow{e, f.At, f.From, 0, f.Depth.Value, f.Through, f.Diameter.Value, f.Diameter.Value,
				func(span Span) { f.Span = span }, !f.Through && !f.FlatBottom})
		case *Taper:
			if f.Inside {
				list = append(list, f.hollow(e, s.length()))
			}
		}
	}
	slices.SortStableFunc(list, func(a, b hollow) int { return cmp.Compare(b.deep, a.deep) })
	return list
}

// nestBores finds the stretch that is left to each bore once larger, shallower
// ones have taken theirs, and refuses bores that cannot lie together.
func (s *shaper) nestBores() {
	list := s.hollows()
	for len(list) > 0 {
		var one, others []hollow
		for _, h := range list {
			if samePlace(h.at, list[0].at) {
				one = append(one, h)
			} else {
				others = append(others, h)
			}
		}
		s.nest(one)
		list = others
	}
}

// nest does so for the bores about one centre.
func (s *shaper) nest(list []hollow) {
	for i, h := range list {
		for _, other := range list[i+1:] {
			if !h.entry.broken && !other.entry.broken {
				s.checkPair(h, other)
			}
		}
	}
	for i, h := range list {
		if h.entry.broken {
			s.drop(h.entry)
			continue
		}
		s.checkBegin(h, list)
		h.keep(s.remainder(h, list[i+1:]))
		s.checkPoint(h, list)
	}
}

// checkPair judges two bores of which the first is at least as deep. The deeper
// one must be smaller than the shallower one where they are in one place.
func (s *shaper) checkPair(deep, shallow hollow) {
	_, meet := common(deep.span(s.length()), shallow.span(s.length()))
	if deep.from != shallow.from && !deep.through && !shallow.through {
		reach := deep.deep + shallow.deep
		if reach > s.length()-sameLength {
			s.c.fail(shallow.entry, shallow.entry.head(), fmt.Sprintf("%s and %s meet", deep.entry.title(), shallow.entry.title()),
				"Their depths make %s in a part %s long. Make the smaller one a through bore: leave its depth out.",
				s.shown(reach), s.shown(s.length()))
		}
		return
	}
	if !meet && deep.begin < shallow.deep+sameLength {
		return // one begins where the other ends
	}
	if deep.through && shallow.through {
		s.c.fail(shallow.entry, shallow.entry.head(), fmt.Sprintf("%s and %s are both through", deep.entry.title(), shallow.entry.title()),
			"The larger one takes the smaller one away. Leave one out, or give the larger one a depth.")
		return
	}
	if deep.wide >= shallow.narrow-sameLength {
		s.c.fail(shallow.entry, shallow.entry.head(), fmt.Sprintf("%s is swallowed by %s", shallow.entry.title(), deep.entry.title()),
			"%s is deeper and %s across, %s is %s: the deeper bore must be the smaller one.",
			deep.entry.title(), s.shown(deep.wide), shallow.entry.title(), s.shown(shallow.narrow))
	}
}

// checkBegin: an inside taper that begins behind the end face needs a way in.
func (s *shaper) checkBegin(h hollow, list []hollow) {
	if h.begin <= sameLength {
		return
	}
	way := slices.ContainsFunc(list, func(other hollow) bool {
		return !other.entry.broken && (other.from == h.from || other.through) && other.begin <= sameLength &&
			other.deep >= h.begin-sameLength && other.narrow >= max(h.wide, h.narrow)-sameLength
	})
	if !way {
		s.c.fail(h.entry, h.entry.head(), fmt.Sprintf("No tool gets to %s", h.entry.title()),
			"It begins %s deep, and no bore as large as its mouth, %s, leads there: write a counterbore.",
			s.shown(h.begin), s.shown(h.wide))
		s.drop(h.entry)
	}
}

// remainder is what shallower bores from either end leave of a bore.
func (s *shaper) remainder(h hollow, shallower []hollow) Span {
	span := h.span(s.length())
	for _, other := range shallower {
		if other.entry.broken {
			continue
		}
		taken := other.span(s.length())
		if _, meet := common(span, taken); !meet {
			continue
		}
		if other.from == Left {
			span.Left = max(span.Left, taken.Right)
		} else {
			span.Right = min(span.Right, taken.Left)
		}
	}
	return span
}

// pointPerDiameter is the height of a 118 degree drill's point for a diameter
// of 1: half of the cotangent of 59 degrees.
const pointPerDiameter = 0.3004

// checkPoint finds blind holes whose drill point would break through, or take a through hole's stretch behind it away.
func (s *shaper) checkPoint(h hollow, list []hollow) {
	deeper := slices.ContainsFunc(list, func(other hollow) bool { return other.from == h.from && other.deep > h.deep && !other.through })
	if !h.pointed || h.through || deeper {
		return
	}
	floor, point := s.length()-h.deep, h.narrow*pointPerDiameter
	for _, other := range list {
		if other.through && other.narrow < h.narrow { // the cone ends where the through hole is as wide
			point = min(point, (h.narrow-other.narrow)*pointPerDiameter)
		}
	}
	for _, other := range list {
		if other.through {
			continue
		}
		if other.from != h.from {
			between := s.length() - h.deep - other.deep
			if other.pointed {
				between -= other.narrow * pointPerDiameter
			}
			floor = min(floor, between)
		}
	}
	if floor <= point {
		s.c.fail(h.entry, h.entry.at("depth"), fmt.Sprintf("The drill's point breaks through behind %s", h.entry.title()),
			"Its floor is %s thick, the point %s long. Write flat = true, less depth, or leave depth out for a through bore.",
			s.shown(floor), s.shown(point))
		s.drop(h.entry)
	}
}
