package partspec

import (
	"fmt"
	"math"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

// edgeSaid is what may be said of one edge of an outline.
var edgeSaid = shapeOf{attrs: []attr{may("finish_by", kindWord), may("as_supplied", kindFlag), may("note", kindText)}}

var outlined = shapeOf{
	attrs:  []attr{may("datum", kindTexts), may("finish_by", kindWord), may("note", kindText)},
	blocks: []string{"edge"},
}

var outlineShapes = map[string]shapeOf{
	"rectangle":    outlined.with(need("width", kindSize), need("height", kindSize), may("corner_radius", kindSize)),
	"disc":         {attrs: []attr{need("diameter", kindSize), may("finish_by", kindWord), may("note", kindText)}},
	"round_topped": outlined.with(need("width", kindSize), need("height", kindSize), need("radius", kindSize)),
	"chain":        {attrs: outlined.attrs, blocks: []string{"start", "line", "arc"}},
}

var outlineKinds = []string{"rectangle", "disc", "round_topped", "chain"}

// gatherOutline enters the outline of a flat part and the blocks inside it.
func (c *checker) gatherOutline(p *partEntry, b *hclsyntax.Block) {
	label := ""
	if len(b.Labels) > 0 {
		label = b.Labels[0]
	}
	shape, known := outlineShapes[label]
	if p.outline != nil {
		c.report(fault(b.DefRange(), fmt.Sprintf("%s has a second outline", p.title()),
			"A flat part has one; the first is in line %d.", p.outline.head().Start.Line))
		if known {
			c.strays = append(c.strays, c.enter(b, p.path(), p.inches, shape, kindLabel))
		}
		return
	}
	if label != "" && !known {
		c.report(fault(b.LabelRanges[0], fmt.Sprintf("There is no outline %q", label), "%s", orList(label, outlineKinds)))
		p.outline = &entry{word: "outline", block: b, inside: p.path(), broken: true}
		return
	}
	p.outline = c.enter(b, p.path(), p.inches, shape, kindLabel)
	if label == "chain" {
		c.gatherChain(p.outline, b)
	}
	for _, inner := range b.Body.Blocks {
		if inner.Type == "edge" && slices.Contains(shape.blocks, "edge") {
			p.outline.children = append(p.outline.children, c.enter(inner, p.outline.path(), p.inches, edgeSaid, nameLabel))
		}
	}
}

// buildOutline makes the edge of a flat part; nil after an error.
func (s *shaper) buildOutline(e *entry) *Outline {
	if e.broken {
		s.ownSizes(e, useLength, "width", "height", "radius", "corner_radius")
		s.ownSizes(e, useShaft, "diameter")
		return nil
	}
	o := &Outline{Kind: e.name, Range: e.head()}
	switch e.name {
	case "rectangle":
		s.rectangle(e, o)
	case "disc":
		s.disc(e, o)
	case "round_topped":
		s.roundTopped(e, o)
	case "chain":
		s.chain(e, o)
	}
	s.datum(e, o)
	s.edgesSaid(e, o)
	if e.broken {
		return nil
	}
	return o
}

// cornerName names the rounded corners of a rectangle, anticlockwise from the right end of the bottom.
var cornerName = []string{"bottom_right", "top_right", "top_left", "bottom_left"}

// rectangle lies with its lower left corner on the origin.
func (s *shaper) rectangle(e *entry, o *Outline) {
	width, height := s.size(e, "width", useLength), s.size(e, "height", useLength)
	corner := s.size(e, "corner_radius", useEdge)
	w, h, r := width.Value, height.Value, corner.Value
	if 2*r > min(w, h)-sameLength && r > 0 {
		s.c.fail(e, e.at("corner_radius"), "The corners leave no straight edge",
			"Two of them take %s of a side of %s: write a smaller radius, or draw the outline as a disc or round_topped.", s.shown(2*r), s.shown(min(w, h)))
		return
	}
	o.Width, o.Height, o.Radius = width, height, corner
	across, up := edgeLimits(width, "width"), edgeLimits(height, "height")
	sides := []OutlineEdge{
		across0("bottom", r, 0, w-r, 0), across.line("right", w, r, w, h-r),
		up.line("top", w-r, h, r, h), across0("left", 0, h-r, 0, r),
	}
	centres := [][2]units.Length{{w - r, r}, {w - r, h - r}, {r, h - r}, {r, r}}
	for i, side := range sides {
		side.Range = e.head()
		o.Edges = append(o.Edges, side)
		if r > 0 {
			next := sides[(i+1)%len(sides)]
			o.Edges = append(o.Edges, edgeLimits(corner, "corner radius").arc(cornerName[i], side.X1, side.Y1, next.X0, next.Y0, centres[i][0], centres[i][1], r))
		}
	}
}

// disc has its centre on the origin, and one edge that ends where it begins.
func (s *shaper) disc(e *entry, o *Outline) {
	d := s.size(e, "diameter", useShaft)
	r := d.Value / 2
	o.Width = d
	rim := within{(d.Value - d.Low) / 2, (d.High - d.Value) / 2, "half of the diameter's, " + d.Basis}
	o.Edges = []OutlineEdge{rim.arc("rim", r, 0, r, 0, 0, 0, r)}
}

// roundTopped stands with its lower left corner on the origin; its top is an arc about the middle of the width, height above the bottom.
func (s *shaper) roundTopped(e *entry, o *Outline) {
	width, height, radius := s.size(e, "width", useLength), s.size(e, "height", useLength), s.size(e, "radius", useLength)
	w, h, r := width.Value, height.Value, radius.Value
	if r < w/2-sameLength {
		s.c.fail(e, e.at("radius"), "The round top does not reach the sides",
			"Its radius is %s, half of the width %s: write at least that.", s.shown(r), s.shown(w/2))
		return
	}
	r = max(r, w/2)
	shoulder := (h + units.Length(math.Sqrt(float64(r*r-w*w/4)))).Round(positionDecimals)
	across := edgeLimits(width, "width")
	o.Width, o.Height, o.Radius = width, height, radius
	o.Edges = []OutlineEdge{
		across0("bottom", 0, 0, w, 0), across.line("right", w, 0, w, shoulder),
		edgeLimits(radius, "radius").arc("top", w, shoulder, 0, shoulder, w/2, h, r), across0("left", 0, shoulder, 0, 0),
	}
}

// within is how far an edge may lie inside and outside of its place.
type within struct {
	off, on units.Length
	basis   string
}

// edgeLimits are those of the size that ends at the edge.
func edgeLimits(size Size, of string) within {
	return within{size.Value - size.Low, size.High - size.Value, of + " " + size.Basis}
}

func (w within) line(name string, x0, y0, x1, y1 units.Length) OutlineEdge {
	return OutlineEdge{Name: name, X0: x0, Y0: y0, X1: x1, Y1: y1, Off: w.off, On: w.on, Basis: w.basis}
}

func (w within) arc(name string, x0, y0, x1, y1, cx, cy, r units.Length) OutlineEdge {
	e := w.line(name, x0, y0, x1, y1)
	e.Arc, e.CX, e.CY, e.Radius = true, cx, cy, r
	return e
}

// across0 is an edge on an axis of the frame.
func across0(name string, x0, y0, x1, y1 units.Length) OutlineEdge {
	return within{basis: datumBasis}.line(name, x0, y0, x1, y1)
}

const datumBasis = "a datum: coordinates begin here"

// edgesSaid reads what the outline says of single edges, and of all.
func (s *shaper) edgesSaid(e *entry, o *Outline) {
	all := s.byFile(e)
	for i := range o.Edges {
		o.Edges[i].FinishFile, o.Edges[i].Range = all, e.head()
	}
	for k, said := range e.children {
		if said.broken {
			e.broken = true
			continue
		}
		if said.word == "start" {
			continue
		}
		i := slices.IndexFunc(o.Edges, func(edge OutlineEdge) bool { return edge.Name == said.name })
		switch {
		case i < 0 && len(o.Edges) > 0:
			s.c.fail(e, said.head(), fmt.Sprintf("There is no edge %q", said.name), "%s", didYouMean(said.name, o.edgeNames(), "Draw it, or leave it out."))
		case slices.ContainsFunc(e.children[:k], func(other *entry) bool { return other.name == said.name }):
			s.c.fail(e, said.head(), fmt.Sprintf("A second edge %q", said.name), "Say all of it in one block.")
		case i >= 0:
			s.edgeSaid(e, said, &o.Edges[i])
		}
	}
}

func (s *shaper) edgeSaid(e, said *entry, edge *OutlineEdge) {
	edge.FinishFile = edge.FinishFile && !said.flag("as_supplied") || s.byFile(said)
	edge.AsSupplied, edge.Range = said.flag("as_supplied"), said.head()
	if said.broken {
		e.broken = true
	}
	switch {
	case edge.AsSupplied && said.has("finish_by"):
		s.c.fail(e, said.at("finish_by"), fmt.Sprintf("Edge %q is left and filed", said.name), "Leave out as_supplied or finish_by.")
	case edge.AsSupplied && edge.Arc:
		s.c.fail(e, said.at("as_supplied"), fmt.Sprintf("Edge %q is an arc", said.name), "Only a straight edge can be the stock's own.")
	}
}

// byFile reads finish_by.
func (s *shaper) byFile(e *entry) bool {
	switch by := e.text("finish_by"); by {
	case "":
		return false
	case "file":
		return true
	default:
		s.c.fail(e, e.at("finish_by"), fmt.Sprintf("%s cannot be finished by %q", e.title(), by), `Write finish_by = "file", or leave it out.`)
		return false
	}
}
