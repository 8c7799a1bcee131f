package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// innerOf is the inside as drawn, to the limits that m asks: the widest of all holes at each place, 0 where the part is solid.
func (d drawing) innerOf(m metal) solid.Curve {
	c := solid.Const(d.z0, d.z1, 0)
	for _, f := range d.features {
		switch f := f.(type) {
		case *partspec.Bore:
			c = d.bore(c, f, m)
		case *partspec.Taper:
			if f.Inside {
				c = solid.Upper(c, d.cone(f, d.inner, m, m.inside(f.Large)/2, m.inside(f.Small)/2))
			}
		case *partspec.Recess:
			z0, z1 := d.holeEnds(float64(f.Span.Left), float64(f.Span.Right), m)
			c = solid.Upper(c, solid.Const(z0, z1, m.inside(f.Diameter)/2))
		}
	}
	return c
}

// holeEnds is ends for a hole: with the least metal it reaches as far as it may, with the most it stops as short as it may.
func (d drawing) holeEnds(left, right float64, m metal) (z0, z1 float64) {
	if m != most {
		return d.ends(d.inner, left, right, m)
	}
	a, b := d.inner.at(left), d.inner.at(right)
	return math.Max(a.hi, d.z0), math.Min(b.lo, d.z1)
}

// bore adds a bore. The point of the drill may stay in the floor of a blind hole unless the floor must be flat.
func (d drawing) bore(c solid.Curve, f *partspec.Bore, m metal) solid.Curve {
	r := m.inside(f.Diameter) / 2
	if f.AsSupplied {
		r = d.stockInner
	}
	z0, z1 := d.holeEnds(float64(f.Span.Left), float64(f.Span.Right), m)
	c = solid.Upper(c, solid.Const(z0, z1, r))
	if m != least || f.Through || f.FlatBottom {
		return c
	}
	point := r / math.Tan(plan.DrillPointDeg/2*math.Pi/180)
	if f.From == partspec.Right {
		return solid.Upper(c, solid.Line(z0-point, 0, z0, r))
	}
	return solid.Upper(c, solid.Line(z1, r, z1+point, 0))
}

// floors finds the floors of blind holes whose drill's point is left: the full diameter ends where the cone begins, which is no step.
func (d drawing) floors(fs faces, work solid.Curve) faces {
	for _, f := range d.features {
		b, ok := f.(*partspec.Bore)
		if !ok || b.Through {
			continue
		}
		floor, towards := float64(b.Span.Right), 1.0
		if b.From == partspec.Right {
			floor, towards = float64(b.Span.Left), -1.0
		}
		if known := fs.at(floor); known.found {
			continue
		}
		at, found := widthEnds(work, floor-towards*d.mouthward(b), towards, float64(b.Diameter.Low)/2-same)
		if !found || math.Abs(at-floor) > stepSearch {
			continue
		}
		fs = fs.with(face{floor, at, true, at, at})
	}
	return fs
}

// mouthward is how far from its floor a bore is certainly open: half its own stretch.
func (d drawing) mouthward(b *partspec.Bore) float64 { return float64(b.Span.Length()) / 2 }

// widthEnds is the last place, going from z in a direction, up to which a hole is at least r in radius.
func widthEnds(c solid.Curve, z, towards, r float64) (at float64, found bool) {
	pieces := c.Pieces()
	if towards < 0 {
		c = c.Mirror()
		pieces = c.Pieces()
		z = -z
	}
	for _, p := range pieces {
		if p.Z1 <= z+same {
			continue
		}
		if math.Min(p.R0, p.R1) >= r {
			at, found = p.Z1, true
			continue
		}
		if p.R0 >= r && !p.IsArc() && p.R0 > p.R1 { // a cone: where it falls below
			at, found = p.Z0+(p.R0-r)/(p.R0-p.R1)*(p.Z1-p.Z0), true
		}
		break
	}
	return at * towards, found
}
