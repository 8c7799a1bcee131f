package partspec

import (
	"fmt"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

var sawn = shapeOf{attrs: []attr{may("length", kindLength), may("rough", kindFlag), may("note", kindText)}}

var stockShapes = map[string]shapeOf{
	"bar":     sawn.with(need("diameter", kindSize)),
	"tube":    sawn.with(need("outside", kindSize), need("inside", kindSize)),
	"hexagon": sawn.with(need("across_flats", kindSize)),
	"existing": {
		attrs:  []attr{need("length", kindSize), may("at", kindPosition), may("rough", kindFlag), may("note", kindText)},
		blocks: axialWords(),
	},
	"plate":   rolled,
	"sheet":   rolled,
	"casting": {attrs: []attr{need("metal", kindLength), may("note", kindText)}},
}

// rolled is what plate and sheet may say.
var rolled = sawn.with(need("thickness", kindSize), may("width", kindLength), may("faces_as_supplied", kindFlag))

// stockKinds are those of turned parts, flatStock those of flat ones.
var (
	stockKinds = []string{"bar", "tube", "hexagon", "existing", "casting"}
	flatStock  = []string{"plate", "sheet", "casting"}
)

// laterStock are forms of metal that the language does not take yet.
var laterStock = []string{"square", "flat", "forging"}

// exampleStock is how stock is written, for a message.
func exampleStock(p *partEntry) string {
	if p.isFlat() {
		return `stock "plate" { thickness = 6 }`
	}
	return `stock "bar" { diameter = 25 }`
}

func (c *checker) gatherStock(p *partEntry, b *hclsyntax.Block) {
	label := ""
	if len(b.Labels) > 0 {
		label = b.Labels[0]
	}
	shape, known := stockShapes[label]
	switch {
	case p.stock != nil:
		c.report(fault(b.DefRange(), fmt.Sprintf("%s has a second stock", p.title()),
			"A part is cut from one piece; the first is in line %d.", p.stock.head().Start.Line))
		if known {
			c.strays = append(c.strays, c.enter(b, p.path(), p.inches, shape, kindLabel))
		}
		return
	case slices.Contains(laterStock, label):
		c.report(fault(b.LabelRanges[0], fmt.Sprintf("Stock %q is not known to this version", label),
			"It plans turned parts from a bar, a tube, a hexagon or an existing piece, flat parts from plate or sheet, and either from a casting."))
	case label != "" && !known:
		c.report(fault(b.LabelRanges[0], fmt.Sprintf("There is no stock %q", label), "%s", orList(label, slices.Concat(stockKinds, flatStock[:2]))))
	default:
		p.stock = c.enter(b, p.path(), p.inches, shape, kindLabel)
		for _, inner := range b.Body.Blocks {
			if slices.Contains(shape.blocks, inner.Type) {
				p.stock.children = c.gatherFeature(p.stock.children, inner, p.stock)
			}
		}
		return
	}
	p.stock = &entry{word: "stock", block: b, inside: p.path(), broken: true}
}

func (c *checker) buildStock(p *partEntry, s *shaper) Stock {
	e := p.stock
	if e == nil {
		return Stock{}
	}
	if e.broken {
		s.ownStock(e)
		return Stock{}
	}
	if suits := map[bool][]string{true: flatStock, false: stockKinds}[s.flat]; !slices.Contains(suits, e.name) {
		s.wrongStock(p)
		return Stock{}
	}
	stock := Stock{Length: e.dimension("length"), Rough: e.flag("rough"), Range: e.head()}
	switch e.name {
	case "bar":
		stock.Kind, stock.Outside = Bar, s.size(e, "diameter", useShaft)
	case "hexagon":
		stock.Kind, stock.Outside = Hexagon, s.size(e, "across_flats", useShaft)
	case "tube":
		stock.Kind, stock.Outside, stock.Inside = Tube, s.size(e, "outside", useShaft), s.size(e, "inside", useHole)
		if stock.Inside.Value >= stock.Outside.Value-sameLength {
			c.fail(e, e.at("inside"), "The tube has no wall", "Its inside is %s, its outside %s.", s.shown(stock.Inside.Value),
				s.shown(stock.Outside.Value))
		}
	case "existing":
		c.buildExisting(e, s, &stock)
	case "plate", "sheet":
		s.rolledStock(e, &stock)
	case "casting":
		stock.Kind, stock.Rough, stock.Metal = Casting, true, e.length("metal")
	}
	if e.broken {
		return Stock{}
	}
	for _, size := range []*Size{&stock.Outside, &stock.Inside, &stock.Thickness} {
		if size.general && stock.Kind != Existing {
			*size = size.within(units.Limits{Low: size.Low, High: size.High}, "stock as bought, taken at ISO 2768-"+s.part.General)
		}
	}
	return stock
}

// buildExisting resolves the shape of a piece that is there already, like a
// part's own.
func (c *checker) buildExisting(e *entry, s *shaper, stock *Stock) {
	stock.Kind = Existing
	piece := &Part{Name: e.title(), General: s.part.General, Inches: s.part.Inches, Length: s.size(e, "length", useLength)}
	shape := &shaper{c: c, part: piece, owner: e, entries: e.children}
	stock.Features, stock.At = shape.build(), -e.length("at")
	if e.length("at") < 0 {
		c.fail(e, e.at("at"), "The part begins outside the existing piece",
			"at counts from the piece's left end to the part's: write 0 or more.")
	}
	if shape.doubt {
		e.broken = true
		return
	}
	for _, p := range shape.outsidePieces() {
		if _, most := p.extremes(); 2*most > stock.Outside.Value {
			at := Size{Dimension: units.Dimension{Value: 2 * most, InInches: piece.Inches}, Range: e.head()}
			stock.Outside = exact(at.Dimension, at.Range, "largest diameter of the existing piece")
			if f, ok := shape.done[p.name].(*Spigot); ok {
				stock.Outside = f.Diameter
			}
		}
	}
	stock.Inside = shape.throughBore()
	s.existing = shape
}

// throughBore is the smallest bore that goes right through, else zero.
func (s *shaper) throughBore() Size {
	for _, e := range s.entries {
		if b, ok := s.done[e.name].(*Bore); ok && b.Through {
			return b.Diameter
		}
	}
	return Size{}
}
