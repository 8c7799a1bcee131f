package partspec

import (
	"fmt"
	"math"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

// chainShapes are the blocks of an outline that is told edge by edge.
var chainShapes = map[string]shapeOf{
	"start": {attrs: []attr{need("at", kindPlace)}},
	"line":  edgeSaid.with(may("to", kindPlace)),
	"arc": edgeSaid.with(may("to", kindPlace), may("radius", kindSize), may("centre", kindPlace), may("through", kindPlace), may("bulge", kindWord),
		may("tangent", kindFlag)),
}

// gatherChain enters the edges of an outline. Each has a name of its own.
func (c *checker) gatherChain(outline *entry, b *hclsyntax.Block) {
	for _, inner := range b.Body.Blocks {
		shape, known := chainShapes[inner.Type]
		if !known {
			continue // told already
		}
		if len(outline.children) == maxEdges {
			c.fail(outline, inner.DefRange(), "The outline has too many edges", "At most %d are read.", maxEdges)
			return
		}
		label := nameLabel
		if inner.Type == "start" {
			label = noLabel
		}
		e := c.enter(inner, outline.path(), outline.inches, shape, label)
		if first := slices.IndexFunc(outline.children, func(o *entry) bool { return o.name == e.name && e.name != "" }); first >= 0 {
			c.fail(e, e.head(), fmt.Sprintf("A second edge %q", e.name), "The first is in line %d. Give this one another name.", outline.children[first].head().Start.Line)
		}
		outline.children = append(outline.children, e)
	}
}

// link is one edge of a chain on its way to its place.
type link struct {
	entry  *entry
	from   vec // known once solved
	to     vec
	ends   bool // to is written
	ball   bool // an arc about a centre that is written, between two lines that touch it
	corner bool // an arc that rounds the corner between two lines
	out    bool // of an arc: metal stands out
	centre vec
	radius float64
	limit  Size // of an arc: the radius with its limits
	place  Point
}

// chain builds an outline that is told edge by edge, anticlockwise as seen from the front.
func (s *shaper) chain(e *entry, o *Outline) {
	links, start, begun := s.links(e)
	if e.broken {
		return
	}
	if !s.solveChain(e, links, start, begun) || !s.roundCorners(e, links) {
		e.broken = true
		return
	}
	for _, l := range links {
		o.Edges = append(o.Edges, s.chainEdge(l))
	}
	s.checkChain(e, o)
}

// links reads the blocks of a chain.
func (s *shaper) links(e *entry) (list []*link, start vec, begun bool) {
	for i, block := range e.children {
		switch {
		case block.broken:
			e.broken = true
		case block.word == "start" && i > 0:
			s.c.fail(e, block.head(), "The outline starts once", "Write start { at = [0, 0] } before all edges, and once.")
		case block.word == "start":
			if p, ok := s.place(block, "at"); ok {
				start, begun = at(p), true
			}
		default:
			list = append(list, s.link(e, block))
		}
		if block.broken {
			e.broken = true
		}
	}
	const least = 2
	if len(list) < least && !e.broken {
		s.c.fail(e, e.head(), "The outline has no shape", "Write start { at = [0, 0] }, then line and arc blocks, each on lines of its own and with a name, around the part and back to the start.")
	}
	return list, start, begun
}

func (s *shaper) link(e, block *entry) *link {
	l := &link{entry: block}
	if p, ok := s.place(block, "to"); ok {
		l.to, l.ends, l.place = at(p), true, p
	}
	if block.word == "line" {
		return l
	}
	l.out = true
	switch bulge := block.text("bulge"); bulge {
	case "", "out":
	case "in":
		l.out = false
	default:
		s.c.fail(e, block.at("bulge"), fmt.Sprintf("An arc cannot bulge %q", bulge), `Write bulge = "out" when metal stands out (also when none is written), bulge = "in" for a hollow.`)
	}
	l.limit = s.size(block, "radius", useLength)
	l.radius = float64(l.limit.Value)
	if p, ok := s.place(block, "centre"); ok {
		l.centre = at(p)
	}
	s.arcWays(e, block, l)
	return l
}

// arcWays: an arc is told in one of six ways.
func (s *shaper) arcWays(e, block *entry, l *link) {
	r, c, t, p := block.has("radius"), block.has("centre"), block.flag("tangent"), block.has("through")
	switch {
	case l.ends && (r && !c && !t && !p || !r && c && !t && !p || !r && !c && t != p):
	case !l.ends && r && c && !t && !p:
		l.ball = true
	case !l.ends && r && !c && !t && !p:
		l.corner = true
	default:
		s.c.fail(e, block.head(), fmt.Sprintf("Arc %q is not told once", block.name),
			"With to write one of: radius and bulge; centre; tangent = true; through. Without to write radius alone to round the corner of two lines, or centre and radius for an arc that the lines before and behind it touch.")
	}
	if (t || p) && block.has("bulge") {
		s.c.fail(e, block.at("bulge"), fmt.Sprintf("Arc %q has its bulge already", block.name), "Leave bulge out: the edge before it, or the point on it, tells.")
	}
}

// chainEdge is a solved link as an edge of the outline, with its limits.
func (s *shaper) chainEdge(l *link) OutlineEdge {
	mm := func(x float64) units.Length { return units.Length(x).Round(positionDecimals) }
	edge := within{}.line(l.entry.name, mm(l.from.x), mm(l.from.y), mm(l.to.x), mm(l.to.y))
	edge.Range = l.entry.head()
	if l.entry.word == "arc" {
		edge.Arc, edge.CX, edge.CY, edge.Radius, edge.Hollow = true, mm(l.centre.x), mm(l.centre.y), mm(l.radius), !l.out
		limit := l.limit
		if limit.Value == 0 {
			limit = s.derived(l.entry, "radius", max(edge.Radius, leastSize), useLength)
		}
		w := edgeLimits(limit, "radius")
		edge.Off, edge.On, edge.Basis = w.off, w.on, w.basis
		if edge.Hollow { // a larger hollow takes metal
			edge.Off, edge.On = w.on, w.off
		}
		return edge
	}
	s.lineLimits(l, &edge)
	return edge
}

// lineLimits are those of the coordinate that a line along X or Y ends at, else the general tolerance of its farthest coordinate.
func (s *shaper) lineLimits(l *link, edge *OutlineEdge) {
	size := Size{}
	switch {
	case l.ends && (edge.X0-edge.X1).Abs() <= sameLength:
		size = l.place.X
	case l.ends && (edge.Y0-edge.Y1).Abs() <= sameLength:
		size = l.place.Y
	}
	if size.Basis == "" {
		far := max(edge.X0.Abs(), edge.Y0.Abs(), edge.X1.Abs(), edge.Y1.Abs(), leastGeneral)
		size = s.derived(l.entry, "edge", far, useLength)
	}
	either := min(size.High-size.Value, size.Value-size.Low)
	edge.Off, edge.On, edge.Basis = either, either, size.Basis
}

// checkChain: the outline is closed by what was solved; here it may not run the wrong way round or cross itself.
func (s *shaper) checkChain(e *entry, o *Outline) {
	for _, edge := range o.Edges {
		if units.Length(edge.figure().Length()) < leastSize {
			s.c.fail(e, edge.Range, fmt.Sprintf("Edge %q has no length", edge.Name), "It ends where it begins: take it out, or write another to.")
			return
		}
	}
	region := o.region()
	if i, k, where, crosses := region.Crossing(); crosses {
		s.c.fail(e, o.Edges[k].Range, "The outline crosses itself", "Edge %q meets edge %q at [%s, %s].", o.Edges[k].Name, o.Edges[i].Name,
			units.Decimal(where[0], 3), units.Decimal(where[1], 3))
		return
	}
	if area := region.Area(); area < 0 {
		s.c.fail(e, e.head(), "The outline runs clockwise", "Tell its edges anticlockwise, as seen from the front: along the bottom to the right first.")
	} else if units.Length(math.Sqrt(area)) < leastSize {
		s.c.fail(e, e.head(), "The outline holds no metal", "Its edges run back over themselves.")
	}
}
