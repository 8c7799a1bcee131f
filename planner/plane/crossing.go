package plane

import "math"

// joint is how near to a corner two neighbouring edges may meet once more and still only touch in it: where one runs smoothly into the other, coordinates
// rounded to a nanometre let a line enter a circle of a metre's radius for 0.05 mm.
const joint = 0.05

// Crossing finds two edges of a rim that cross or touch, other than neighbours in the corner between them; ok says whether there are any. at is where.
func (r Region) Crossing() (i, k int, at [2]float64, ok bool) {
	n := len(r.Edges)
	for i := range n {
		for k := i + 1; k < n; k++ {
			for _, s := range r.Edges[i].cutBy(r.Edges[k]) {
				x, y := r.Edges[i].At(s)
				if !r.corner(i, k, x, y) {
					return i, k, [2]float64{x, y}, true
				}
			}
			for _, s := range r.Edges[k].cutBy(r.Edges[i]) {
				x, y := r.Edges[k].At(s)
				if !r.corner(i, k, x, y) {
					return i, k, [2]float64{x, y}, true
				}
			}
		}
	}
	return 0, 0, at, false
}

// corner reports whether a place is a corner between two edges, the first of which stands before the other.
func (r Region) corner(i, k int, x, y float64) bool {
	n := len(r.Edges)
	near := func(e Edge) bool { return math.Hypot(e.X1-x, e.Y1-y) <= joint }
	return k == i+1 && near(r.Edges[i]) || (k+1)%n == i && near(r.Edges[k])
}
