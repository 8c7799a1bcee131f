package steps

import (
	"fmt"
	"math"
)

// The functions here decide the promises of a table a second way, from the public data alone: plain geometry on lines and arcs, and
// subdivision with bounds instead of crossings. They share no code with the solver.

const (
	// oracleSlackMM: the oracle works in plain floating point and may be off by this much.
	oracleSlackMM = 1e-7
	// oracleCellMM is the narrowest cell it looks at. Where a cell is still undecided the curve and the edge run within a few times
	// this of each other, and its middle decides.
	oracleCellMM = 1e-7
	// oracleTieMM: two sides of cutters nearer than this stand at the same place but for rounding.
	oracleTieMM = 1e-9
)

// segmentHeight is the height (minus depth) of a segment at x.
func segmentHeight(s Segment, x float64) float64 {
	switch s := s.(type) {
	case Line:
		t := (x - s.FromAcrossMM) / (s.ToAcrossMM - s.FromAcrossMM)
		return -(s.FromDepthMM*(1-t) + s.ToDepthMM*t)
	case Arc:
		d := x - s.CentreAcrossMM
		h := math.Sqrt(math.Max(0, s.RadiusMM*s.RadiusMM-d*d))
		if s.Form == Hollow {
			h = -h
		}
		return -s.CentreDepthMM + h
	}
	panic("no such segment")
}

func segmentEnds(s Segment) (from, to float64) {
	switch s := s.(type) {
	case Line:
		return s.FromAcrossMM, s.ToAcrossMM
	case Arc:
		return s.FromAcrossMM, s.ToAcrossMM
	}
	panic("no such segment")
}

// metal lists the finished surface with its level faces, as segments.
func metal(r Request) []Segment {
	segs := append([]Segment(nil), r.Curve.Segments...)
	const face = 1000
	first, last := segs[0], segs[len(segs)-1]
	from, _ := segmentEnds(first)
	_, to := segmentEnds(last)
	if r.Curve.Left == Level {
		d := -segmentHeight(first, from)
		segs = append(segs, Line{from - face, d, from, d})
	}
	if r.Curve.Right == Level {
		d := -segmentHeight(last, to)
		segs = append(segs, Line{to, d, to + face, d})
	}
	return segs
}

// edge is the height of the cutter's lower edge at dx from its middle, over its lowest point; +Inf past its sides.
func edge(c Cutter, dx float64) float64 {
	dx = math.Abs(dx)
	nose, flat := c.RadiusMM, 0.0
	if c.Kind == SquareEnd {
		nose, flat = c.CornerRadiusMM, c.WidthMM/2-c.CornerRadiusMM
	}
	if dx <= flat || nose == 0 && dx <= flat+oracleTieMM {
		return 0
	}
	if dx > flat+nose+oracleTieMM {
		return math.Inf(1)
	}
	return nose - math.Sqrt(math.Max(0, nose*nose-(dx-flat)*(dx-flat)))
}

func halfWidth(c Cutter) float64 {
	if c.Kind == SquareEnd {
		return c.WidthMM / 2
	}
	return c.RadiusMM
}

// passes is above 0 if a cut passes the curve by more than oracleSlackMM, and 0 if it keeps out. On each cell the highest the curve can be
// and the lowest the edge can be are compared; both are monotone between the cell's own ends.
func passes(r Request, c Cut) float64 {
	worst := 0.0
	for _, s := range metal(r) {
		from, to := segmentEnds(s)
		from = math.Max(from, c.AcrossMM-halfWidth(r.Cutter))
		to = math.Min(to, c.AcrossMM+halfWidth(r.Cutter))
		stops := []float64{from, to}
		if a, ok := s.(Arc); ok {
			stops = append(stops, a.CentreAcrossMM) // the arc is monotone on either side
		}
		stops = append(stops, c.AcrossMM) // so is the edge
		for _, cell := range cells(stops, from, to) {
			worst = math.Max(worst, passesIn(r, c, s, cell[0], cell[1]))
		}
	}
	return worst
}

func cells(stops []float64, from, to float64) [][2]float64 {
	var out [][2]float64
	for at := from; at < to; {
		next := to
		for _, s := range stops {
			if s > at+oracleTieMM && s < next-oracleTieMM {
				next = s
			}
		}
		out = append(out, [2]float64{at, next})
		at = next
	}
	return out
}

func passesIn(r Request, c Cut, s Segment, a, b float64) float64 {
	highest := math.Max(segmentHeight(s, a), segmentHeight(s, b))
	lowest := math.Min(edge(r.Cutter, a-c.AcrossMM), edge(r.Cutter, b-c.AcrossMM)) - c.DepthMM
	if highest <= lowest+oracleSlackMM {
		return 0
	}
	mid := (a + b) / 2
	over := segmentHeight(s, mid) - (edge(r.Cutter, mid-c.AcrossMM) - c.DepthMM) - oracleSlackMM
	if over > 0 || b-a <= oracleCellMM {
		return math.Max(0, over)
	}
	return math.Max(passesIn(r, c, s, a, mid), passesIn(r, c, s, mid, b))
}

// distanceTo is how far the point (x, height) is from the finished metal, for a point not in it.
func distanceTo(segs []Segment, r Request, x, height float64) float64 {
	best := math.Inf(1)
	for _, s := range segs {
		from, to := segmentEnds(s)
		for _, end := range []float64{from, to} {
			best = math.Min(best, math.Hypot(x-end, height-segmentHeight(s, end)))
		}
		switch s := s.(type) {
		case Line:
			ux, uy := s.ToAcrossMM-s.FromAcrossMM, -(s.ToDepthMM - s.FromDepthMM)
			px, py := x-s.FromAcrossMM, height+s.FromDepthMM
			if t := (px*ux + py*uy) / (ux*ux + uy*uy); t >= 0 && t <= 1 {
				best = math.Min(best, math.Abs(px*uy-py*ux)/math.Hypot(ux, uy))
			}
		case Arc:
			px, py := x-s.CentreAcrossMM, height+s.CentreDepthMM
			d := math.Hypot(px, py)
			foot := s.CentreAcrossMM + px*s.RadiusMM/d
			if (py >= 0) == (s.Form == Round) && foot >= from && foot <= to {
				best = math.Min(best, math.Abs(d-s.RadiusMM))
			}
		}
	}
	from, _ := segmentEnds(r.Curve.Segments[0])
	_, to := segmentEnds(r.Curve.Segments[len(r.Curve.Segments)-1])
	if r.Curve.Left == Wall {
		best = math.Min(best, x-from)
	}
	if r.Curve.Right == Wall {
		best = math.Min(best, to-x)
	}
	return best
}

// measured returns the part across on which the leftover is measured: up to the normals at the ends, where those lean inwards.
func measured(r Request, leftover float64) (from, to float64) {
	first, last := r.Curve.Segments[0], r.Curve.Segments[len(r.Curve.Segments)-1]
	from, _ = segmentEnds(first)
	_, to = segmentEnds(last)
	lean := func(b Beyond, s Segment, x float64) float64 { // sine of the normal's lean to the right
		switch {
		case b == Level:
			return 0
		case b == Wall:
			return math.Copysign(1, (from+to)/2-x)
		}
		if a, ok := s.(Arc); ok {
			sine := (x - a.CentreAcrossMM) / a.RadiusMM
			if a.Form == Hollow {
				sine = -sine
			}
			return sine
		}
		l := s.(Line)
		drop, run := l.ToDepthMM-l.FromDepthMM, l.ToAcrossMM-l.FromAcrossMM
		return drop / math.Hypot(drop, run)
	}
	left, right := lean(r.Curve.Left, first, from), lean(r.Curve.Right, last, to)
	return from + math.Max(0, leftover*left), to + math.Min(0, leftover*right)
}

// leaves looks for metal farther than leftover from the curve. On each cell the metal reaches no higher than the higher end of any one
// cut's edge (edges are convex), and the distance changes by no more than the way gone.
func leaves(r Request, cuts []Cut, leftover float64) error {
	from, to := measured(r, leftover)
	segs := metal(r)
	stops := []float64{from, to}
	for _, c := range cuts {
		stops = append(stops, c.AcrossMM-halfWidth(r.Cutter), c.AcrossMM+halfWidth(r.Cutter))
	}
	for _, cell := range cells(stops, from, to) {
		if err := leavesIn(r, segs, cuts, leftover, cell[0], cell[1]); err != nil {
			return err
		}
	}
	return nil
}

func leavesIn(r Request, segs []Segment, cuts []Cut, leftover, a, b float64) error {
	mid := (a + b) / 2
	top, atMid := math.Inf(1), math.Inf(1)
	var near []Cut
	for _, c := range cuts {
		if math.Abs(mid-c.AcrossMM) < halfWidth(r.Cutter) {
			near = append(near, c)
			top = math.Min(top, math.Max(edge(r.Cutter, a-c.AcrossMM), edge(r.Cutter, b-c.AcrossMM))-c.DepthMM)
			atMid = math.Min(atMid, edge(r.Cutter, mid-c.AcrossMM)-c.DepthMM)
		}
	}
	curve := math.Inf(-1)
	for _, s := range r.Curve.Segments {
		if from, to := segmentEnds(s); mid >= from && mid <= to {
			curve = math.Max(curve, segmentHeight(s, mid))
		}
	}
	stands := func(top float64) float64 {
		if top <= curve || math.IsInf(top, 1) {
			return math.Max(0, top-curve)
		}
		return distanceTo(segs, r, mid, top)
	}
	switch {
	case stands(top)+(b-a)/2 <= leftover+oracleSlackMM:
		return nil
	case b-a > oracleCellMM:
		if err := leavesIn(r, segs, near, leftover, a, mid); err != nil {
			return err
		}
		return leavesIn(r, segs, near, leftover, mid, b)
	case stands(atMid) <= leftover+oracleSlackMM:
		return nil
	}
	return fmt.Errorf("metal at %.6f across stands %.9f from the curve", mid, stands(atMid))
}
