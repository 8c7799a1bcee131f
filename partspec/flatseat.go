package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// faceSeat is a seat across the back or the front of a flat part: its pipe lies along X or along Y, by default over the middle of the outline.
func (s *shaper) faceSeat(e *entry, f *Seat) {
	if s.part.Outline == nil {
		e.broken = true
		return
	}
	x0, y0, x1, y1 := s.part.Outline.region().Bounds()
	low, high := units.Length(y0), units.Length(y1)
	datumX, datumY := s.datumLines()
	datum := datumY
	switch f.Angle = f.Angle.Round(positionDecimals); f.Angle {
	case 0, 180, -180:
		f.Angle = 0
	case alongY, -alongY, 3 * alongY, -3 * alongY:
		f.Angle = alongY
		low, high, datum = units.Length(x0), units.Length(x1), datumX
	default:
		s.c.fail(e, e.at("angle"), fmt.Sprintf("The pipe of %s lies askew", e.title()), "On a flat part it lies along X or along Y: write angle = 0 or angle = 90, and draw the outline turned to it.")
		return
	}
	middle := (low + high) / 2
	if e.has("at") {
		middle = e.length("at")
	}
	f.Middle = s.coordinate(e, units.Toleranced{Nominal: units.Dimension{Value: middle.Round(positionDecimals), InInches: s.part.Inches}}, datum, e.at("at"))
	if middle <= low || middle >= high {
		s.c.fail(e, e.at("at"), fmt.Sprintf("The pipe of %s lies beside the part", e.title()), "Its axis is to lie between %s and %s, counted from the outline's origin.%s", s.shown(low), s.shown(high), s.wrongUnit(middle.Abs(), high.Abs()))
		return
	}
	width := 2 * max(middle-low, high-middle)
	f.Across = width
	if e.has("across") {
		f.Across = e.length("across")
	}
	s.sunkSeat(e, f, width, s.length())
}

// alongY is the angle of a pipe that lies along Y.
const alongY units.Angle = 90

// AlongY reports whether the pipe of a seat in a face lies along Y; else it lies along X.
func (f *Seat) AlongY() bool { return f.Angle == alongY }

// sunkSeat finds how deep a seat is at its crown in an end so wide, and refuses one that the metal, so thick, has no room for.
func (s *shaper) sunkSeat(e *entry, f *Seat, width, thick units.Length) {
	r, half := f.Radius.Value, f.Across/2
	switch {
	case f.Across > width+sameLength:
		s.c.fail(e, e.at("across"), fmt.Sprintf("%s is wider than its end", e.title()), "The end is %s across: leave across out for all of it.%s", s.shown(width), s.wrongUnit(f.Across, width))
		return
	case r < half-sameLength:
		s.c.fail(e, e.head(), fmt.Sprintf("The pipe of %s is narrower than the part", e.title()),
			"Its radius is %s and the part is %s across: write across, the width that sits on it, %s at most.%s", s.shown(r), s.shown(f.Across), s.shown(2*r), s.wrongUnit(half, r))
		return
	}
	f.Depth = (r - units.Length(math.Sqrt(max(0, float64(r*r-half*half))))).Round(positionDecimals)
	f.AxisZ = (f.Depth - r).Round(positionDecimals)
	if f.On == Right {
		f.AxisZ = (s.length() - f.AxisZ).Round(positionDecimals)
	}
	switch {
	case f.Depth < thick-sameLength:
	case s.flat:
		s.c.fail(e, e.head(), fmt.Sprintf("%s goes right through", e.title()),
			"At its crown it is %s deep, and the part %s thick: make that thicker, or write across, the width that sits on the pipe.%s", s.shown(f.Depth), s.shown(thick), s.wrongUnit(f.Depth, thick))
	default:
		s.c.fail(e, e.head(), fmt.Sprintf("%s is deeper than its flange", e.title()),
			"At its crown it is %s deep, and the metal at the rim is %s thick: make that thicker, or the part narrower.%s", s.shown(f.Depth), s.shown(thick), s.wrongUnit(f.Depth, thick))
	}
}

// Beside is how far a place lies from the plane of the pipe's axis that is square to the end.
func (f *Seat) Beside(x, y units.Length) float64 {
	sin, cos := math.Sincos(f.Angle.Radians())
	off := float64(y)*cos - float64(x)*sin
	if f.AlongY() {
		return off + float64(f.Middle.Value)
	}
	return off - float64(f.Middle.Value)
}

// overFlat judges bores and slots of a flat part that a seat cuts into: they go through, or have a floor over it.
func (s *shaper) overFlat(e *entry, seat *Seat) {
	switch f := s.done[e.name].(type) {
	case *Bore:
		if f.At != nil {
			r := float64(f.Diameter.Value) / 2
			s.floorOver(e, seat, f.From, f.Through, f.Span.Length(), seat.Beside(f.At.X.Value, f.At.Y.Value), r)
		}
	case *Slot:
		a, b := seat.Beside(f.Ends[0].X.Value, f.Ends[0].Y.Value), seat.Beside(f.Ends[1].X.Value, f.Ends[1].Y.Value)
		s.floorOver(e, seat, f.From, f.Through, f.Span.Length(), (a+b)/2, math.Abs(a-b)/2+float64(f.Width.Value)/2)
	}
}

// floorOver judges what is sunk into a flat part, so far to each side of a place beside the pipe's axis.
func (s *shaper) floorOver(e *entry, seat *Seat, from End, through bool, deep units.Length, beside, reach float64) {
	hollow := seat.hollow(math.Max(0, math.Abs(beside)-reach))
	left := s.length() - hollow
	switch {
	case through || hollow <= sameLength:
	case from == seat.On:
		s.c.fail(e, e.head(), fmt.Sprintf("%s begins in %s", e.title(), s.entryOf(seat.Name).title()),
			"No depth can be counted from a hollow: cut it from the other face, or write through = true.")
	case deep >= left-sameLength:
		s.c.fail(e, e.head(), fmt.Sprintf("%s breaks out in %s", e.title(), s.entryOf(seat.Name).title()),
			"The metal there is %s thick and it is %s deep: write through = true, or a smaller depth.", s.shown(left.Round(positionDecimals)), s.shown(deep))
	}
}
