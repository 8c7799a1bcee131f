package draw

import (
	"math"
	"sort"

	"catchplate/planner/plan"
)

// flatLeaders writes above the plan what points at holes and edges.
func (c *Canvas) flatLeaders(b *flatBench) {
	var dims []plan.Dim
	for _, d := range b.d.Dims {
		if d.Kind == plan.DimPlace {
			dims = append(dims, d)
		}
	}
	sort.SliceStable(dims, func(i, j int) bool { return dims[i].Y0 > dims[j].Y0 }) // what lies high has the least choice
	all := c.Bounds()
	middle := (all.Left + all.Right) / 2
	ways := leaderWays{start: b.box.Top - rowsBase, left: b.box.Left - leaderSpread, right: b.box.Right + leaderSpread, keep: &b.field}
	var marks []mark
	for _, d := range dims {
		text := d.Text
		if tag := patternTag(b.d.Flat.Holes, d.Feature); tag != "" {
			text = tag + ": " + text
		}
		marks = append(marks, ways.mark(b.targets(d), labelLines(text)))
	}
	c.marks(marks, min(ways.start, all.Top)-2, -1, middle-PageWidth/2+pageEdge, middle+PageWidth/2-pageEdge)
}

// leaderSpread is how far beside the plan a leader may rise.
const leaderSpread = 26.0

// target is what a leader may point at: a place with a rim of some radius around it, on paper.
type target struct {
	p Point
	r float64
}

// targets are the holes of a pattern that a dimension names by one of them, else the place itself.
func (b *flatBench) targets(d plan.Dim) []target {
	var out []target
	for _, h := range b.d.Flat.Holes {
		if h.Feature == d.Feature {
			out = append(out, target{b.v.at(h.XMM, h.YMM), reachOf(h, b.v.scale)})
		}
	}
	if len(out) == 0 {
		return []target{{p: b.v.at(d.X0, d.Y0)}}
	}
	return out
}

// leaderWays finds ways for leaders from their targets up to a line at start, apart from one another and clear of holes and labels.
type leaderWays struct {
	start, left, right float64
	keep               *field
	taken              []float64
	drawn              [][2]Point
}

// mark chooses target and riser so that the leader runs over the least, and is short.
func (w *leaderWays) mark(targets []target, lines []string) mark {
	bestX, best, bestCost := 0.0, Point{}, math.Inf(1)
	for _, t := range targets {
		for x := w.left; x <= w.right; x += riserGap / 2 {
			if near(w.taken, x) {
				continue
			}
			top := Point{x, w.start}
			foot := t.towards(top)
			if cost := w.cost(foot, top, t); cost < bestCost {
				bestX, best, bestCost = x, foot, cost
			}
		}
	}
	w.taken = append(w.taken, bestX)
	w.drawn = append(w.drawn, [2]Point{best, {bestX, w.start}})
	w.keep.line(best, Point{bestX, w.start})
	return mark{x: bestX, start: w.start, foot: &best, arrow: true, lines: lines}
}

// towards is the point of the target's rim that faces another place.
func (t target) towards(p Point) Point {
	long := math.Hypot(p.X-t.p.X, p.Y-t.p.Y)
	if long <= t.r {
		return t.p
	}
	return Point{t.p.X + (p.X-t.p.X)*t.r/long, t.p.Y + (p.Y-t.p.Y)*t.r/long}
}

const (
	overRing   = 40.0 // a leader goes so many millimetres farther rather than run over a hole,
	overLeader = 60.0 // or another leader,
	overText   = 90.0 // or a text;
	uprightBad = 15.0 // and leans rather than be taken for an edge or a centre line
)

// cost weighs a leader's length against what it runs over.
func (w *leaderWays) cost(foot, top Point, own target) float64 {
	cost := math.Hypot(foot.X-top.X, foot.Y-top.Y)
	if math.Abs(foot.X-top.X) < slant/2*math.Abs(foot.Y-top.Y) {
		cost += uprightBad
	}
	for _, r := range w.keep.circles {
		if r.Centre != own.p && distance(r.Centre, foot, top) < r.Radius {
			cost += overRing
		}
	}
	for _, l := range w.drawn {
		if cross(l[0], l[1], foot)*cross(l[0], l[1], top) < 0 && cross(foot, top, l[0])*cross(foot, top, l[1]) < 0 {
			cost += overLeader
		}
	}
	for _, b := range w.keep.boxes {
		if crosses(foot, top, b) {
			cost += overText
		}
	}
	return cost
}

// distance is how near a straight line comes to a point.
func distance(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	long2 := dx*dx + dy*dy
	if long2 == 0 {
		return math.Hypot(p.X-a.X, p.Y-a.Y)
	}
	t := min(1, max(0, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/long2))
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}
