package plane

import "math"

// Edge is a line, or an arc where Radius is not 0, of a region's rim. It runs from (X0, Y0) to (X1, Y1) with the metal on its left: an arc runs
// anticlockwise about its centre, or clockwise where it is Hollow.
type Edge struct {
	X0, Y0, X1, Y1 float64
	CX, CY, Radius float64
	Hollow         bool
}

// IsArc reports whether the edge is an arc.
func (e Edge) IsArc() bool { return e.Radius > 0 }

// Sweep is the angle an arc turns through, in radians, positive anticlockwise; 0 for a line.
func (e Edge) Sweep() float64 {
	if !e.IsArc() {
		return 0
	}
	turn := math.Atan2(e.Y1-e.CY, e.X1-e.CX) - math.Atan2(e.Y0-e.CY, e.X0-e.CX)
	if e.Hollow {
		turn = -turn
	}
	for turn <= 1e-12 {
		turn += 2 * math.Pi
	}
	for turn > 2*math.Pi+1e-12 {
		turn -= 2 * math.Pi
	}
	if e.Hollow {
		return -turn
	}
	return turn
}

// Length is the length of the edge.
func (e Edge) Length() float64 {
	if e.IsArc() {
		return e.Radius * math.Abs(e.Sweep())
	}
	return math.Hypot(e.X1-e.X0, e.Y1-e.Y0)
}

// At is the point a share of the way along, from 0 to 1.
func (e Edge) At(share float64) (x, y float64) {
	if e.IsArc() {
		a := math.Atan2(e.Y0-e.CY, e.X0-e.CX) + share*e.Sweep()
		return e.CX + e.Radius*math.Cos(a), e.CY + e.Radius*math.Sin(a)
	}
	return e.X0 + share*(e.X1-e.X0), e.Y0 + share*(e.Y1-e.Y0)
}

// Outward is the unit normal, away from the metal, a share of the way along.
func (e Edge) Outward(share float64) (x, y float64) {
	if e.IsArc() {
		px, py := e.At(share)
		x, y = (px-e.CX)/e.Radius, (py-e.CY)/e.Radius
		if e.Hollow {
			return -x, -y
		}
		return x, y
	}
	l := e.Length()
	return (e.Y1 - e.Y0) / l, -(e.X1 - e.X0) / l
}

// Nearest is the point of the edge nearest to (x, y), and how far it is.
func (e Edge) Nearest(x, y float64) (nx, ny, off float64) {
	if e.IsArc() {
		a := math.Atan2(y-e.CY, x-e.CX) - math.Atan2(e.Y0-e.CY, e.X0-e.CX)
		s := e.Sweep()
		if s < 0 {
			a = -a
		}
		for a < 0 {
			a += 2 * math.Pi
		}
		if a >= 2*math.Pi {
			a -= 2 * math.Pi
		}
		if a <= math.Abs(s) {
			nx, ny = e.At(a / math.Abs(s))
			return nx, ny, math.Hypot(x-nx, y-ny)
		}
		return nearerEnd(e, x, y)
	}
	dx, dy := e.X1-e.X0, e.Y1-e.Y0
	t := ((x-e.X0)*dx + (y-e.Y0)*dy) / (dx*dx + dy*dy)
	nx, ny = e.At(math.Max(0, math.Min(1, t)))
	return nx, ny, math.Hypot(x-nx, y-ny)
}

func nearerEnd(e Edge, x, y float64) (nx, ny, off float64) {
	d0, d1 := math.Hypot(x-e.X0, y-e.Y0), math.Hypot(x-e.X1, y-e.Y1)
	if d0 <= d1 {
		return e.X0, e.Y0, d0
	}
	return e.X1, e.Y1, d1
}

// chords splits an edge where it turns back in Y, so that each piece is crossed at most once by a line along X.
func (e Edge) chords() []Edge {
	if !e.IsArc() {
		return []Edge{e}
	}
	start, sweep := math.Atan2(e.Y0-e.CY, e.X0-e.CX), e.Sweep()
	cuts := []float64{0}
	for k := -4; k <= 8; k++ { // top and bottom of the circle
		a := math.Pi/2 + float64(k)*math.Pi
		if t := (a - start) / sweep; t > 0 && t < 1 {
			cuts = append(cuts, t)
		}
	}
	cuts = append(cuts, 1)
	if len(cuts) > 2 { // in order, whichever way the arc runs
		for i := 1; i < len(cuts); i++ {
			for k := i; k > 0 && cuts[k] < cuts[k-1]; k-- {
				cuts[k], cuts[k-1] = cuts[k-1], cuts[k]
			}
		}
	}
	var out []Edge
	for i := 1; i < len(cuts); i++ {
		c := e
		if i > 1 {
			c.X0, c.Y0 = e.At(cuts[i-1])
		}
		if i < len(cuts)-1 {
			c.X1, c.Y1 = e.At(cuts[i])
		}
		out = append(out, c)
	}
	return out
}

// crossing is the X at which a piece that does not turn back reaches a height.
func (e Edge) crossing(c Edge, y float64) float64 {
	if !e.IsArc() {
		return c.X0 + (c.X1-c.X0)*(y-c.Y0)/(c.Y1-c.Y0)
	}
	dx := math.Sqrt(math.Max(0, e.Radius*e.Radius-(y-e.CY)*(y-e.CY)))
	side := c.X0 + c.X1 - 2*e.CX
	if math.Abs(side) <= touching { // from top to bottom, or back: the ends do not tell
		mx, _ := c.At(0.5)
		side = mx - e.CX
	}
	if side < 0 {
		return e.CX - dx
	}
	return e.CX + dx
}
