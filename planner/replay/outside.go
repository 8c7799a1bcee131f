package replay

import (
	"math"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/solid"
)

// knurlUnder is how far under the drawn diameter the blank of a knurl may be, as a part of the pitch (rule C-32: 0.3 to 0.5).
const knurlUnder = 0.5

// outerOf is the outside as drawn, to the limits that m asks.
func (d drawing) outerOf(m metal) solid.Curve {
	features := append([]partspec.Feature(nil), d.features...)
	sort.SliceStable(features, func(i, k int) bool {
		a, _, _ := spanOf(features[i])
		b, _, _ := spanOf(features[k])
		return a < b
	})
	var c solid.Curve
	for _, f := range features {
		if s, ok := d.outerStretch(f, m); ok {
			c = m.fold(c, s)
		}
	}
	for _, f := range features {
		if g, ok := f.(*partspec.Groove); ok {
			c = solid.Lower(c, d.groove(g, m))
		}
	}
	return c.Clip(d.z0, d.z1)
}

// outerStretch is what a feature makes of the outside, if it is one that does.
func (d drawing) outerStretch(f partspec.Feature, m metal) (solid.Curve, bool) {
	switch f := f.(type) {
	case *partspec.Spigot:
		z0, z1 := d.ends(d.outer, float64(f.Span.Left), float64(f.Span.Right), m)
		return solid.Const(z0, z1, d.spigotRadius(f, m)), true
	case *partspec.Taper:
		if f.Inside {
			return solid.Curve{}, false
		}
		return d.cone(f, d.outer, m, m.outside(f.Large)/2, m.outside(f.Small)/2), true
	case *partspec.Profile:
		z0, z1 := d.ends(d.outer, float64(f.Span.Left), float64(f.Span.Right), m)
		return extended(profileCurve(f, m), z0, z1), true
	}
	return solid.Curve{}, false
}

func (d drawing) spigotRadius(f *partspec.Spigot, m metal) float64 {
	switch {
	case f.AsSupplied && d.part.Stock.Kind == partspec.Existing: // it may have several, and what is there is taken as it is
		return float64(f.Diameter.Mid()) / 2
	case f.AsSupplied:
		return d.stockOuter
	}
	r := m.outside(f.Diameter) / 2
	for _, k := range d.features {
		if k, ok := k.(*partspec.Knurl); ok && k.On == f.Name && m == least {
			r -= knurlUnder * float64(k.Pitch) / 2
		}
	}
	return r
}

// cone is a taper between its two ends, drawn out to where its ends may lie.
func (d drawing) cone(f *partspec.Taper, fs faces, m metal, large, small float64) solid.Curve {
	left, right := small, large
	if f.LargeAt == partspec.Left {
		left, right = large, small
	}
	a, b := fs.at(float64(f.Span.Left)).at, fs.at(float64(f.Span.Right)).at
	slope := (right - left) / (b - a)
	z0, z1 := d.ends(fs, float64(f.Span.Left), float64(f.Span.Right), m)
	return solid.Line(z0, left+slope*(z0-a), z1, left+slope*(z1-a))
}

// groove is an outside groove: as wide and deep as it may be, or as narrow and shallow.
func (d drawing) groove(g *partspec.Groove, m metal) solid.Curve {
	r := m.outside(g.Bottom) / 2
	if g.Angle == 0 {
		z0, z1 := d.ends(d.outer, float64(g.Span.Left), float64(g.Span.Right), m)
		return solid.Const(z0, z1, r)
	}
	// A vee: its sides lie off by half the width's tolerance at most, each.
	off := 0.0
	switch m {
	case least:
		off = float64(g.Width.High-g.Width.Value) / 2
	case most:
		off = float64(g.Width.Low-g.Width.Value) / 2
	}
	middleZ := float64(g.Span.Left+g.Span.Right) / 2
	flat := float64(g.BottomWidth)/2 + off
	rise := 1 / math.Tan(g.Angle.Radians()/2)
	reach := float64(g.Width.Value)/2 + math.Abs(off) + stepSearch
	return solid.Line(middleZ-reach, r+(reach-flat)*rise, middleZ-flat, r).
		Join(solid.Const(middleZ-flat, middleZ+flat, r)).
		Join(solid.Line(middleZ+flat, r, middleZ+reach, r+(reach-flat)*rise))
}

// extended draws a curve out to z0..z1 with the radius of its ends.
func extended(c solid.Curve, z0, z1 float64) solid.Curve {
	a, b, ok := c.Domain()
	if !ok {
		return c
	}
	_, first := c.At(a)
	last, _ := c.At(b)
	return c.Clip(z0, z1).Join(solid.Const(z0, a, first)).Join(solid.Const(b, z1, last))
}

// profileCurve is a profile as drawn, or moved normal to itself by the metal that may be off or on.
func profileCurve(f *partspec.Profile, m metal) solid.Curve {
	by := 0.0
	switch m {
	case least:
		by = float64(f.Zone.Low)
	case most:
		by = float64(f.Zone.High)
	}
	var c solid.Curve
	for _, s := range f.Segments {
		c = c.Join(segmentCurve(s))
	}
	if by == 0 {
		return c
	}
	z0, z1, _ := c.Domain()
	for _, s := range f.Segments {
		moved := moved(s, by)
		if by > 0 {
			c = solid.Upper(c, moved)
		} else {
			c = solid.Lower(c, moved)
		}
	}
	return c.Clip(z0, z1)
}

func segmentCurve(s partspec.Segment) solid.Curve {
	z0, r0, z1, r1 := float64(s.Z0), float64(s.R0), float64(s.Z1), float64(s.R1)
	if !s.Arc {
		return solid.Line(z0, r0, z1, r1)
	}
	return solid.Arc(z0, r0, z1, r1, float64(s.CentreZ), float64(s.CentreR), s.Convex)
}

// moved is the bound of a disc of radius |by| rolled along a segment, on the outer side for by > 0, else on the inner side.
func moved(s partspec.Segment, by float64) solid.Curve {
	r := math.Abs(by)
	from, to := solid.Point{Z: float64(s.Z0), R: float64(s.R0)}, solid.Point{Z: float64(s.Z1), R: float64(s.R1)}
	if !s.Arc {
		return rolled(r, from, to, by > 0)
	}
	// On the outside of a convex arc, or the inside of a hollow one, the moved arc has a larger radius; else a smaller one.
	bulge := by
	if !s.Convex {
		bulge = -by
	}
	rho := math.Hypot(from.Z-float64(s.CentreZ), from.R-float64(s.CentreR))
	scale := (rho + bulge) / rho
	place := func(p solid.Point) solid.Point {
		return solid.Point{Z: float64(s.CentreZ) + (p.Z-float64(s.CentreZ))*scale, R: float64(s.CentreR) + (p.R-float64(s.CentreR))*scale}
	}
	ends := over(rolled(r, from, from, by > 0), rolled(r, to, to, by > 0), by > 0)
	if scale <= 0 {
		return ends
	}
	a, b := place(from), place(to)
	return over(solid.Arc(a.Z, a.R, b.Z, b.R, float64(s.CentreZ), float64(s.CentreR), s.Convex), ends, by > 0)
}

// rolled is the bound of a disc whose centre goes along a line.
func rolled(r float64, from, to solid.Point, outer bool) solid.Curve {
	if outer {
		up := solid.RoundEdge(r).SweepInside(from, to)
		return up.Shift(0, r)
	}
	return solid.RoundEdge(r).Sweep(from, to).Shift(0, -r)
}

// over is the outer, or the inner, of two curves wherever either has a value.
func over(a, b solid.Curve, outer bool) solid.Curve {
	if outer {
		return solid.Upper(a, b).Join(b)
	}
	return solid.Lower(a, b).Join(b)
}
