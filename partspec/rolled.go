package partspec

import (
	"fmt"

	"catchplate/partspec/units"
)

// wrongStock refuses bar for flat parts and plate for turned ones.
func (s *shaper) wrongStock(p *partEntry) {
	e := p.stock
	if s.flat {
		s.c.fail(e, e.head(), fmt.Sprintf("A flat part is not cut from stock %q", e.name), "Write %s, or sheet; for a turned part leave thickness and outline out.", exampleStock(p))
		return
	}
	s.c.fail(e, e.head(), fmt.Sprintf("A turned part is not cut from stock %q", e.name),
		"Write %s; for a flat part write its thickness and its outline instead of its length.", exampleStock(p))
}

// rolledStock reads plate or sheet.
func (s *shaper) rolledStock(e *entry, stock *Stock) {
	stock.Kind, stock.Width = Plate, e.dimension("width")
	if e.name == "sheet" {
		stock.Kind, stock.FacesAsSupplied = Sheet, true
	}
	stock.Thickness = s.size(e, "thickness", useLength)
	if e.known("faces_as_supplied") {
		stock.FacesAsSupplied = e.flag("faces_as_supplied")
	}
}

// castAround gives a casting its size: the part's own with its metal on every face.
func (s *shaper) castAround(stock *Stock) {
	if stock.Kind != Casting || s.length() <= 0 {
		return
	}
	whole := func(l units.Length) Size {
		d := units.Dimension{Value: (l + 2*stock.Metal).Round(positionDecimals), InInches: s.part.Inches}
		return exact(d, stock.Range, fmt.Sprintf("the part's size and %s on every face", s.shown(stock.Metal)))
	}
	long := s.length()
	if s.flat && s.part.Outline != nil {
		x0, y0, x1, y1 := s.part.Outline.region().Bounds()
		stock.Thickness, stock.Width = whole(long), whole(units.Length(x1-x0)).Dimension
		long = units.Length(y1 - y0)
	}
	if !s.flat {
		_, most := over(s.outsidePieces(), Span{0, long})
		stock.Outside = whole(2 * most)
	}
	stock.Length = whole(long).Dimension
}

// checkRolled finds flat parts that the stock has no metal for.
func (s *shaper) checkRolled(stock Stock) {
	if stock.Kind == Casting {
		return
	}
	thick, want := stock.Thickness.Value, s.length()
	if ratio := float64(thick / want); ratio > askFrom && ratio < askTo && !s.part.Inches {
		s.c.report(question(s.owner.at("thickness"), fmt.Sprintf("Is %s really %s thick?", s.owner.title(), s.shown(want)),
			"Its stock is %s, %.0f times as thick. If the drawing has inches, write \"%s in\".", s.shown(thick), ratio, units.Decimal(float64(want), 4)))
	}
	switch spare := thick - want; {
	case spare < -sameLength:
		s.c.fail(s.owner, stock.Range, fmt.Sprintf("The stock is thinner than %s", s.owner.title()), "The part is %s thick, the %s %s.%s",
			s.shown(want), stock.Kind, s.shown(thick), s.wrongUnit(want, thick))
	case stock.FacesAsSupplied && spare > sameLength:
		s.c.fail(s.owner, stock.Range, "The stock's faces are left, and it is thicker than the part",
			"The part is %s thick, the %s %s. Write the stock's own thickness, or faces_as_supplied = false to have it milled.", s.shown(want), stock.Kind, s.shown(thick))
	case !stock.FacesAsSupplied && spare <= sameLength:
		s.c.fail(s.owner, stock.Range, fmt.Sprintf("Nothing is left to mill on the faces of %s", s.owner.title()),
			"It is as thick as its stock: write faces_as_supplied = true in the stock to leave them as they are, or take thicker stock.")
	}
	if s.part.Outline == nil {
		return
	}
	x0, y0, x1, y1 := s.part.Outline.region().Bounds()
	across, up := s.keptEdges(units.Length(x0), units.Length(y0), units.Length(x1), units.Length(y1))
	s.checkExtent(stock, "width", stock.Width.Value, units.Length(x1-x0), across)
	s.checkExtent(stock, "length", stock.Length.Value, units.Length(y1-y0), up)
}

// keptEdges counts the sides of the part, between bounds, that are the stock's own edges: left and right, and bottom and top.
func (s *shaper) keptEdges(x0, y0, x1, y1 units.Length) (across, up int) {
	var left, right, bottom, top int
	on := func(a, b, line units.Length) bool {
		return (a-line).Abs() <= sameLength && (b-line).Abs() <= sameLength
	}
	for _, e := range s.part.Outline.Edges {
		switch {
		case !e.AsSupplied:
		case on(e.X0, e.X1, x0):
			left = 1
		case on(e.X0, e.X1, x1):
			right = 1
		case on(e.Y0, e.Y1, y0):
			bottom = 1
		case on(e.Y0, e.Y1, y1):
			top = 1
		default:
			s.c.fail(s.owner, e.Range, fmt.Sprintf("Edge %q cannot be the stock's own", e.Name), "It does not lie along one side of the whole part, as an edge of a plate does.")
		}
	}
	return left + right, bottom + top
}

// checkExtent compares the stock with the outline in one direction. kept is how many of the two edges across it are the stock's own.
func (s *shaper) checkExtent(stock Stock, attribute string, have, want units.Length, kept int) {
	const both = 2
	across := map[string]string{"width": "wide", "length": "long"}[attribute]
	switch {
	case have == 0 && kept == both:
		s.c.fail(s.owner, stock.Range, fmt.Sprintf("The stock lacks %s", attribute), "Two edges are left as supplied, so that its size is the part's: write %s = %s.", attribute, s.shown(want))
	case have == 0:
	case have < want-sameLength:
		s.c.fail(s.owner, stock.Range, fmt.Sprintf("The stock is smaller than %s", s.owner.title()), "The part is %s %s, the stock %s.%s",
			s.shown(want), across, s.shown(have), s.wrongUnit(want, have))
	case kept == both && have > want+sameLength:
		s.c.fail(s.owner, stock.Range, "Two edges are left as supplied, and the stock is larger than the part", "The part is %s %s, the stock %s: take as_supplied out of one edge, or write the stock's own size.",
			s.shown(want), across, s.shown(have))
	case kept == 0 && have < want+sameLength:
		s.c.fail(s.owner, stock.Range, fmt.Sprintf("Nothing is left to cut on the edges of %s", s.owner.title()),
			"It is as %s as its stock: write edge \"left\" { as_supplied = true } in the outline for each edge that is left as it is, or take larger stock.", across)
	}
}
