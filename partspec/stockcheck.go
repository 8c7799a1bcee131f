package partspec

import (
	"fmt"
	"slices"

	"catchplate/partspec/units"
)

// checkStock finds parts that the stock has no metal for.
func (s *shaper) checkStock() {
	stock := s.part.Stock
	if stock.Kind == StockInvalid {
		return
	}
	if s.flat {
		s.checkRolled(stock)
		return
	}
	if left := stock.Length.Value + stock.At; stock.Length.Value > 0 && left < s.length()-sameLength {
		s.c.fail(s.owner, stock.Range, fmt.Sprintf("The stock is shorter than %s", s.owner.title()),
			"The part is %s long, the stock %s.%s",
			s.shown(s.length()), s.shown(left), s.wrongUnit(s.length(), left))
	}
	if stock.Kind == Casting {
		return
	}
	if stock.Kind == Existing {
		s.checkExisting(stock)
		return
	}
	for _, p := range s.outsidePieces() {
		s.checkOutside(p, stock)
	}
	if stock.Kind == Tube && !s.doubt {
		s.checkHollow([]piece{cylinder("stock", Span{0, s.length()}, stock.Inside.Value)}, stock.Inside.Range)
	}
}

func (s *shaper) checkOutside(p piece, stock Stock) {
	e := s.entryOf(p.name)
	if f, ok := s.done[p.name].(*Spigot); ok && f.AsSupplied {
		return
	}
	_, most := p.extremes()
	switch excess := 2*most - stock.Outside.Value; {
	case excess > sameLength:
		s.c.fail(e, e.head(), fmt.Sprintf("%s is larger than its stock", e.title()), "It is %s across, the %s %s.%s",
			s.shown(2*most), stock.Kind, s.shown(stock.Outside.Value), s.wrongUnit(2*most, stock.Outside.Value))
	case excess > -sameLength && stock.Kind != Hexagon:
		s.c.fail(e, e.head(), fmt.Sprintf("Nothing is left to turn on %s", e.title()),
			"It has the diameter of its stock: write as_supplied = true to leave that as it is, or take larger stock.")
	}
}

// checkHollow: where the stock is hollow already, the part has no metal to be
// cut from.
func (s *shaper) checkHollow(old []piece, at Range) {
	bores := s.insidePieces()
	for _, o := range old {
		places := []units.Length{o.span.Left, o.span.Right}
		for _, p := range bores {
			places = append(places, between(o.span, []units.Length{p.span.Left, p.span.Right})...)
		}
		slices.Sort(places)
		for _, z := range places {
			for _, side := range []End{Right, Left} {
				have, want := radiusBeside(bores, z, side), radiusBeside([]piece{o}, z, side)
				if have < want-sameLength {
					s.c.fail(s.owner, at, "The stock has no metal there",
						"It is hollow to %s, the part only to %s, at %s from the left end: take stock with a smaller bore, or a bar.",
						s.shown(2*want), s.shown(2*have), s.shown(z))
					return
				}
			}
		}
	}
}

// checkExisting compares the part with the piece that it is made from, place by
// place: the outside may only become smaller, the hollow only larger.
func (s *shaper) checkExisting(stock Stock) {
	if s.existing == nil || s.doubt {
		return
	}
	outer := moved(s.existing.outsidePieces(), stock.At)
	for _, p := range s.outsidePieces() {
		f, _ := s.done[p.name].(*Spigot)
		kept := f != nil && f.AsSupplied
		s.compare(p, outer, kept)
	}
	s.checkHollow(cutTo(moved(s.existing.insidePieces(), stock.At), Span{0, s.length()}), stock.Range)
}

// moved shifts pieces along the axis.
func moved(pieces []piece, by units.Length) []piece {
	var list []piece
	for _, p := range pieces {
		q := piece{name: p.name, span: Span{p.span.Left + by, p.span.Right + by}}
		q.radius = func(z units.Length) units.Length { return p.radius(z - by) }
		for _, z := range p.turns {
			q.turns = append(q.turns, z+by)
		}
		list = append(list, q)
	}
	return list
}

// cutTo cuts pieces down to a stretch.
func cutTo(pieces []piece, stretch Span) []piece {
	var list []piece
	for _, p := range pieces {
		if both, meet := common(p.span, stretch); meet {
			p.span = both
			list = append(list, p)
		}
	}
	return list
}

// compare reports the first place where a piece of the part is not smaller than
// the existing one, or not the same when it is kept.
func (s *shaper) compare(p piece, old []piece, kept bool) {
	for _, o := range old {
		both, meet := common(p.span, o.span)
		if !meet {
			continue
		}
		for _, z := range append([]units.Length{both.Left, both.Right}, between(both, p.turns, o.turns)...) {
			spare := o.radius(z) - p.radius(z)
			if !kept && spare < sameLength || kept && spare.Abs() > sameLength {
				e := s.entryOf(p.name)
				s.c.fail(e, e.head(), fmt.Sprintf("The existing piece does not allow %s", e.title()),
					"%s from the left end it is %s across, and the existing piece is %s there. A surface that is left as it is says as_supplied = true and its diameter.",
					s.shown(z), s.shown(2*p.radius(z)), s.shown(2*o.radius(z)))
				return
			}
		}
	}
}
