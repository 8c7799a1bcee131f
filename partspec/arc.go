package partspec

import (
	"math"

	"catchplate/partspec/units"
)

// point is a place in the half plane: along the axis, and off it.
type point struct{ z, r units.Length }

// segment builds one line or arc between two points.
func (s *shaper) segment(e, block *entry, from, to point, direction float64) (Segment, bool) {
	g := Segment{Z0: from.z, R0: from.r, Z1: to.z, R1: to.r}
	if block.word == "line" {
		return g, true
	}
	g.Arc = true
	ok := false
	ways := 0
	for _, way := range []bool{block.has("radius"), block.flag("tangent"), len(block.children) > 0} {
		if way {
			ways++
		}
	}
	switch {
	case ways != 1:
		s.c.fail(e, block.head(), "The arc is not told once",
			`Write radius and bulge = "in" or "out", or tangent = true, or through { at = 5, diameter = 12 }.`)
	case block.has("radius"):
		ok = s.arcOfRadius(e, block, &g)
	case block.flag("tangent"):
		ok = s.arcTangent(e, block, &g, direction)
	default:
		ok = s.arcThrough(e, block, &g)
	}
	return g, ok && s.checkArc(e, block, g)
}

// bulge reports whether metal stands out in an arc, and whether the file tells.
func (s *shaper) bulge(e, block *entry) (out, ok bool) {
	switch block.text("bulge") {
	case "out":
		return true, true
	case "in":
		return false, true
	}
	s.c.fail(e, block.at("bulge"), "The arc does not say which way it bulges",
		`Write bulge = "out" when metal stands out, bulge = "in" for a hollow.`)
	return false, false
}

// arcOfRadius: the centre lies on the perpendicular of the chord's middle, at
// sqrt(radius^2 - (chord/2)^2) from it; below the chord for an outward bulge.
func (s *shaper) arcOfRadius(e, block *entry, g *Segment) bool {
	var ok bool
	if g.Convex, ok = s.bulge(e, block); !ok {
		return false
	}
	g.Radius = block.length("radius")
	dz, dr := g.Z1-g.Z0, g.R1-g.R0
	chord := units.Length(math.Hypot(float64(dz), float64(dr)))
	square := g.Radius*g.Radius - chord*chord/4
	if square < 0 {
		s.c.fail(e, block.at("radius"), "The radius is too small for the arc",
			"The ends are %s apart, so the radius is at least %s.", s.shown(chord), s.shown(chord/2))
		return false
	}
	off := units.Length(math.Sqrt(float64(square)))
	if g.Convex {
		off = -off
	}
	g.CentreZ = (g.Z0+g.Z1)/2 - off*dr/chord
	g.CentreR = (g.R0+g.R1)/2 + off*dz/chord
	return true
}

// arcTangent: the centre lies on the normal of the segment before, as far from
// the arc's end as from its start. With the slope m at the start, chord (dz, dr):
// signed distance along the normal (-m, 1)/sqrt(1+m^2) is
// (dz^2+dr^2) sqrt(1+m^2) / (2 (dr - m dz)).
func (s *shaper) arcTangent(e, block *entry, g *Segment, m float64) bool {
	if math.IsNaN(m) {
		s.c.fail(e, block.at("tangent"), "The arc has nothing before it to be tangent to",
			"A tangent arc follows a line or another arc; give this one a radius.")
		return false
	}
	if block.has("bulge") {
		s.c.fail(e, block.at("bulge"), "A tangent arc has its bulge from the segment before", "Leave bulge out.")
		return false
	}
	dz, dr := float64(g.Z1-g.Z0), float64(g.R1-g.R0)
	rise := dr - m*dz
	if math.Abs(rise) < float64(sameLength) {
		s.c.fail(e, block.head(), "The tangent arc is a straight line",
			"Its end lies on the line before it: write a line, or another diameter.")
		return false
	}
	h := math.Sqrt(1 + m*m)
	distance := (dz*dz + dr*dr) * h / (2 * rise)
	g.Radius, g.Convex = units.Length(math.Abs(distance)), distance < 0
	g.CentreZ = g.Z0 - units.Length(distance*m/h)
	g.CentreR = g.R0 + units.Length(distance/h)
	return true
}

// arcThrough: the circle through three points.
func (s *shaper) arcThrough(e, block *entry, g *Segment) bool {
	if block.has("bulge") {
		s.c.fail(e, block.at("bulge"), "An arc through a point has its bulge from the point", "Leave bulge out.")
		return false
	}
	if len(block.children) > 1 {
		s.c.fail(e, block.children[1].head(), "The arc has two points", "One is enough: leave the other out.")
		return false
	}
	through := block.children[0]
	x1, y1 := float64(through.length("at")), float64(through.length("diameter")/2-g.R0)
	x2, y2 := float64(g.Z1-g.Z0), float64(g.R1-g.R0)
	cross := x1*y2 - x2*y1
	if x1 >= x2 {
		s.c.fail(e, through.at("at"), "The point is not between the ends of the arc",
			"at counts from the arc's left end; the arc is %s long.", s.shown(g.Z1-g.Z0))
		return false
	}
	if math.Abs(cross) < float64(sameLength)*x2 {
		s.c.fail(e, through.head(), "The three points lie on one line", "Write a line, or another diameter.")
		return false
	}
	d1, d2 := x1*x1+y1*y1, x2*x2+y2*y2
	cz, cr := (d1*y2-d2*y1)/(2*cross), (x1*d2-x2*d1)/(2*cross)
	g.CentreZ, g.CentreR = g.Z0+units.Length(cz), g.R0+units.Length(cr)
	g.Radius, g.Convex = units.Length(math.Hypot(cz, cr)), cross < 0
	return true
}

// checkArc: an arc has one radius for each position, so it may not turn back
// over itself, and it may not reach the axis.
func (s *shaper) checkArc(e, block *entry, g Segment) bool {
	above := g.R0 > g.CentreR && g.R1 > g.CentreR
	below := g.R0 < g.CentreR && g.R1 < g.CentreR
	least, _ := g.extremes()
	switch {
	case g.Convex && !above || !g.Convex && !below:
		s.c.fail(e, block.head(), "The arc overhangs",
			"It turns past upright, so that no tool can follow it from outside: take a larger radius, or end it sooner.")
		return false
	case least < leastSize:
		s.c.fail(e, block.head(), "The arc reaches the axis",
			"Its smallest diameter comes to %s: take a larger radius, or less of it.", s.shown(2*least))
		return false
	}
	return true
}
