package steps

import "math"

// graph is a piece of a function of x: a straight line, or the upper or lower half of a circle, between lo and hi.
// The surface, its offsets and the cutter's edge are all made of these, so one set of crossings serves every question.
type graph struct {
	lo, hi float64
	kind   graphKind
	x, y   float64 // a point of the line, or the centre of the circle
	slope  float64 // of the line
	endY   float64 // height at hi of a line of the surface, as given; the exact decision uses it
	radius float64 // of the circle
	doubt  float64 // rounding error of y beyond that of a given number: a corner's height is computed
}

type graphKind int

const (
	straight graphKind = iota + 1
	upper              // y + sqrt(...)
	lower              // y - sqrt(...)
)

type point struct{ x, y float64 }

// at returns the height at x; outside the circle, the height at its side.
func (g graph) at(x float64) float64 {
	switch g.kind {
	case upper:
		return g.y + g.half(x)
	case lower:
		return g.y - g.half(x)
	}
	return g.y + g.slope*(x-g.x)
}

func (g graph) half(x float64) float64 {
	d := x - g.x
	return math.Sqrt(max(0, (g.radius-d)*(g.radius+d)))
}

// slopeAt is the slope at x; infinite at the side of a circle.
func (g graph) slopeAt(x float64) float64 {
	switch g.kind {
	case upper:
		return -(x - g.x) / g.half(x)
	case lower:
		return (x - g.x) / g.half(x)
	}
	return g.slope
}

// normal is the direction square to g and upwards at x, of length 1.
func (g graph) normal(x float64) point {
	switch g.kind {
	case upper:
		return point{(x - g.x) / g.radius, g.half(x) / g.radius}
	case lower:
		return point{(g.x - x) / g.radius, g.half(x) / g.radius}
	}
	norm := math.Hypot(1, g.slope)
	return point{-g.slope / norm, 1 / norm}
}

// crossings returns the places where the whole line or circle of g meets that of f. Other places may be among them (on the other
// half of a circle; or, where the two do not meet, where they come nearest, so that a touch is never missed by rounding):
// callers test the stretches between the places.
func crossings(f, g graph) (places [2]float64, n int) {
	switch {
	case f.kind == straight && g.kind == straight:
		if f.slope == g.slope {
			return places, 0
		}
		places[0] = f.x + (g.y-f.y-g.slope*(g.x-f.x))/(f.slope-g.slope)
		return places, 1
	case f.kind == straight:
		return lineCircle(f, g)
	case g.kind == straight:
		return lineCircle(g, f)
	}
	return circleCircle(f, g)
}

// lineCircle: foot of the centre on the line, then half the chord either way.
func lineCircle(l, c graph) (places [2]float64, n int) {
	norm := math.Hypot(1, l.slope)
	away := (c.y - l.y - l.slope*(c.x-l.x)) / norm
	h := max(0, (c.radius-away)*(c.radius+away))
	foot, half := c.x+away*l.slope/norm, math.Sqrt(h)/norm
	return [2]float64{foot - half, foot + half}, 2
}

// circleCircle: foot of the common chord on the line of centres, then half the chord either way.
func circleCircle(f, g graph) (places [2]float64, n int) {
	dx, dy := g.x-f.x, g.y-f.y
	d := math.Hypot(dx, dy)
	if d == 0 {
		return places, 0
	}
	along := (d + (f.radius-g.radius)*(f.radius+g.radius)/d) / 2
	h := max(0, (f.radius-along)*(f.radius+along))
	foot, half := f.x+along*dx/d, math.Sqrt(h)*dy/d
	return [2]float64{foot - half, foot + half}, 2
}
