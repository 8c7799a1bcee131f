package partspec

import (
	"math"
	"slices"

	"catchplate/partspec/units"
)

// piece is a stretch of the outside or of the hollow with one radius for each
// position.
type piece struct {
	name   string
	span   Span
	radius func(units.Length) units.Length
	// turns are positions inside the span where the radius is greatest or least.
	turns []units.Length
}

// cylinder is a piece of one radius.
func cylinder(name string, span Span, diameter units.Length) piece {
	return piece{name: name, span: span, radius: func(units.Length) units.Length { return diameter / 2 }}
}

// cone is a piece whose radius changes evenly.
func cone(name string, span Span, left, right units.Length) piece {
	return piece{name: name, span: span, radius: func(z units.Length) units.Length {
		return (left + (right-left)*(z-span.Left)/span.Length()) / 2
	}}
}

func (p piece) at(e End) units.Length { return p.radius(p.span.At(e)) }

// extremes are the least and the greatest radius over the span.
func (p piece) extremes() (least, most units.Length) {
	least, most = units.Length(math.Inf(1)), 0
	for _, z := range append([]units.Length{p.span.Left, p.span.Right}, p.turns...) {
		least, most = min(least, p.radius(z)), max(most, p.radius(z))
	}
	return least, most
}

// common is the stretch that two spans share; false when they only touch.
func common(a, b Span) (Span, bool) {
	both := Span{max(a.Left, b.Left), min(a.Right, b.Right)}
	return both, both.Length() > sameLength
}

// outsidePieces lists the outside from left to right, grooves not counted.
func (s *shaper) outsidePieces() []piece {
	var pieces []piece
	for _, o := range s.outer {
		if s.done[o.entry.name] != nil {
			pieces = append(pieces, o.piece())
		}
	}
	return pieces
}

// cutPieces lists what grooves and threads leave of the outside.
func (s *shaper) cutPieces() []piece {
	var pieces []piece
	for _, e := range s.entries {
		switch f := s.done[e.name].(type) {
		case *Groove:
			pieces = append(pieces, f.piece())
		case *Thread:
			if !f.Inside {
				pieces = append(pieces, cylinder(f.Name, f.Span, f.Thread.CoreExt))
			}
		}
	}
	return pieces
}

// threadPieces lists what inside threads take of the wall.
func (s *shaper) threadPieces() []piece {
	var pieces []piece
	for _, e := range s.entries {
		if f, ok := s.done[e.name].(*Thread); ok && f.Inside {
			pieces = append(pieces, cylinder(f.Name, f.Span, f.Thread.Major))
		}
	}
	return pieces
}

// insidePieces lists the hollow, recesses included.
func (s *shaper) insidePieces() []piece {
	var pieces []piece
	for _, e := range s.entries {
		switch f := s.done[e.name].(type) {
		case *Bore:
			pieces = append(pieces, cylinder(f.Name, f.Span, f.Diameter.Value))
		case *Recess:
			pieces = append(pieces, cylinder(f.Name, f.Span, f.Diameter.Value))
		case *Taper:
			if f.Inside {
				pieces = append(pieces, f.piece())
			}
		}
	}
	return pieces
}

// radiusBeside is the radius of a list of pieces just left or just right of a
// position; 0 where there is none.
func radiusBeside(pieces []piece, z units.Length, side End) units.Length {
	var most units.Length
	for _, p := range pieces {
		right := side == Right && p.span.Left <= z+sameLength && p.span.Right > z+sameLength
		left := side == Left && p.span.Right >= z-sameLength && p.span.Left < z-sameLength
		if left || right {
			most = max(most, p.radius(z))
		}
	}
	return most
}

// between keeps the positions that lie within a stretch.
func between(stretch Span, lists ...[]units.Length) []units.Length {
	return slices.DeleteFunc(slices.Concat(lists...), func(z units.Length) bool { return z <= stretch.Left || z >= stretch.Right })
}

// checkWalls finds places where the hollow reaches the outside. Where one only ends at the other's beginning nothing would hold the two sides together.
func (s *shaper) checkWalls() {
	outer := slices.Concat(s.outsidePieces(), s.cutPieces())
	for _, in := range slices.Concat(s.insidePieces(), s.threadPieces()) {
		for _, out := range outer {
			if both, _ := common(in.span, out.span); both.Length() >= -sameLength && s.checkWall(in, out, both) {
				break
			}
		}
	}
}

// checkWall reports a wall that is gone; one message for each hollow piece.
func (s *shaper) checkWall(in, out piece, both Span) bool {
	for _, z := range append([]units.Length{both.Left, both.Right}, between(both, in.turns, out.turns)...) {
		wall := out.radius(z) - in.radius(z)
		if wall > sameLength {
			continue
		}
		e := s.entryOf(in.name)
		s.c.fail(e, e.head(), e.title()+" leaves no wall",
			"Its diameter is %s where %s is %s, %s from the left end.%s",
			s.shown(2*in.radius(z)), s.entryOf(out.name).title(), s.shown(2*out.radius(z)), s.shown(z), s.wrongUnit(2*in.radius(z), 2*out.radius(z)))
		s.drop(e)
		return true
	}
	return false
}

// wrongUnit asks whether a size that is far too large is one in inches read as
// millimetres, or the other way round.
func (s *shaper) wrongUnit(size, limit units.Length) string {
	if size/units.Inch < limit && size > limit*5 {
		return " It is far off: is it in another unit?"
	}
	return ""
}
