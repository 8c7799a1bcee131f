package draw

import (
	"math"
	"sort"
)

// cutArrow is the arrow of a cut with its place found.
type cutArrow struct {
	cutMark
	tip, tail Point
}

// box is the room that an arrow takes, with some air around it.
func (a cutArrow) box() Box {
	b := emptyBox().with(a.tip).with(a.tail)
	return Box{b.Left - cutClear, b.Top - cutClear, b.Right + cutClear, b.Bottom + cutClear}
}

// cutArrows draws an arrow for every outside cut, where it cuts, and gives the marks of their labels and the highest place taken.
func (c *Canvas) cutArrows(sc *scene, cuts []cutMark) (marks []mark, top float64) {
	top = -sc.reach
	var placed []cutArrow
	for _, a := range sc.arrows(cuts) {
		for meets(a, placed) {
			a.tip.Y, a.tail.Y = a.tip.Y-cutRise, a.tail.Y-cutRise
		}
		placed = append(placed, a)
		top = min(top, a.box().Top)
	}
	sort.SliceStable(placed, func(i, j int) bool { return placed[i].middle() < placed[j].middle() })
	for _, a := range placed {
		c.shaft(a.tip, a.tail)
		foot := Point{a.middle(), min(a.tip.Y, a.tail.Y)}
		marks = append(marks, mark{x: foot.X, start: top - cutClear, foot: &foot, lines: a.lines, bold: true})
	}
	return marks, top
}

// arrows are the arrows of all cuts, those along the work first, since they stand lowest. Cuts at one place and in one way share an arrow.
func (sc *scene) arrows(cuts []cutMark) []cutArrow {
	var out []cutArrow
	for _, m := range cuts {
		a := sc.arrow(m)
		shared := false
		for i, o := range out {
			if o.way == a.way && math.Abs(o.middle()-a.middle()) < sameArrow && math.Abs(o.tip.Y-a.tip.Y) < sameArrow {
				out[i].lines, shared = append(o.lines, a.lines...), true
				break
			}
		}
		if !shared {
			out = append(out, a)
		}
	}
	across := func(a cutArrow) bool { return a.way == inward || a.way == outward }
	sort.SliceStable(out, func(i, j int) bool { return !across(out[i]) && across(out[j]) })
	return out
}

// sameArrow is how near two arrows must be to be drawn as one.
const sameArrow = 1.5

func (a cutArrow) middle() float64 { return (a.tip.X + a.tail.X) / 2 }

func meets(a cutArrow, placed []cutArrow) bool {
	for _, p := range placed {
		if a.box().Overlaps(p.box()) {
			return true
		}
	}
	return false
}

// arrow is the arrow of a cut just above the surface that it cuts.
func (sc *scene) arrow(m cutMark) cutArrow {
	x0, x1 := sc.v.x(m.place.z0), sc.v.x(m.place.z1)
	x, long := (x0+x1)/2, min(cutLong, max(cutShort, max(x0, x1)-min(x0, x1)-2*cutClear))
	y := -greatest(sc.before.Outer, m.place.z0, m.place.z1)*sc.v.scale - cutClear
	if m.atFace {
		x = sc.xFree + 2*cutClear
	}
	a := cutArrow{cutMark: m}
	switch m.way {
	case toHead:
		a.tip, a.tail = Point{x - long/2, y - cutAbove}, Point{x + long/2, y - cutAbove}
	case toFree:
		a.tip, a.tail = Point{x + long/2, y - cutAbove}, Point{x - long/2, y - cutAbove}
	case outward:
		a.tip, a.tail = Point{x, y - cutLong}, Point{x, y}
	default:
		a.tip, a.tail = Point{x, y}, Point{x, y - cutLong}
	}
	return a
}

// shaft is an arrow with a heavy shaft.
func (c *Canvas) shaft(tip, tail Point) {
	c.Line(CutWay, tail, Point{tip.X + (tail.X-tip.X)*0.3, tip.Y + (tail.Y-tip.Y)*0.3})
	c.Arrow(tip, tail)
}
