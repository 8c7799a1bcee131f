package drawing

import (
	"math"
	"sort"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// curve is one edge of the section, from left to right.
type curve []plan.Segment

func mm(l units.Length) float64 { return float64(l) }

func line(z0, r0, z1, r1 float64) plan.Segment { return plan.Segment{Z0: z0, R0: r0, Z1: z1, R1: r1} }

// outside is the outer edge of the nominal part.
func outside(p *partspec.Part) curve {
	var c curve
	for _, f := range p.Features {
		c = append(c, block(p, f)...)
	}
	sort.SliceStable(c, func(i, j int) bool { return c[i].Z0 < c[j].Z0 })
	for _, g := range grooves(p) {
		c = c.replace(mm(g.Span.Left), mm(g.Span.Right), grooveShape(g, c))
	}
	return c.worked(p, false)
}

// block is what a feature makes of the outside.
func block(p *partspec.Part, f partspec.Feature) curve {
	switch f := f.(type) {
	case *partspec.Spigot:
		r := mm(f.Diameter.Value) / 2
		if f.AsSupplied {
			r = mm(p.Stock.EnvelopeDiameter()) / 2
		}
		return curve{line(mm(f.Span.Left), r, mm(f.Span.Right), r)}
	case *partspec.Taper:
		if !f.Inside {
			return cone(f)
		}
	case *partspec.Profile:
		var c curve
		for _, s := range f.Segments {
			c = append(c, profileSegment(s))
		}
		return c
	}
	return nil
}

func cone(f *partspec.Taper) curve {
	left, right := f.Small, f.Large
	if f.LargeAt == partspec.Left {
		left, right = f.Large, f.Small
	}
	return curve{line(mm(f.Span.Left), mm(left.Value)/2, mm(f.Span.Right), mm(right.Value)/2)}
}

func profileSegment(s partspec.Segment) plan.Segment {
	out := line(mm(s.Z0), mm(s.R0), mm(s.Z1), mm(s.R1))
	if s.Arc {
		out.RadiusMM, out.CentreZ, out.CentreR = mm(s.Radius), mm(s.CentreZ), mm(s.CentreR)
	}
	return out
}

// grooves are a part's outside grooves, shallow ones first, so that one cut in another's bottom comes after it.
func grooves(p *partspec.Part) []*partspec.Groove {
	var out []*partspec.Groove
	for _, f := range p.Features {
		if g, ok := f.(*partspec.Groove); ok {
			out = append(out, g)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Bottom.Value > out[j].Bottom.Value })
	return out
}

// grooveShape is a groove's bottom, with its flanks where they lean.
func grooveShape(g *partspec.Groove, c curve) curve {
	left, right, r := mm(g.Span.Left), mm(g.Span.Right), mm(g.Bottom.Value)/2
	flank := (right - left - mm(g.BottomWidth)) / 2
	if flank <= 0 {
		return curve{line(left, r, right, r)}
	}
	out := curve{line(left, c.radius(left), left+flank, r)}
	if g.BottomWidth > 0 {
		out = append(out, line(left+flank, r, right-flank, r))
	}
	return append(out, line(right-flank, r, right, c.radius(right)))
}

// radius is the greatest radius of a curve at a place.
func (c curve) radius(z float64) float64 {
	r := 0.0
	for _, s := range c {
		if s.Z0 <= z && z <= s.Z1 {
			r = max(r, at(s, z))
		}
	}
	return r
}

// replace puts other segments between two places.
func (c curve) replace(from, to float64, with curve) curve {
	var out curve
	placed := false
	for _, s := range c {
		if left, ok := cut(s, math.Inf(-1), from); ok {
			out = append(out, left)
		}
		if !placed && s.Z1 > from {
			out, placed = append(out, with...), true
		}
		if right, ok := cut(s, to, math.Inf(1)); ok {
			out = append(out, right)
		}
	}
	return out
}

// cut keeps the part of a segment between two places.
func cut(s plan.Segment, from, to float64) (plan.Segment, bool) {
	if s.Z1 <= from || s.Z0 >= to {
		return s, false
	}
	whole := s
	if s.Z0 < from {
		s.Z0, s.R0 = from, at(whole, from)
	}
	if s.Z1 > to {
		s.Z1, s.R1 = to, at(whole, to)
	}
	return s, true
}

// at is the radius of a segment at a place along it.
func at(s plan.Segment, z float64) float64 {
	switch {
	case z == s.Z0:
		return s.R0
	case z == s.Z1 || s.Z1 == s.Z0:
		return s.R1
	case s.RadiusMM == 0:
		return s.R0 + (s.R1-s.R0)*(z-s.Z0)/(s.Z1-s.Z0)
	}
	rise := math.Sqrt(max(0, s.RadiusMM*s.RadiusMM-(z-s.CentreZ)*(z-s.CentreZ)))
	if s.R0+s.R1 < 2*s.CentreR {
		rise = -rise
	}
	return s.CentreR + rise
}
