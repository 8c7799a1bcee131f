package draw

import (
	"strings"

	"catchplate/planner/plan"
)

// tableZero is a place over which dials of the table stand at nought, with the operations that set them so.
type tableZero struct {
	dials      []string
	x, y       float64
	operations []int
}

// tableZerosOf collects the places at which x and y stand at nought. Where an operation sets only one of them, the other counts as 0.
func tableZerosOf(s *plan.Setup) []tableZero {
	var out []tableZero
	for i, op := range s.Operations {
		z := tableZero{operations: []int{i}}
		for _, one := range op.Zeros {
			switch one.Dial {
			case "x":
				z.dials, z.x = append(z.dials, DialName(s, "x")+" 0"), one.ReferenceMM
			case "y":
				z.dials, z.y = append(z.dials, DialName(s, "y")+" 0"), one.ReferenceMM
			}
		}
		if len(z.dials) == 0 {
			continue
		}
		known := false
		for k, o := range out {
			if o.x == z.x && o.y == z.y && len(o.dials) == len(z.dials) && o.dials[0] == z.dials[0] {
				out[k].operations, known = append(o.operations, i), true
			}
		}
		if !known {
			out = append(out, z)
		}
	}
	return out
}

const (
	zeroRadius = 1.4
	zeroReach  = 2.6
)

// tableZeros marks the places of nought by a ring with a cross, each with a label on the nearer side, and gives the labels' rooms.
func (c *Canvas) tableZeros(s *plan.Setup, held Box, at func(x, y float64) Point) []Box {
	var labels []sideLabel
	left, right := held.Left, held.Right
	for _, z := range tableZerosOf(s) {
		p := at(z.x, z.y)
		c.Circle(Thin, p, zeroRadius)
		c.Line(Thin, Point{p.X, p.Y - zeroReach}, Point{p.X, p.Y + zeroReach})
		c.Line(Thin, Point{p.X - zeroReach, p.Y}, Point{p.X + zeroReach, p.Y})
		left, right = min(left, p.X-zeroReach), max(right, p.X+zeroReach)
		text := strings.Join(z.dials, ", ") + " (" + zeroGroup{operations: z.operations}.numbers(s) + ")"
		labels = append(labels, sideLabel{p, text})
	}
	return c.nearLabels(labels, left-2, right+2)
}
