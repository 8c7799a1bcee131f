package steps

import (
	"math"
	"math/rand/v2"
)

// cases makes random requests of workshop size. The seed is fixed.
type cases struct{ *rand.Rand }

func newCases(seed uint64) cases { return cases{rand.New(rand.NewPCG(seed, 45))} }

func pick[T any](c cases, from ...T) T { return from[c.IntN(len(from))] }

// decimalBetween has two decimals, as drawings do.
func (c cases) decimalBetween(lo, hi float64) float64 {
	return math.Round((lo+c.Float64()*(hi-lo))*100) / 100
}

func (c cases) request() Request {
	r := Request{
		Curve:      c.curve(),
		Cutter:     c.cutter(),
		Across:     c.axis(),
		Depth:      c.axis(),
		LeftoverMM: pick(c, 0.05, 0.08, 0.1, 0.15, c.decimalBetween(0.03, 0.3)),
	}
	return r
}

func (c cases) axis() Axis {
	return Axis{GraduationMM: pick(c, 0.02, 0.025, 0.05, 0.0254, 0.05, 0.1), Reads: pick(c, ReadsTravel, ReadsTravel, ReadsDiameter),
		OriginMM: pick(c, 0, 0, 0, c.decimalBetween(-5, 5), c.Float64())}
}

func (c cases) cutter() Cutter {
	switch c.IntN(3) {
	case 0:
		return Cutter{Kind: RoundNose, RadiusMM: pick(c, 0.4, 0.8, 1, 1.5, 2, 3)}
	case 1:
		return Cutter{Kind: SquareEnd, WidthMM: c.decimalBetween(0.5, 3)}
	}
	w := c.decimalBetween(1, 4)
	return Cutter{Kind: SquareEnd, WidthMM: w, CornerRadiusMM: pick(c, 0.2, 0.4, w/2)}
}

func (c cases) curve() Curve {
	radius := c.decimalBetween(3, 60)
	width := c.decimalBetween(1, 2*math.Min(radius, 3.5))
	switch c.IntN(9) {
	case 0:
		return ConcaveSeat(radius, width)
	case 1:
		return ConvexArc(radius, width)
	case 2:
		return QuarterRound(c.decimalBetween(1, 5))
	case 3:
		return Bead(radius, width)
	case 4:
		return Neck(radius, width)
	case 5:
		hollow, round := c.decimalBetween(1, 6), c.decimalBetween(1, 6)
		curve, err := Ogee(round, hollow, c.decimalBetween(0.5, math.Min(4, hollow+round)))
		if err != nil {
			panic(err)
		}
		return curve
	case 6:
		return Cone(c.decimalBetween(1, 7), c.decimalBetween(-4, 4))
	}
	return c.chain()
}

// chain joins lines and arcs anyhow, kinks included.
func (c cases) chain() Curve {
	curve := Curve{Left: pick(c, Air, Level, Wall), Right: pick(c, Air, Level, Wall)}
	x, depth := c.decimalBetween(-5, 5), c.decimalBetween(-2, 2)
	for range 1 + c.IntN(4) {
		to := x + c.decimalBetween(0.5, 3)
		if c.IntN(2) == 0 {
			next := depth + c.decimalBetween(-2, 2)
			curve.Segments = append(curve.Segments, Line{x, depth, to, next})
			x, depth = to, next
			continue
		}
		arc := Arc{RadiusMM: c.decimalBetween(to-x, 20), FromAcrossMM: x, ToAcrossMM: to, Form: pick(c, Round, Hollow)}
		arc.CentreAcrossMM = c.decimalBetween(to-arc.RadiusMM, x+arc.RadiusMM)
		arc.CentreAcrossMM = math.Min(math.Max(arc.CentreAcrossMM, to-arc.RadiusMM), x+arc.RadiusMM)
		arc.CentreDepthMM = depth + segmentHeight(arc, x)
		curve.Segments = append(curve.Segments, arc)
		x, depth = to, -segmentHeight(arc, to)
	}
	return curve
}

// joined is a small curve of the n-th kind: an ogee, a bead between its faces, a cone that runs into an arc without a corner, a straight and an arc that meet in one.
func (c cases) joined(n int) Curve {
	radius := c.decimalBetween(2, 12)
	switch n % 4 {
	case 0:
		hollow := c.decimalBetween(2, 12)
		curve, err := Ogee(radius, hollow, c.decimalBetween(0.3, 2))
		if err != nil {
			panic(err)
		}
		return curve
	case 1:
		return Bead(radius, c.decimalBetween(1, math.Min(5, 2*radius)))
	case 2:
		length, drop := c.decimalBetween(1, 4), c.decimalBetween(-1, 1)
		form, square := Round, radius/math.Hypot(length, drop)
		if c.IntN(2) == 0 {
			form, square = Hollow, -square
		}
		middle := length - drop*square
		return Curve{Left: pick(c, Air, Level), Right: pick(c, Air, Level), Segments: []Segment{
			Line{0, 0, length, drop},
			Arc{middle, drop + length*square, radius, length, math.Min(length+c.decimalBetween(0.5, 2), middle+radius), form}}}
	}
	line := Line{0, 0, c.decimalBetween(0.5, 3), c.decimalBetween(-1, 1)}
	arc := Arc{RadiusMM: radius, FromAcrossMM: line.ToAcrossMM, ToAcrossMM: line.ToAcrossMM + c.decimalBetween(0.5, math.Min(3, radius)), Form: pick(c, Round, Hollow)}
	arc.CentreAcrossMM = c.decimalBetween(arc.ToAcrossMM-radius, arc.FromAcrossMM+radius)
	arc.CentreDepthMM = line.ToDepthMM + segmentHeight(arc, arc.FromAcrossMM)
	return Curve{Left: pick(c, Air, Level, Wall), Right: pick(c, Air, Level, Wall), Segments: []Segment{line, arc}}
}
