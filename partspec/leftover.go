package partspec

import (
	"fmt"

	"catchplate/partspec/units"
)

// leftOver gives the last feature of a chain the length that is left. It has no
// limits of its own: they follow from all the others.
func (s *shaper) leftOver(o *outside, start units.Length, towards End, last bool) bool {
	e := o.entry
	if e.has("length") {
		return false // failed, and told
	}
	if !last {
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks length", e.title()),
			"Write length = 12 or length = \"1/2 in\". Only the last outside feature may leave it out; it gets what is left.")
		return false
	}
	rest := s.freeFrom(start, towards).Round(positionDecimals)
	if rest <= 0 {
		s.c.fail(e, e.head(), fmt.Sprintf("Nothing is left for %s", e.title()),
			"The features before it take %s; the part is %s long.%s",
			s.shown(s.length()-rest), s.shown(s.length()), s.unitHint(-rest))
		return false
	}
	*o.length = s.closing(e, rest)
	return o.settle == nil || o.settle(rest)
}

// freeFrom is the length from a place to the next piece that stands, or to the
// end of the part.
func (s *shaper) freeFrom(start units.Length, towards End) units.Length {
	free := start
	if towards == Right {
		free = s.length() - start
	}
	for _, o := range s.outer {
		gap := o.span.Left - start
		if towards == Left {
			gap = start - o.span.Right
		}
		if o.placed && gap > -sameLength {
			free = min(free, gap)
		}
	}
	return free
}

// closing is a length that no one wrote: the part's length less all the others.
func (s *shaper) closing(e *entry, rest units.Length) Size {
	low, high := s.part.Length.Low, s.part.Length.High
	for _, o := range s.outer {
		if o.entry != e && o.placed {
			low, high = low-o.length.High, high-o.length.Low
		}
	}
	size := Size{Dimension: units.Dimension{Value: rest, InInches: s.part.Inches}, Range: e.head()}
	if len(s.outer) == 1 {
		size.Dimension = s.part.Length.Dimension
		return size.within(units.Limits{Low: low, High: high}, s.part.Length.Basis)
	}
	limits := units.Limits{Low: max(leastSize, low).Round(positionDecimals), High: high.Round(positionDecimals)}
	return size.within(limits, "what the other lengths leave of the part's length")
}
