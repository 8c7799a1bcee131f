package steps

import (
	"fmt"
	"math"
)

// Filing rates in mm^3 of metal a minute, for a person who files crests down to a blued line with a second-cut file. Common
// practice, no source: good to a factor of two either way.
const (
	FilingSteelMM3PerMin = 60
	FilingBrassMM3PerMin = 150
)

// FilingMinutes estimates the filing of the crests over a length of surface (of a turned part: the circumference). It returns
// half and twice the plain figure area x length / rate, for the rates are no better known than that.
func (t Table) FilingMinutes(lengthMM, rateMM3PerMin float64) (least, most float64, err error) {
	if !inReach(lengthMM, rateMM3PerMin) || lengthMM <= 0 || rateMM3PerMin <= 0 {
		return 0, 0, fmt.Errorf("the filing time needs a length and a rate above 0")
	}
	plain := t.LeftoverAreaMM2 * lengthMM / rateMM3PerMin
	return plain / 2, plain * 2, nil
}

// leftoverArea is the section of the metal between the cuts' edges and the curve, as far as the cuts reach.
func (f *feeler) leftoverArea(cuts []place) float64 {
	s := f.surface
	area, from := 0.0, max(s.lo, cuts[0].x-f.flat-f.nose)
	end := min(s.hi, cuts[len(cuts)-1].x+f.flat+f.nose)
	for _, g := range s.pieces {
		area -= g.area(from, end)
	}
	var edges []graph
	for n, p := range cuts {
		to := end
		if n+1 < len(cuts) {
			to = min(max(f.meet(p, cuts[n+1]), from), end)
		}
		edges = f.cutAt(edges[:0], p.x, p.y)
		for _, edge := range edges {
			area += edge.area(from, to)
		}
		from = to
	}
	return max(0, area)
}

// area is the integral of g from a to b, as far as g goes.
func (g graph) area(a, b float64) float64 {
	a, b = max(a, g.lo), min(b, g.hi)
	if a >= b {
		return 0
	}
	if g.kind == straight {
		return g.at((a+b)/2) * (b - a)
	}
	half := g.underHalf(b) - g.underHalf(a)
	if g.kind == lower {
		half = -half
	}
	return g.y*(b-a) + half
}

// underHalf is the integral of sqrt(r^2 - d^2) from the centre to x.
func (g graph) underHalf(x float64) float64 {
	d := min(max(x-g.x, -g.radius), g.radius)
	return (d*math.Sqrt((g.radius-d)*(g.radius+d)) + g.radius*g.radius*math.Asin(d/g.radius)) / 2
}
