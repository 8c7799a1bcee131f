package shape

import (
	"math"

	"catchplate/planner/plane"
)

// Side is one of the four straight sides of the rectangle around an outline, in the outline's direction. An edge on none of them is Inner: an arc, a slope,
// or a straight edge that stands back.
type Side int

const (
	Inner Side = iota
	Bottom
	Right
	Top
	Left
)

// onSide is how far an edge may lie from the rectangle around its outline and still lie on it, in mm: the rounding of coordinates up to metres.
const onSide = 1e-6

// next is the side that follows, anticlockwise.
func (s Side) next() Side { return s%4 + 1 }

// Opposite is the side that faces a side.
func (s Side) Opposite() Side { return s.next().next() }

// Outward is the direction away from the metal.
func (s Side) Outward() (x, y float64) {
	switch s {
	case Bottom:
		return 0, -1
	case Right:
		return 1, 0
	case Top:
		return 0, 1
	case Left:
		return -1, 0
	}
	return 0, 0
}

// Place is where a side lies, along its outward direction's axis.
func (s Side) Place(r plane.Region) float64 {
	x0, y0, x1, y1 := r.Bounds()
	return [...]float64{math.NaN(), y0, x1, y1, x0}[s]
}

// SidesOf says of every edge of an outline on which side of the rectangle around it it lies.
func SidesOf(r plane.Region) []Side {
	sides := make([]Side, len(r.Edges))
	x0, y0, x1, y1 := r.Bounds()
	places := [...]float64{Bottom: y0, Right: x1, Top: y1, Left: x0}
	for i, e := range r.Edges {
		if e.IsArc() {
			continue
		}
		for s := Bottom; s <= Left; s++ {
			ox, oy := e.Outward(0)
			sx, sy := s.Outward()
			if math.Abs(ox-sx)+math.Abs(oy-sy) < onSide && math.Abs(e.X0*sx+e.Y0*sy-places[s]*(sx+sy)) < onSide {
				sides[i] = s
			}
		}
	}
	return sides
}

// Rim is the outline as it now is. Where the metal left on neighbours does not meet, it is the drawn outline moved by the most left anywhere. It never stands
// outside the blank: where that has less metal than a saw would leave, the blank's own edge stays.
func (f Flat) Rim() plane.Region {
	rim := f.uncut()
	if f.Blank.Empty() {
		return rim
	}
	rim = within(rim, f.Blank)
	x0, y0, x1, y1 := f.Drawn.Bounds()
	sides := plane.Rectangle(x0-f.SideLeft(Left), y0-f.SideLeft(Bottom), x1+f.SideLeft(Right), y1+f.SideLeft(Top))
	return within(rim, sides) // a side is cut right along: nothing that the saw left on a corner stands out beyond it
}

// within is what of a figure lies within another one.
func within(rim, around plane.Region) plane.Region {
	x0, y0, x1, y1 := rim.Bounds()
	left, low, right, high := around.Bounds()
	if x0 >= left-onSide && y0 >= low-onSide && x1 <= right+onSide && y1 <= high+onSide {
		return rim
	}
	return plane.Region{Edges: plane.Common([]plane.Set{rim.Figure(), around.Figure()}, nil)}
}

// uncut is Rim with no regard to where the blank ends.
func (f Flat) uncut() plane.Region {
	drawn, left := f.Drawn, f.Left
	if !f.Blank.Empty() {
		drawn, left = f.squared()
	}
	if rim, err := drawn.Moved(left); err == nil {
		return rim
	}
	most := 0.0
	for _, l := range left {
		most = math.Max(most, l)
	}
	even := make([]float64, len(left))
	for i := range even {
		even[i] = most
	}
	rim, _ := drawn.Moved(even)
	return rim
}

// squared is the outline with every run of raw edges squared out to the blank's corners, and what is left on each of its edges.
func (f Flat) squared() (plane.Region, []float64) {
	sides, n := SidesOf(f.Drawn), len(f.Drawn.Edges)
	first := -1 // an edge that is not raw
	for i := range n {
		if !math.IsInf(f.Left[i], 1) {
			first = i
			break
		}
	}
	box := plane.Rectangle(f.Drawn.Bounds())
	if first < 0 {
		out := []float64{}
		for s := Bottom; s <= Left; s++ {
			out = append(out, f.SideLeft(s))
		}
		return box, out
	}
	var edges []plane.Edge
	var left []float64
	raw := false
	last := Inner // side of the last edge kept
	for k := range n + 1 {
		i := (first + k) % n
		if math.IsInf(f.Left[i], 1) {
			raw = true
			continue
		}
		if raw {
			edges, left = f.corner(edges, left, box, last, sides[i], f.Drawn.Edges[i])
			if k == n { // the first edge begins where the last run ends
				edges[0].X0, edges[0].Y0 = edges[len(edges)-1].X1, edges[len(edges)-1].Y1
			}
		}
		if k == n {
			break
		}
		e := f.Drawn.Edges[i]
		if raw {
			e.X0, e.Y0 = edges[len(edges)-1].X1, edges[len(edges)-1].Y1
		}
		edges, left, raw, last = append(edges, e), append(left, f.Left[i]), false, sides[i]
	}
	return plane.Region{Edges: edges}, left
}

// corner lengthens the last edge, and adds sides of the rectangle, as far as the corner where the side of the next edge begins. Two edges on one side have only a
// notch between them, unless the next one lies behind: then the raw edges went all the way round.
func (f Flat) corner(edges []plane.Edge, left []float64, box plane.Region, from, to Side, next plane.Edge) ([]plane.Edge, []float64) {
	e := &edges[len(edges)-1]
	notch := from == to && (next.X0-e.X1)*(e.X1-e.X0)+(next.Y0-e.Y1)*(e.Y1-e.Y0) >= 0
	if from == Inner || to == Inner || notch {
		return edges, left
	}
	end := box.Edges[from-1]
	e.X1, e.Y1 = end.X1, end.Y1
	for s := from.next(); s != to; s = s.next() {
		edges, left = append(edges, box.Edges[s-1]), append(left, f.SideLeft(s))
	}
	return edges, left
}

// SideLeft is the metal on a side of the rectangle around the drawn outline: what is left on its edges, or the blank's where it has none.
func (f Flat) SideLeft(s Side) float64 {
	for i, on := range SidesOf(f.Drawn) {
		if on == s && !math.IsInf(f.Left[i], 1) {
			return f.Left[i]
		}
	}
	if f.Blank.Empty() {
		return 0
	}
	sx, sy := s.Outward()
	return (s.Place(f.Blank) - s.Place(f.Drawn)) * (sx + sy)
}

// FlatStock is a blank around a drawn outline: what stands out of its sides is left on the edges there, all others are raw.
func FlatStock(drawn, blank plane.Region, back, front float64) Flat {
	f := Flat{Drawn: drawn, Blank: blank, Back: back, Front: front}
	for _, s := range SidesOf(drawn) {
		l := Raw
		if s != Inner {
			sx, sy := s.Outward()
			l = (s.Place(blank) - s.Place(drawn)) * (sx + sy)
		}
		f.Left = append(f.Left, l)
	}
	return f
}
