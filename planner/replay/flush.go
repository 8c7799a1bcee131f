package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/tables"
)

// Two flat parts with their edges flush are held by three touches: two along one pair of edges, one along the other. Each may be off by what a bar, light and a finger
// nail leave unseen, and the worst of all ways in which they may be off together is looked for.

// mateShift is how far what registers the other part lets it shift, radially at the hole that shifts the most.
func (w *walk) mateShift(f *partspec.Holes) float64 {
	if f.Mate.Flush == nil {
		return float64(f.Mate.Slack)
	}
	other := w.job.Part(f.Match.Part)
	lines, ok := flushLines(w.part.Outline, other.Outline, f.Mate.Flush)
	if !ok {
		return math.Inf(1)
	}
	base, across := lines[0], lines[1]
	if across.long() > base.long() {
		base, across = across, base
	}
	most := 0.0
	for _, end := range []vec{across.from, across.to} {
		for signs := range 8 {
			off := func(bit int) float64 {
				return float64(tables.PlaceError(tables.ByFlush)) * float64(2*(signs>>bit&1)-1)
			}
			for _, at := range f.Places {
				most = math.Max(most, threeTouches(base, across, end, off(0), off(1), off(2)).of(vec{float64(at.X.Value), float64(at.Y.Value)}))
			}
		}
	}
	return most
}

// vec is a place or a direction in the plane of a flat part.
type vec struct{ x, y float64 }

func (v vec) less(u vec) vec            { return vec{v.x - u.x, v.y - u.y} }
func (v vec) along(u vec) float64       { return v.x*u.x + v.y*u.y }
func (v vec) turned() vec               { return vec{-v.y, v.x} }
func (v vec) plus(k float64, u vec) vec { return vec{v.x + k*u.x, v.y + k*u.y} }

// flushLine is where an edge of each of two parts lies on the other's, and the way out of the metal.
type flushLine struct{ from, to, out vec }

func (l flushLine) long() float64 { return math.Hypot(l.to.x-l.from.x, l.to.y-l.from.y) }

// edgeOf is an edge of an outline as a line; the metal lies on its left.
func edgeOf(o *partspec.Outline, name string) flushLine {
	e, _ := o.Edge(name)
	l := flushLine{from: vec{float64(e.X0), float64(e.Y0)}, to: vec{float64(e.X1), float64(e.Y1)}}
	way := l.to.less(l.from)
	l.out = vec{way.y / l.long(), -way.x / l.long()}
	return l
}

// flushLines lays the other part's edges on those here, and finds the stretches that they have in common; not ok where they have none.
func flushLines(here, there *partspec.Outline, lies *partspec.Flush) (lines [2]flushLine, ok bool) {
	if here == nil || there == nil {
		return lines, false
	}
	mine := [2]flushLine{edgeOf(here, lies.Here[0]), edgeOf(here, lies.Here[1])}
	its := [2]flushLine{edgeOf(there, lies.There[0]), edgeOf(there, lies.There[1])}
	laid := func(p vec) vec { // as far out of both edges here as it is out of those there
		q := vec{}
		for i := range mine {
			q = q.plus(p.less(its[i].from).along(its[i].out)+mine[i].from.along(mine[i].out), mine[i].out)
		}
		return q
	}
	for i, m := range mine {
		way := vec{}.plus(1/m.long(), m.to.less(m.from))
		a, b := laid(its[i].from).less(m.from).along(way), laid(its[i].to).less(m.from).along(way)
		low, high := math.Max(0, math.Min(a, b)), math.Min(m.long(), math.Max(a, b))
		if high-low < same {
			return lines, false
		}
		lines[i] = flushLine{from: m.from.plus(low, way), to: m.from.plus(high, way), out: m.out}
	}
	return lines, true
}

// shifted is a small movement of a part: of one place, and its turn about it.
type shifted struct {
	about, by vec
	turn      float64
}

// threeTouches is the movement by which a part comes off at three touches, out of the edges: at both ends of one stretch, and at a place of the other.
func threeTouches(base, across flushLine, at vec, first, second, third float64) shifted {
	s := shifted{about: base.from, by: vec{}.plus(first, base.out)}
	s.turn = (second - first) / base.to.less(base.from).turned().along(base.out)
	s.by = s.by.plus(third-s.turn*at.less(base.from).turned().along(across.out), across.out)
	return s
}

// of is how far it moves a place.
func (s shifted) of(p vec) float64 {
	d := s.by.plus(s.turn, p.less(s.about).turned())
	return math.Hypot(d.x, d.y)
}
