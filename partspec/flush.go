package partspec

import (
	"math"
	"slices"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Flush is how two flat parts lie on each other with their datum edges flush.
type Flush struct {
	Here, There [2]string // datum edges of this part, across X and across Y, and those of the other part that come flush with them
	Over        bool      // the other part is turned over: its face of the same name lies on this one
}

// leastTouch is the shortest stretch along which two edges that are laid flush touch a straight bar. Ours, no source.
const leastTouch = 5.0

// flushOf finds how two flat parts lie with their datum edges flush and one pattern over the other, and how far they may shift so, radially at the hole where it is
// the most; else why they do not.
func flushOf(here, there *Part, f, mate *Holes) (lies *Flush, slack units.Length, why string) {
	for _, p := range []*Part{here, there} {
		if p.Outline == nil || len(p.Outline.Datum) != 2 {
			return nil, 0, p.Name + " has no two datum edges"
		}
		for _, name := range p.Outline.Datum {
			if e, _ := p.Outline.Edge(name); e.AsSupplied {
				return nil, 0, "the " + name + " edge of " + p.Name + " stays as supplied, and is not straight enough"
			}
		}
	}
	a, b := here.Outline.corner(), there.Outline.corner()
	why = "the two patterns do not lie alike about the datum edges of their parts, on faces that come together"
	for _, crossed := range []bool{false, true} {
		over := a.mirrored(b) != crossed
		down := f.From.Other() // what of the other part lies on this one
		if over {
			down = f.From
		}
		if mate.Sink != nil && mate.From == down || !a.alike(f.Places, b, mate.Places, crossed) {
			continue
		}
		first, second := 0, 1
		if crossed {
			first, second = 1, 0
		}
		lies = &Flush{Here: [2]string{here.Outline.Datum[0], here.Outline.Datum[1]}, There: [2]string{there.Outline.Datum[first], there.Outline.Datum[second]}, Over: over}
		touch := [2]stretch{a.along[0].both(b.along[first]), a.along[1].both(b.along[second])}
		if math.Min(touch[0].length(), touch[1].length()) < leastTouch {
			return nil, 0, "their edges come beside each other along less than " + units.Length(leastTouch).String()
		}
		return lies, a.shift(f.Places, touch), ""
	}
	return nil, 0, why
}

// corner is where the two datum edges of a flat part meet: which way the metal lies from there, and from where to where each edge runs, counted from there into it.
type corner struct {
	x, y, inX, inY float64
	along          [2]stretch // of the edge across X, along Y; of the edge across Y, along X
}

// corner is that of the datum edges; the metal lies on the left of an edge.
func (o *Outline) corner() corner {
	across, _ := o.Edge(o.Datum[0])
	up, _ := o.Edge(o.Datum[1])
	c := corner{x: float64(across.X0), y: float64(up.Y0), inX: math.Copysign(1, float64(across.Y0-across.Y1)), inY: math.Copysign(1, float64(up.X1-up.X0))}
	c.along[0] = stretched((float64(across.Y0)-c.y)*c.inY, (float64(across.Y1)-c.y)*c.inY)
	c.along[1] = stretched((float64(up.X0)-c.x)*c.inX, (float64(up.X1)-c.x)*c.inX)
	return c
}

// in is how far a place lies from the edge across X and from the one across Y.
func (c corner) in(at Point) (x, y float64) {
	return (float64(at.X.Value) - c.x) * c.inX, (float64(at.Y.Value) - c.y) * c.inY
}

// mirrored reports whether two corners are mirror images of each other as both parts are drawn.
func (c corner) mirrored(d corner) bool { return c.inX*c.inY != d.inX*d.inY }

// alike reports whether every hole here lies on one there once the corners lie on each other; crossed: the edge across X on the one across Y.
func (c corner) alike(here []Point, d corner, there []Point, crossed bool) bool {
	return !slices.ContainsFunc(here, func(p Point) bool {
		x, y := c.in(p)
		return !slices.ContainsFunc(there, func(q Point) bool {
			u, v := d.in(q)
			if crossed {
				u, v = v, u
			}
			return math.Hypot(x-u, y-v) <= samePlaces
		})
	})
}

// shift is how far a hole may come from where it would with the edges quite flush. Two edges that touch a bar are flush within so much at each touch: at both ends of the
// longer stretch, which keeps the part from turning, and somewhere along the other.
func (c corner) shift(places []Point, touch [2]stretch) units.Length {
	each := float64(tables.PlaceError(tables.ByFlush))
	crosswise := touch[1].length() > touch[0].length()
	long, other := touch[0], touch[1]
	if crosswise {
		long, other = other, long
	}
	turn, most := 2*each/long.length(), 0.0
	for _, at := range places {
		in, along := c.in(at)
		if crosswise {
			in, along = along, in
		}
		square := each * math.Max(1, math.Abs(2*along-long.from-long.to)/long.length())
		beside := each + turn*math.Max(math.Abs(in-other.from), math.Abs(in-other.to))
		most = math.Max(most, math.Hypot(square, beside))
	}
	return units.Length(most)
}

// stretch is a part of a line.
type stretch struct{ from, to float64 }

func stretched(a, b float64) stretch { return stretch{math.Min(a, b), math.Max(a, b)} }

func (s stretch) both(t stretch) stretch {
	return stretch{math.Max(s.from, t.from), math.Min(s.to, t.to)}
}

func (s stretch) length() float64 { return s.to - s.from }
