package partspec

import (
	"fmt"
	"math"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

var profileShape = shapeOf{
	attrs: append([]attr{
		may("finish_by", kindWord), may("zone", kindLengths), may("roughness", kindNumber), may("note", kindText),
	}, placeOf...),
	blocks: []string{"start", "line", "arc"},
}

// segmentShapes are the blocks inside a profile, and the point inside an arc.
var segmentShapes = map[string]shapeOf{
	"start": {attrs: []attr{need("diameter", kindLength)}},
	"line":  {attrs: []attr{need("length", kindLength), need("diameter", kindLength)}},
	"arc": {
		attrs: []attr{
			need("length", kindLength), need("diameter", kindLength), may("radius", kindLength), may("bulge", kindWord),
			may("tangent", kindFlag),
		},
		blocks: []string{"through"},
	},
	"through": {attrs: []attr{need("at", kindLength), need("diameter", kindLength)}},
}

// profile builds an outside shape of lines and arcs, from left to right.
func (s *shaper) profile(e *entry) Feature {
	f := &Profile{FeatureHead: s.head(e), FinishFile: s.finishFile(e), Roughness: e.number("roughness")}
	f.Segments = s.segments(e)
	if e.broken {
		return nil
	}
	last := f.Segments[len(f.Segments)-1]
	length := s.derived(e, "length", last.Z1, useLength)
	f.Zone = s.zone(e, f.Segments)
	if e.broken {
		return nil
	}
	s.outer = append(s.outer, &outside{entry: e, length: &length, span: &f.Span, piece: f.piece, put: f.moveToPlace})
	return f
}

// moveToPlace shifts the segments, which begin at 0, to where the profile lies.
func (f *Profile) moveToPlace() {
	for i, g := range f.Segments {
		f.Segments[i] = g.shift(f.Span.Left)
	}
	f.Segments[len(f.Segments)-1].Z1 = f.Span.Right
}

func (s *shaper) finishFile(e *entry) bool {
	switch by := e.text("finish_by"); by {
	case "":
		return false
	case "file":
		return true
	default:
		s.c.fail(e, e.at("finish_by"), fmt.Sprintf("A profile cannot be finished by %q", by),
			`Write finish_by = "file", or leave it out.`)
		return false
	}
}

// zone is how far the surface may lie off the drawn one, normal to it: written
// as one figure either way, or as a pair; else half the general tolerance of the
// largest diameter.
func (s *shaper) zone(e *entry, segments []Segment) Size {
	list := e.lengths("zone")
	size := Size{Range: e.at("zone")}
	switch {
	case len(list) == 1 && list[0] > 0:
		return size.within(units.Limits{Low: -list[0], High: list[0]}, "as drawn")
	case len(list) == 2 && list[0] <= 0 && list[1] >= 0 && list[0] < list[1]:
		return size.within(units.Limits{Low: list[0], High: list[1]}, "as drawn")
	case e.has("zone"):
		s.c.fail(e, e.at("zone"), "zone is not a range",
			"Write how much metal may be off and on, normal to the surface: zone = [-0.05, 0.1], or zone = [0.1] for as much either way.")
		return size
	}
	var largest units.Length
	for _, g := range segments {
		_, most := g.extremes()
		largest = max(largest, 2*most)
	}
	general := s.general(e, "zone", Size{Dimension: units.Dimension{Value: largest}, Range: e.head()}, useShaft)
	half := general.Width() / 4 // the tolerance is on the diameter, the zone on the radius, either way
	return size.within(units.Limits{Low: -half, High: half}, "half the "+general.Basis)
}

// gatherSegment enters a block inside a profile.
func (c *checker) gatherSegment(block *hclsyntax.Block, in *entry, shape shapeOf) *entry {
	e := c.enter(block, in.path(), in.inches, shape, noLabel)
	for _, b := range block.Body.Blocks {
		if b.Type == "through" && block.Type == "arc" {
			e.children = append(e.children, c.gatherSegment(b, e, segmentShapes["through"]))
		}
	}
	return e
}

// segments turns the blocks of a profile into lines and arcs, the first
// beginning at 0.
func (s *shaper) segments(e *entry) []Segment {
	if len(e.children) < 2 || e.children[0].word != "start" {
		if !anyBroken(e.children) {
			s.c.fail(e, e.head(), fmt.Sprintf("%s has no shape", e.title()),
				"Write start { diameter = 10 }, then line and arc blocks from left to right.")
		}
		e.broken = true
		return nil
	}
	if anyBroken(e.children) {
		e.broken = true
		return nil
	}
	at := point{0, e.children[0].length("diameter") / 2}
	direction := math.NaN() // slope of the segment before
	var list []Segment
	for _, block := range e.children[1:] {
		if block.word == "start" {
			s.c.fail(e, block.head(), "A profile starts once", "Take the second start out.")
			return nil
		}
		end := point{at.z + block.length("length"), block.length("diameter") / 2}
		g, ok := s.segment(e, block, at, end, direction)
		if !ok {
			return nil
		}
		list = append(list, g)
		at, direction = end, g.slope(end.z)
	}
	return list
}

func anyBroken(list []*entry) bool {
	for _, e := range list {
		if e.broken || anyBroken(e.children) {
			return true
		}
	}
	return false
}

// shift moves a segment along the axis.
func (g Segment) shift(by units.Length) Segment {
	g.Z0, g.Z1, g.CentreZ = (g.Z0 + by).Round(positionDecimals), (g.Z1 + by).Round(positionDecimals), g.CentreZ+by
	if !g.Arc {
		g.CentreZ = 0
	}
	return g
}

// radius is the radius of the part at a position of the segment.
func (g Segment) radius(z units.Length) units.Length {
	if !g.Arc {
		return g.R0 + (g.R1-g.R0)*(z-g.Z0)/(g.Z1-g.Z0)
	}
	dz := z - g.CentreZ
	rise := units.Length(math.Sqrt(max(0, float64(g.Radius*g.Radius-dz*dz))))
	if g.Convex {
		return g.CentreR + rise
	}
	return g.CentreR - rise
}

// slope is the change of the radius along the axis at an end of the segment.
func (g Segment) slope(z units.Length) float64 {
	if !g.Arc {
		return float64((g.R1 - g.R0) / (g.Z1 - g.Z0))
	}
	return -float64((z - g.CentreZ) / (g.radius(z) - g.CentreR))
}

// extremes are the least and the greatest radius of the segment.
func (g Segment) extremes() (least, most units.Length) {
	least, most = min(g.R0, g.R1), max(g.R0, g.R1)
	if g.Arc && g.Z0 < g.CentreZ && g.CentreZ < g.Z1 {
		top := g.radius(g.CentreZ)
		least, most = min(least, top), max(most, top)
	}
	return least, most
}

// piece joins the segments, once they have their place.
func (f *Profile) piece() piece {
	p := piece{name: f.Name, span: f.Span}
	for _, g := range f.Segments {
		p.turns = append(p.turns, g.Z0)
		if g.Arc && g.Z0 < g.CentreZ && g.CentreZ < g.Z1 {
			p.turns = append(p.turns, g.CentreZ)
		}
	}
	p.radius = func(z units.Length) units.Length {
		for _, g := range f.Segments {
			if z <= g.Z1 {
				return g.radius(z)
			}
		}
		return f.Segments[len(f.Segments)-1].R1
	}
	return p
}
