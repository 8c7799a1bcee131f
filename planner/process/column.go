package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/shape"
)

// column is the metal that a hole along Z goes through: from the surface it is drilled from to where it comes out. On a turned part both are plane faces of
// the drawn part, its seats not counted: holes are drilled while the metal under a seat is still flat (rule A-38).
type column struct{ z0, z1 float64 }

// entry is the side that looks at an end.
func (l column) entry(e partspec.End) float64 {
	if e == partspec.Right {
		return l.z1
	}
	return l.z0
}

// columnAt finds the metal under a circle beside the axis, as seen from an end; why says that there is none, or that the circle runs over an edge.
func (c *Context) columnAt(x, y, r float64, from partspec.End) (l column, why string) {
	if c.Part.Flat() {
		return column{0, c.Length}, ""
	}
	rho := math.Hypot(x, y)
	places := []float64{0, c.Length}
	for _, b := range c.Blocks {
		places = append(places, b.Z0, b.Z1)
	}
	for _, h := range c.Holes {
		places = append(places, h.Z0, h.Z1)
	}
	slices.Sort(places)
	places = slices.CompactFunc(places, near)
	if from == partspec.Right {
		slices.Reverse(places)
	}
	open := false
	for i := 1; i < len(places); i++ {
		z0, z1 := min(places[i-1], places[i]), max(places[i-1], places[i])
		switch in, edge := c.metalIn(z0, z1, rho, r); {
		case edge != "":
			return l, edge
		case in && !open:
			open, l = true, column{z0, z1}
		case in:
			l = column{min(l.z0, z0), max(l.z1, z1)}
		case open:
			return l, ""
		}
	}
	if !open {
		why = "there is no metal there"
	}
	return l, why
}

// metalIn reports whether a ring about the axis, r to each side of rho, is all metal between two places, or says what it runs over.
func (c *Context) metalIn(z0, z1, rho, r float64) (in bool, edge string) {
	for _, b := range c.Blocks {
		if b.Z0 > z0+sizeNoise || b.Z1 < z1-sizeNoise {
			continue
		}
		least, most := b.Curve.Least(z0, z1), b.Curve.Greatest(z0, z1)
		if most <= rho-r+sizeNoise {
			return false, ""
		}
		if least < rho+r-sizeNoise {
			return false, fmt.Sprintf("it runs over the edge of %s", b.Name)
		}
		in = true
	}
	for _, h := range c.Holes {
		if h.Z0 > z0+sizeNoise || h.Z1 < z1-sizeNoise {
			continue
		}
		least, most := holeWidth(h, z0, z1)
		if least >= rho+r-sizeNoise {
			return false, ""
		}
		if most > rho-r+sizeNoise {
			return false, fmt.Sprintf("it runs into %s", h.Name)
		}
	}
	return in, ""
}

func holeWidth(h shape.Hole, z0, z1 float64) (least, most float64) {
	if h.Curve.Empty() {
		return h.Radius, h.Radius
	}
	return h.Curve.Least(z0, z1), h.Curve.Greatest(z0, z1)
}
