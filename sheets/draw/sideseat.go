package draw

import (
	"math"

	"catchplate/planner/plan"
)

// sideSeat reports whether a seat lies across the side of the work, and not across an end.
func sideSeat(x plan.Crossed) bool { return x.Kind == plan.CrossedSeat && x.On == "" }

// roundOver is the radius of the round that a seat across the side is cut in: its floor and the rise of its chord.
func roundOver(x plan.Crossed) float64 {
	return x.FloorMM + x.RadiusMM - math.Sqrt(max(0, x.RadiusMM*x.RadiusMM-x.WidthMM*x.WidthMM/4))
}

// sideNotch takes a seat across the side off the section: off its upper half, or with side -1 off its lower. r is the radius of the round.
func (c *Canvas) sideNotch(v view, x plan.Crossed, class Class, r, side float64) {
	from, deep, to := v.at(x.Z0, side*r), v.at(x.AxisZ, side*x.FloorMM), v.at(x.Z1, side*r)
	centre := v.at(x.AxisZ, side*(x.FloorMM+x.RadiusMM))
	arc := func(a, b Point) Step {
		return Step{To: b, Radius: x.RadiusMM * v.scale, Centre: centre, Clockwise: cross(centre, a, b) > 0}
	}
	hollow := []Step{arc(from, deep), arc(deep, to)}
	cover := []Step{}
	if class == Paper { // the edge's pen goes with it
		beyond := -side * coverMore
		cover = append(cover, Step{To: Point{to.X, to.Y + beyond}}, Step{To: Point{from.X, from.Y + beyond}})
	}
	c.Path(Path{Class: class, Closed: true, Start: from, Steps: append(append([]Step{}, hollow...), cover...)})
	c.Path(Path{Class: Outline, Start: from, Steps: hollow})
}

// sideMouth is a seat across the side as the spindle sees it: the edge that it leaves on the round.
func (c *Canvas) sideMouth(v view, x plan.Crossed, class Class, r float64) {
	wide := r
	if x.FloorMM > 0 {
		wide = math.Sqrt(r*r - x.FloorMM*x.FloorMM)
	}
	var points []Point
	edge := func(side, y float64) {
		up := math.Sqrt(max(0, r*r-y*y)) - x.FloorMM - x.RadiusMM // above the pipe's axis
		points = append(points, v.at(x.AxisZ+side*math.Sqrt(max(0, x.RadiusMM*x.RadiusMM-up*up)), y))
	}
	for i := -arcPieces; i <= arcPieces; i++ {
		edge(-1, wide*math.Sin(float64(i)/arcPieces*math.Pi/2))
	}
	for i := arcPieces; i >= -arcPieces; i-- {
		edge(1, wide*math.Sin(float64(i)/arcPieces*math.Pi/2))
	}
	c.Poly(class, true, points...)
	c.Poly(Outline, true, points...)
}
