package solid

import "math"

// Side is the side of its point on which a tool's body lies along the axis.
type Side float64

const (
	TowardsPlus  Side = 1  // towards greater z
	TowardsMinus Side = -1 // towards smaller z
)

// Point is a place in the half plane.
type Point struct{ Z, R float64 }

// Edge is the cutting edge of a tool above its point, which stands at (0, 0): a convex curve. The tool is everything above it.
type Edge struct{ curve Curve }

// NoseEdge is a knife: a nose of the given radius that touches z = 0 and r = 0, square to the axis on its leading side and falling away at
// trailDeg on the other, where the tool's body lies, to the given width. A nose of 0 is sharp.
func NoseEdge(noseMM, trailDeg, widthMM float64, body Side) Edge {
	trail := trailDeg * math.Pi / 180
	z, r := noseMM*(1+math.Sin(trail)), noseMM*(1-math.Cos(trail))
	c := curveOf(Piece{Radius: noseMM, CentreZ: noseMM, CentreR: noseMM}.clip(0, z))
	if widthMM-z > Snap {
		c.pieces = append(c.pieces, Piece{Z0: z, R0: r, Z1: widthMM, R1: r + (widthMM-z)*math.Tan(trail)})
	}
	return Edge{c}.towards(body)
}

// BladeEdge is a blade of the given width with both corners rounded; its body lies on the given side of its point.
func BladeEdge(widthMM, cornerMM float64, body Side) Edge {
	c := Curve{}
	if cornerMM > 0 {
		c = curveOf(Piece{Radius: cornerMM, CentreZ: cornerMM, CentreR: cornerMM}.clip(0, cornerMM))
	}
	c = c.Join(Const(cornerMM, widthMM-cornerMM, 0))
	if cornerMM > 0 {
		c = c.Join(curveOf(Piece{Radius: cornerMM, CentreZ: widthMM - cornerMM, CentreR: cornerMM}.clip(widthMM-cornerMM, widthMM)))
	}
	return Edge{c}.towards(body)
}

// RoundEdge is a round nose; its point is the middle of the nose.
func RoundEdge(radiusMM float64) Edge {
	return Edge{curveOf(Piece{Radius: radiusMM, CentreR: radiusMM}.clip(-radiusMM, radiusMM))}
}

// VeeEdge is a vee whose two edges stand at angleDeg to the axis and reach halfWidthMM to each side of its point.
func VeeEdge(angleDeg, halfWidthMM float64) Edge {
	rise := halfWidthMM * math.Tan(angleDeg*math.Pi/180)
	return Edge{Line(-halfWidthMM, rise, 0, 0).Join(Line(0, 0, halfWidthMM, rise))}
}

// towards turns an edge whose body lies towards plus.
func (e Edge) towards(body Side) Edge {
	if body == TowardsMinus {
		return Edge{e.curve.Mirror()}
	}
	return e
}

// Sweep is the lower bound of what the tool passes over on a straight way with its point going between two places, in either
// direction. The body of the work is then TurnTo this curve.
//
// Sweeping a convex edge along a line puts the line between the parts of the edge that fall more steeply and those that rise
// more steeply than it: the infimal convolution of the two, exact.
func (e Edge) Sweep(from, to Point) Curve {
	if to.Z < from.Z {
		from, to = to, from
	}
	if to.Z-from.Z <= Snap {
		return e.curve.Shift(from.Z, math.Min(from.R, to.R))
	}
	way := (to.R - from.R) / (to.Z - from.Z)
	touch := e.touches(way)
	low := e.curve.low(touch)
	start := e.curve.Clip(-Far, touch).Shift(from.Z, from.R)
	end := e.curve.Clip(touch, Far).Shift(to.Z, to.R)
	return start.Join(Line(from.Z+touch, from.R+low, to.Z+touch, to.R+low)).Join(end)
}

// SweepInside is the upper bound of what the tool passes over when it cuts away from the axis: the edge turned over.
func (e Edge) SweepInside(from, to Point) Curve {
	return e.Sweep(Point{from.Z, -from.R}, Point{to.Z, -to.R}).Flip()
}

// touches is the place on the edge whose direction is the given slope: before it the edge rises less, after it more.
func (e Edge) touches(slope float64) float64 {
	z, _, _ := e.curve.Domain()
	for _, p := range e.curve.pieces {
		reach := p.Z1
		if p.IsArc() { // lower half: sin θ = m/√(1+m²)
			reach = math.Min(p.Z1, p.CentreZ+p.Radius*slope/math.Hypot(1, slope))
		} else if p.slope() > slope {
			reach = p.Z0
		}
		z = math.Max(z, math.Max(p.Z0, reach))
		if reach < p.Z1 {
			break
		}
	}
	return z
}

// low is the lower of both values at z.
func (c Curve) low(z float64) float64 {
	left, right := c.At(z)
	if math.IsNaN(left) || right < left {
		return right
	}
	return left
}

// Drill is the hole that a drill leaves: the cone of its point from tipZ, then its diameter as far as the tool reaches on the side of its shank.
// Bodies are BoreTo it. pointDeg is the included angle; 180 or 0 means a flat end.
func Drill(tipZ, diameterMM, pointDeg float64, shank Side) Curve {
	r := diameterMM / 2
	length := 0.0
	if pointDeg > 0 && pointDeg < 180 {
		length = r / math.Tan(pointDeg*math.Pi/360)
	}
	c := Line(0, 0, length, r).Join(Const(length, Far, r))
	if shank == TowardsMinus {
		c = c.Mirror()
	}
	return c.Shift(tipZ, 0)
}
