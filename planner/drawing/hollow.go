package drawing

import (
	"math"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// hollow is the inner edge of the nominal part: its holes, and the axis where there is none.
func hollow(p *partspec.Part) curve {
	var holes []curve
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Bore:
			if f.At == nil && f.Span.Left < f.Span.Right {
				r := mm(f.Diameter.Value) / 2
				holes = append(holes, curve{line(mm(f.Span.Left), r, mm(f.Span.Right), r)})
			}
		case *partspec.Taper:
			if f.Inside {
				holes = append(holes, cone(f))
			}
		}
	}
	c := solidBetween(holes, mm(p.Length.Value))
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Bore:
			c = c.point(f)
		case *partspec.Recess:
			r := mm(f.Diameter.Value) / 2
			c = c.replace(mm(f.Span.Left), mm(f.Span.Right), curve{line(mm(f.Span.Left), r, mm(f.Span.Right), r)})
		}
	}
	return c.worked(p, true)
}

// solidBetween joins holes into one curve that runs along the axis where there is no hole.
func solidBetween(holes []curve, length float64) curve {
	sort.SliceStable(holes, func(i, j int) bool { return holes[i][0].Z0 < holes[j][0].Z0 })
	var c curve
	z := 0.0
	for _, h := range holes {
		if h[0].Z0 > z {
			c = append(c, line(z, 0, h[0].Z0, 0))
		}
		c = append(c, h...)
		z = h[len(h)-1].Z1
	}
	if z < length {
		c = append(c, line(z, 0, length, 0))
	}
	return c
}

// point adds the cone that a drill leaves in front of a blind bore, where the bore may keep it and the metal behind it has room.
func (c curve) point(f *partspec.Bore) curve {
	if f.At != nil || f.Through || f.FlatBottom || f.Span.Left >= f.Span.Right {
		return c
	}
	r := mm(f.Diameter.Value) / 2
	deep := r / math.Tan(plan.DrillPointDeg/2*math.Pi/180)
	end := mm(f.Span.At(f.From.Other()))
	from, to := end, end+deep
	if f.From == partspec.Right {
		from, to = end-deep, end
	}
	if !c.solid(from, to) {
		return c
	}
	if f.From == partspec.Right {
		return c.replace(from, to, curve{line(from, 0, to, r)})
	}
	return c.replace(from, to, curve{line(from, r, to, 0)})
}

// solid reports whether the curve lies on the axis all the way between two places.
func (c curve) solid(from, to float64) bool {
	for _, s := range c {
		if s.Z0 <= from && to <= s.Z1 && s.R0 == 0 && s.R1 == 0 {
			return true
		}
	}
	return false
}
