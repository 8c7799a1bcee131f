package draw

import (
	"math"

	"catchplate/planner/plan"
)

// hollow is how deep below its face a seat lies so far beside the axis of its pipe: R and the chord that sits on the pipe give it.
func hollow(s plan.FlatSeat, off float64) float64 {
	floor := func(x float64) float64 { return math.Sqrt(max(0, s.RadiusMM*s.RadiusMM-x*x)) }
	return max(0, floor(off)-floor(s.AcrossMM/2))
}

// seatPoints is how many places a seat's curve is drawn through.
const seatPoints = 24

// troughs are the curves of seats that a cut along Y at x (or along X at y) opens: places along the cut, each with its depth below the face.
func troughs(f *plan.Flat, s plan.FlatSeat, at float64, alongY bool) (lines [][]xy) {
	for _, run := range chords(f.Outline, at, alongY) {
		from, to := run[0], run[1]
		if s.AlongY != alongY {
			from, to = max(from, s.MiddleMM-s.AcrossMM/2), min(to, s.MiddleMM+s.AcrossMM/2)
		}
		if to-from <= touching {
			continue
		}
		var line []xy
		for i := range seatPoints + 1 {
			along := from + (to-from)*float64(i)/seatPoints
			off := along - s.MiddleMM
			if s.AlongY == alongY {
				off = at - s.MiddleMM
			}
			line = append(line, xy{along, hollow(s, off)})
		}
		lines = append(lines, line)
	}
	return lines
}

// trough fills what a seat takes off work that is cut open, and draws its curve. to carries a place along the cut and a height over the face, on paper, to the paper.
func (c *Canvas) trough(class Class, line []xy, to func(along, deep, over float64) Point) {
	over := 0.0
	if class == Paper {
		over = coverMore
	}
	first, last := line[0], line[len(line)-1]
	region := []Point{to(first.x, 0, over)}
	var curve []Point
	for _, p := range line {
		curve = append(curve, to(p.x, p.y, 0))
	}
	region = append(append(region, curve...), to(last.x, 0, over))
	c.Poly(class, true, region...)
	c.Poly(Outline, false, curve...)
}

// faceZ is where the face that a seat is cut in lies, and the direction into the metal.
func faceZ(f *plan.Flat, s plan.FlatSeat) (z, into float64) {
	if s.On == "back" {
		return f.BackZ, 1
	}
	return f.FrontZ, -1
}

// seatsInPlan draws the pipe's axis of every seat and where its hollow ends in the face, dashed where the face that is seen hides it.
func (c *Canvas) seatsInPlan(v planeView, f *plan.Flat, keep *field) {
	x0, y0, x1, y1 := extent(f.Outline)
	for _, s := range f.Seats {
		line := func(class Class, at, beyond float64) {
			a, b := v.at(x0-beyond, at), v.at(x1+beyond, at)
			if s.AlongY {
				a, b = v.at(at, y0-beyond), v.at(at, y1+beyond)
			}
			c.Line(class, a, b)
			keep.line(a, b)
		}
		class := Hidden
		if (s.On == "back") == v.mirror {
			class = Outline
		}
		low, high := y0, y1
		if s.AlongY {
			low, high = x0, x1
		}
		for _, at := range []float64{s.MiddleMM - s.AcrossMM/2, s.MiddleMM + s.AcrossMM/2} {
			if at > low+touching && at < high-touching {
				line(class, at, 0)
			}
		}
		line(Centre, s.MiddleMM, axisBeyond/v.scale)
	}
}

// axisBeyond is how far the axis of a seat's pipe is drawn beyond the work, in millimetres on paper.
const axisBeyond = 4.0

// seatTargets are places on a seat that a label may point at.
func (sc *flatScene) seatTargets(s plan.FlatSeat) []target {
	x0, y0, x1, y1 := extent(sc.after.Outline)
	var out []target
	for _, share := range []float64{0.3, 0.7, 0.15, 0.85, 0.5} {
		p := sc.v.at(x0+(x1-x0)*share, s.MiddleMM)
		if s.AlongY {
			p = sc.v.at(s.MiddleMM, y0+(y1-y0)*share)
		}
		out = append(out, target{p: p})
	}
	return out
}

func hasSeat(seats []plan.FlatSeat, feature string) bool {
	for _, s := range seats {
		if s.Feature == feature {
			return true
		}
	}
	return false
}
