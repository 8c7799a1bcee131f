package plane

import (
	"math"
	"slices"
	"sort"
)

// Thin is the width, in mm, below which a figure counts as nothing: far below what any tool takes, far above the rounding of coordinates up to metres.
const Thin = 1e-5

// onEdge is how far a place may lie from an edge and still be on it.
const onEdge = Thin / 10

// Common is the rim of what lies in all of the sets in and in none of the sets out, each piece with that figure on its left, so that Region{pieces} has
// its area. No pieces: nothing lies there that is wider than Thin. Every set's rim is cut where the others cross it, and each piece kept that has the figure on
// one side: nothing is sampled, so what lies between two crossings is decided as a whole.
func Common(in, out []Set) []Edge {
	g := gathered{in: in}
	window := box{math.Inf(-1), math.Inf(-1), math.Inf(1), math.Inf(1)}
	for _, s := range in {
		if _, rest := s.(around); !rest {
			window = window.within(boxAround(s.Rim()))
		}
	}
	if window.empty() {
		return nil
	}
	for _, s := range in {
		g.gather(s.Rim(), window)
	}
	for _, s := range out {
		rim := s.Rim()
		if _, rest := s.(around); !rest && window.within(boxAround(rim)).empty() {
			continue // it takes nothing there
		}
		if path, ok := s.(Capsule); ok && path.covers(window) {
			return nil
		}
		if !g.taken(s) {
			g.out = append(g.out, s)
			g.gather(rim, window)
		}
	}
	var kept []Edge
	for i := range g.edges {
		kept = append(kept, g.kept(i)...)
	}
	return kept
}

// taken reports whether a disc's path takes nothing that another has not taken: deeper passes of a cutter run where the first ran.
func (g gathered) taken(s Set) bool {
	path, ok := s.(Capsule)
	return ok && slices.ContainsFunc(g.out, func(o Set) bool {
		other, ok := o.(Capsule)
		return ok && math.Max(other.Off(path.X0, path.Y0), other.Off(path.X1, path.Y1))+path.Radius <= other.Radius
	})
}

// covers reports whether a disc's path takes a whole box. A path is convex: when it takes the corners, it takes all between them.
func (c Capsule) covers(b box) bool {
	return c.Has(b.left, b.low) && c.Has(b.left, b.high) && c.Has(b.right, b.low) && c.Has(b.right, b.high)
}

// gather takes the edges up that come into a window: the others bound nothing there.
func (g *gathered) gather(rim []Edge, window box) {
	for _, e := range rim {
		if b := boundedBy(e); !window.apart(b.box) {
			g.edges = append(g.edges, b)
		}
	}
}

// Meet reports whether anything wider than Thin lies in all of the sets.
func Meet(in ...Set) bool { return len(Common(in, nil)) > 0 }

// box is a rectangle along the axes.
type box struct{ left, low, right, high float64 }

// boxAround is a box around all of a rim.
func boxAround(rim []Edge) box {
	all := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, e := range rim {
		b := boundedBy(e).box
		all = box{math.Min(all.left, b.left), math.Min(all.low, b.low), math.Max(all.right, b.right), math.Max(all.high, b.high)}
	}
	return all
}

// within is what two boxes share.
func (b box) within(c box) box {
	return box{math.Max(b.left, c.left), math.Max(b.low, c.low), math.Min(b.right, c.right), math.Min(b.high, c.high)}
}

func (b box) empty() bool { return b.right-b.left <= Thin || b.high-b.low <= Thin }

func (b box) apart(c box) bool {
	return b.left > c.right+onEdge || c.left > b.right+onEdge || b.low > c.high+onEdge || c.low > b.high+onEdge
}

// bounded is an edge with a box around it (around its whole circle for an arc).
type bounded struct {
	Edge
	box
}

func boundedBy(e Edge) bounded {
	if e.IsArc() {
		return bounded{e, box{e.CX - e.Radius, e.CY - e.Radius, e.CX + e.Radius, e.CY + e.Radius}}
	}
	return bounded{e, box{math.Min(e.X0, e.X1), math.Min(e.Y0, e.Y1), math.Max(e.X0, e.X1), math.Max(e.Y0, e.Y1)}}
}

type gathered struct {
	in, out []Set
	edges   []bounded
}

// has reports whether a place lies in the figure.
func (g gathered) has(x, y float64) bool {
	for _, s := range g.in {
		if !s.Has(x, y) {
			return false
		}
	}
	for _, s := range g.out {
		if s.Has(x, y) {
			return false
		}
	}
	return true
}

// kept are the pieces of an edge that bound the figure.
func (g gathered) kept(i int) []Edge {
	e := g.edges[i]
	long := e.Length()
	if long <= Thin {
		return nil
	}
	cuts := []float64{0, 1}
	for k, o := range g.edges {
		if k != i && !e.apart(o.box) {
			cuts = append(cuts, e.cutBy(o.Edge)...)
		}
	}
	sort.Float64s(cuts)
	var kept []Edge
	for k := 1; k < len(cuts); k++ {
		if a, b := cuts[k-1], cuts[k]; (b-a)*long > Thin {
			if p, ok := g.bounding(e.Edge, a, b); ok && !g.told(i, p) {
				kept = append(kept, p)
			}
		}
	}
	return kept
}

// told reports whether an earlier edge runs along a piece of edge i: both are rims there, and one of them is enough.
func (g gathered) told(i int, p Edge) bool {
	x, y := p.At(0.5)
	for _, o := range g.edges[:i] {
		if !g.edges[i].apart(o.box) && p.along(o.Edge) && o.reaches(x, y) {
			return true
		}
	}
	return false
}

// bounding is the piece of an edge between two shares of it, turned so that the figure lies on its left; not ok where it lies on both sides or neither.
func (g gathered) bounding(e Edge, a, b float64) (Edge, bool) {
	x, y := e.At((a + b) / 2)
	ox, oy := e.Outward((a + b) / 2)
	left, right := g.has(x-Thin*ox, y-Thin*oy), g.has(x+Thin*ox, y+Thin*oy)
	if left == right {
		return Edge{}, false
	}
	p := e.between(a, b)
	if right {
		p.X0, p.Y0, p.X1, p.Y1, p.Hollow = p.X1, p.Y1, p.X0, p.Y0, p.IsArc() && !p.Hollow
	}
	return p, true
}

// between is the piece of an edge between two shares of it.
func (e Edge) between(a, b float64) Edge {
	p := e
	if a > 0 {
		p.X0, p.Y0 = e.At(a)
	}
	if b < 1 {
		p.X1, p.Y1 = e.At(b)
	}
	return p
}

// cutBy are the shares at which another edge crosses or touches this one, or begins and ends along it.
func (e Edge) cutBy(o Edge) []float64 {
	var at [][2]float64
	switch {
	case e.along(o):
		at = [][2]float64{{o.X0, o.Y0}, {o.X1, o.Y1}}
	case !e.IsArc() && !o.IsArc():
		if x, y, ok := meet(e, o, 0, 0); ok {
			at = [][2]float64{{x, y}}
		}
	case e.IsArc() && o.IsArc():
		at = twoCircles(e, o)
	case e.IsArc():
		at = lineAndCircle(o, e)
	default:
		at = lineAndCircle(e, o)
	}
	var shares []float64
	for _, p := range at {
		s := e.share(p[0], p[1])
		if s > 0 && s < 1 && o.reaches(p[0], p[1]) {
			shares = append(shares, s)
		}
	}
	return shares
}

// along reports whether two edges lie on one line or one circle.
func (e Edge) along(o Edge) bool {
	if e.IsArc() != o.IsArc() {
		return false
	}
	if e.IsArc() {
		return math.Hypot(e.CX-o.CX, e.CY-o.CY) <= onEdge && math.Abs(e.Radius-o.Radius) <= onEdge
	}
	return e.offLine(o.X0, o.Y0) <= onEdge && e.offLine(o.X1, o.Y1) <= onEdge
}

// offLine is how far a place lies from a line's prolongation.
func (e Edge) offLine(x, y float64) float64 {
	ox, oy := e.Outward(0)
	return math.Abs((x-e.X0)*ox + (y-e.Y0)*oy)
}

// share is how far along an edge a place of its line or circle lies: 0 at its start, 1 at its end.
func (e Edge) share(x, y float64) float64 {
	if !e.IsArc() {
		dx, dy := e.X1-e.X0, e.Y1-e.Y0
		return ((x-e.X0)*dx + (y-e.Y0)*dy) / (dx*dx + dy*dy)
	}
	a, sweep := math.Atan2(y-e.CY, x-e.CX)-math.Atan2(e.Y0-e.CY, e.X0-e.CX), e.Sweep()
	if sweep < 0 {
		a, sweep = -a, -sweep
	}
	for a < 0 {
		a += 2 * math.Pi
	}
	for a >= 2*math.Pi {
		a -= 2 * math.Pi
	}
	return a / sweep
}

// reaches reports whether a place of an edge's line or circle lies between its ends, or at one of them.
func (e Edge) reaches(x, y float64) bool {
	if s := e.share(x, y); s >= 0 && s <= 1 {
		return true
	}
	return math.Hypot(x-e.X0, y-e.Y0) <= onEdge || math.Hypot(x-e.X1, y-e.Y1) <= onEdge
}
