package partspec

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec/units"
)

// ring is what the holes of a pattern take between two distances from the axis.
type ring struct{ inner, outer units.Length }

// ring is where the holes lie on a turned part.
func (f *Holes) ring() ring {
	r := ring{units.Length(math.Inf(1)), 0}
	own := f.largest()
	for _, p := range f.Places {
		d := units.Length(math.Hypot(float64(p.X.Value), float64(p.Y.Value)))
		r.inner, r.outer = min(r.inner, d-own), max(r.outer, d+own)
	}
	return r
}

// layer is a stretch of a turned part in which the outside and the hollow do not begin or end.
type layer struct {
	span             Span
	outLow, outHigh  units.Length // radius of the outside over the stretch
	holeLow, holeTop units.Length // radius of the hollow; 0 where there is none
}

// layers cuts the part where any piece of it begins or ends.
func (s *shaper) layers() []layer {
	outer, cuts, inner := s.outsidePieces(), s.cutPieces(), s.insidePieces()
	places := []units.Length{0, s.length()}
	for _, p := range slices.Concat(outer, cuts, inner) {
		places = append(places, p.span.Left, p.span.Right)
	}
	slices.Sort(places)
	places = slices.CompactFunc(places, func(a, b units.Length) bool { return (a - b).Abs() <= sameLength })
	var list []layer
	for i := range len(places) - 1 {
		l := layer{span: Span{places[i], places[i+1]}}
		l.outLow, l.outHigh = over(outer, l.span)
		if low, high := over(cuts, l.span); high > 0 {
			l.outLow, l.outHigh = min(l.outLow, low), min(l.outHigh, high)
		}
		l.holeLow, l.holeTop = over(inner, l.span)
		list = append(list, l)
	}
	return list
}

// over is the least and the greatest radius of the pieces that cover a stretch; 0 where none does.
func over(pieces []piece, stretch Span) (least, most units.Length) {
	for _, p := range pieces {
		both, meet := common(p.span, stretch)
		if !meet {
			continue
		}
		for _, z := range append([]units.Length{both.Left, both.Right}, between(both, slices.Clone(p.turns))...) {
			if r := p.radius(z); most == 0 {
				least, most = r, r
			} else {
				least, most = min(least, r), max(most, r)
			}
		}
	}
	return least, most
}

// whole reports whether the ring lies in metal all round, and clear whether it lies in none.
func (l layer) whole(r ring) bool {
	return l.outLow >= r.outer+sameLength && (l.holeTop == 0 || l.holeTop <= r.inner-sameLength)
}

func (l layer) clear(r ring) bool {
	return l.outHigh <= r.inner+sameLength || l.holeLow >= r.outer-sameLength
}

// endSpan is the metal that holes from an end go through: from the face that they meet first to where the metal behind it ends.
func (s *shaper) endSpan(e *entry, f *Holes) (Span, bool) {
	if f.From == EndInvalid || s.bodyless {
		return Span{}, false
	}
	r, layers := f.ring(), slices.Clone(s.cuts)
	if f.From == Right {
		slices.Reverse(layers)
	}
	if r.inner < 0 && len(f.Places) > 0 {
		s.c.fail(e, e.head(), fmt.Sprintf("%s takes the axis", e.title()), "A hole on the axis is a bore: write bore %q { diameter = %s }.", e.name, s.shown(f.Diameter.Value))
		return Span{}, false
	}
	first := slices.IndexFunc(layers, func(l layer) bool { return !l.clear(r) })
	if first < 0 {
		s.offFace(e, r, layers)
		return Span{}, false
	}
	if !layers[first].whole(r) {
		s.brokenFace(e, f, r, layers[first:])
		return Span{}, false
	}
	last := first
	for last+1 < len(layers) && layers[last+1].whole(r) {
		last++
	}
	metal := Span{min(layers[first].span.Left, layers[last].span.Left), max(layers[first].span.Right, layers[last].span.Right)}
	if last+1 < len(layers) && !layers[last+1].clear(r) && !s.staysIn(f, metal.Length()) {
		s.brokenBehind(e, r, layers[last+1])
		return metal, false
	}
	return metal, true
}

// staysIn reports whether blind holes end before some length of metal does.
func (s *shaper) staysIn(f *Holes, metal units.Length) bool {
	return !f.Through && f.Depth.Value+f.Diameter.Value*pointPerDiameter < metal
}

// offFace: the whole ring lies beside the metal.
func (s *shaper) offFace(e *entry, r ring, layers []layer) {
	var most units.Length
	for _, l := range layers {
		most = max(most, l.outHigh)
	}
	if r.inner >= most-sameLength {
		s.c.fail(e, e.head(), fmt.Sprintf("%s lies beside the part", e.title()), "Its holes lie from %s to %s from the axis, and the part is %s across.%s",
			s.shown(r.inner), s.shown(r.outer), s.shown(2*most), s.wrongUnit(r.outer, most))
		return
	}
	s.c.fail(e, e.head(), fmt.Sprintf("%s lies in the hollow", e.title()), "Its holes lie from %s to %s from the axis, where the part has no metal.", s.shown(r.inner), s.shown(r.outer))
}

// brokenFace: the holes do not lie whole on the face that they meet first.
func (s *shaper) brokenFace(e *entry, f *Holes, r ring, layers []layer) {
	l := layers[0]
	reach := "Its holes lie from %s to %s from the axis; "
	switch {
	case l.holeTop > r.inner-sameLength && l.outLow >= r.outer:
		s.c.fail(e, e.head(), fmt.Sprintf("%s breaks into the bore", e.title()), reach+"the hollow there is %s in radius. Make the circle larger or the holes smaller.",
			s.shown(r.inner), s.shown(r.outer), s.shown(l.holeTop))
	case len(layers) > 1 && layers[1].whole(r):
		s.c.fail(e, e.head(), fmt.Sprintf("%s cuts into what stands beside its face", e.title()), reach+"what stands on the face at the %s is %s in radius. Make the circle larger or the holes smaller.",
			s.shown(r.inner), s.shown(r.outer), f.From, s.shown(l.outHigh))
	default:
		s.c.fail(e, e.head(), fmt.Sprintf("%s breaks through the rim", e.title()), reach+"the part there is %s in radius. Make the circle or the holes smaller.",
			s.shown(r.inner), s.shown(r.outer), s.shown(l.outLow))
	}
}

// brokenBehind: deeper in, the holes run half out of the metal.
func (s *shaper) brokenBehind(e *entry, r ring, l layer) {
	what, radius := "the outside", l.outLow
	if l.holeTop > r.inner-sameLength && l.outLow >= r.outer {
		what, radius = "the hollow", l.holeTop
	}
	s.c.fail(e, e.head(), fmt.Sprintf("%s runs out of the metal at its side", e.title()),
		"Its holes lie from %s to %s from the axis; from %s to %s along it %s is %s in radius. Write a smaller depth, or another circle.",
		s.shown(r.inner), s.shown(r.outer), s.shown(l.span.Left), s.shown(l.span.Right), what, s.shown(radius))
}

// checkFaces asks about holes of turned parts that lie nearer to a rim or to the bore than rule A-34 wants.
func (s *shaper) checkFaces() {
	for _, e := range s.entries {
		f, ok := s.done[e.name].(*Holes)
		if !ok || e.broken {
			continue
		}
		r, wants := f.ring(), f.wanted()
		for _, l := range s.cuts {
			if _, meet := common(l.span, f.Span); !meet {
				continue
			}
			own := f.largest()
			near, what := l.outLow-(r.outer-own), "rim"
			if in := r.inner + own - l.holeTop; l.holeTop > 0 && in < near {
				near, what = in, "bore"
			}
			mouth := f.largest()
			if _, meet := common(l.span, f.mouthSpan()); meet {
				mouth = f.mouth()
			}
			if near < mouth+sameLength {
				s.c.fail(e, e.head(), fmt.Sprintf("The widened mouth of %s breaks through the %s", e.title(), what), "Its centres are %s from it and the mouth is %s across.", s.shown(near), s.shown(2*mouth))
				s.drop(e)
				break
			}
			if near < wants-sameLength {
				s.c.report(question(e.head(), fmt.Sprintf("Is %s really so near to the %s?", e.title(), what),
					"Its centres are %s from it; %s or more keeps the metal from bulging or springing (rule A-34).", s.shown(near), s.shown(wants)))
				break
			}
		}
	}
}

// mouthSpan is the stretch that the widened mouth takes; none without one.
func (f *Holes) mouthSpan() Span {
	if f.Sink == nil {
		return Span{}
	}
	return fromMouthOf(f.Span, f.From, f.sinkDepth())
}

// mouth is the radius of the widened mouth, or of the hole where it has none.
func (f *Holes) mouth() units.Length {
	if f.Sink != nil {
		return max(f.largest(), f.Sink.Diameter.Value/2)
	}
	return f.largest()
}
