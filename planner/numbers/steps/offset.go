package steps

import (
	"math"
	"sort"
)

// lifted returns pieces whose highest one at each x is the surface grown by r: all points within r of the finished metal.
// Formula: grown(x) = max over t of height(t) + sqrt(r^2 - (t-x)^2). The highest t is either inside a piece, where the piece
// moves out along its normal (line: parallel; round arc: R+r; hollow arc: R-r), or at a corner, which becomes a half circle.
// A hollow with R <= r touches at its ends only, so its corners say it all.
func (s surface) lifted(r float64) []graph {
	var out []graph
	for _, g := range s.pieces {
		switch g.kind {
		case straight:
			norm := math.Hypot(1, g.slope)
			shift := -r * g.slope / norm
			out = append(out, graph{lo: g.lo + shift, hi: g.hi + shift, kind: straight, x: g.x, y: g.y + r*norm, slope: g.slope})
		case upper:
			out = append(out, grownArc(g, r))
		case lower:
			if g.radius > r {
				out = append(out, grownArc(g, -r))
			}
		}
	}
	if r > 0 {
		for _, c := range s.corners() {
			out = append(out, graph{lo: c.x - r, hi: c.x + r, kind: upper, x: c.x, y: c.y, radius: r, doubt: c.doubt})
		}
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].lo < out[b].lo })
	return out
}

func grownArc(g graph, by float64) graph {
	k := (g.radius + by) / g.radius
	return graph{lo: g.x + (g.lo-g.x)*k, hi: g.x + (g.hi-g.x)*k, kind: g.kind, x: g.x, y: g.y, radius: g.radius + by}
}

// peaks returns the places where the surface may be highest on a stretch: its corners and the tops of round arcs.
func (s surface) peaks() []corner {
	out := s.corners()
	for _, g := range s.pieces {
		if g.kind == upper && g.lo <= g.x && g.x <= g.hi {
			out = append(out, corner{point: point{g.x, g.y + g.radius}})
		}
	}
	return out
}

// between returns the part across of the curve that lies r off its walls.
func (s surface) between(r float64) (lo, hi float64) {
	lo, hi = s.lo, s.hi
	if s.left == Wall {
		lo += r
	}
	if s.right == Wall {
		hi -= r
	}
	return lo, hi
}

// within returns the part across of the curve's own lifted line: between the normals at its ends, or off its walls. Where the end
// normals lean outwards there is no metal past the ends to ask about.
func (s surface) within(r float64) (lo, hi float64) {
	left, right := s.endNormals()
	return s.lo + max(0, r*left.x), s.hi + min(0, r*right.x)
}

// endNormals are the directions, of length 1 and away from the metal, in which the leftover is measured at the ends of the curve.
// At a wall it is the wall's own.
func (s surface) endNormals() (left, right point) {
	left, right = s.first.normal(s.lo), s.last.normal(s.hi)
	if s.left == Level {
		left = point{0, 1}
	} else if s.left == Wall {
		left = point{1, 0}
	}
	if s.right == Level {
		right = point{0, 1}
	} else if s.right == Wall {
		right = point{-1, 0}
	}
	return left, right
}

// distance is how far a point above the surface is from the finished metal, the shoulders of walls included.
func (s surface) distance(p point) float64 {
	best := math.Inf(1)
	for _, g := range s.pieces {
		best = min(best, g.distance(p))
	}
	if s.left == Wall {
		best = min(best, math.Abs(p.x-s.lo))
	}
	if s.right == Wall {
		best = min(best, math.Abs(s.hi-p.x))
	}
	return best
}

func (g graph) distance(p point) float64 {
	best := min(math.Hypot(p.x-g.lo, p.y-g.at(g.lo)), math.Hypot(p.x-g.hi, p.y-g.at(g.hi)))
	switch g.kind {
	case straight:
		norm := math.Hypot(1, g.slope)
		away := (p.y - g.y - g.slope*(p.x-g.x)) / norm
		if foot := p.x + away*g.slope/norm; foot >= g.lo && foot <= g.hi {
			best = min(best, math.Abs(away))
		}
	default:
		d := math.Hypot(p.x-g.x, p.y-g.y)
		side := p.y-g.y >= 0
		if foot := g.x + (p.x-g.x)*g.radius/d; d > 0 && side == (g.kind == upper) && foot >= g.lo && foot <= g.hi {
			best = min(best, math.Abs(d-g.radius))
		}
	}
	return best
}
