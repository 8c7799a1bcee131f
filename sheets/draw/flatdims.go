package draw

import (
	"math"

	"catchplate/planner/plan"
)

// flatLengths draws the dimensions along X below the plan and those along Y left of it, and the thickness below the section. busy are
// places on paper where other lines run down. It gives where extension
// lines run, and the texts too long to stand on their lines.
func (c *Canvas) flatLengths(b *flatBench, busy []float64) (places extensions, keys []string) {
	var across, up []span
	key := func(text string) string {
		if Width(text, textSize, false) <= labelMost {
			return text
		}
		keys = append(keys, letter(len(keys))+": "+text)
		return letter(len(keys) - 1)
	}
	section := sideView{scale: b.v.scale, left: b.box.Right + sideApart, zero: b.d.Flat.BackZ}
	for _, d := range b.d.Dims {
		switch d.Kind {
		case plan.DimAcross:
			across = append(across, ordered(span{b.v.at(d.X0, 0).X, b.v.at(d.X1, 0).X, b.below(d.X0, d.Y0), b.below(d.X1, d.Y1), key(d.Text), b.box.Left - cornerKept}))
		case plan.DimUp:
			up = append(up, ordered(span{d.Y0 * b.v.scale, d.Y1 * b.v.scale, b.left(d.X0, d.Y0), b.left(d.X1, d.Y1), key(d.Text), -b.box.Bottom - cornerKept}))
		case plan.DimLength:
			across = append(across, ordered(span{section.x(d.Z0), section.x(d.Z1), b.box.Bottom, b.box.Bottom, key(d.Text), b.box.Right}))
		}
	}
	rows := ladder(across, busy)
	c.rungs(rows, b.box.Bottom, 1)
	side := NewCanvas()
	columns := ladder(up, nil)
	side.rungs(columns, b.box.Left, -1)
	c.PlaceTurned(side)
	for _, r := range rows {
		places.x = append(places.x, r.x0, r.x1)
		b.field.line(Point{r.x0, r.depth0}, Point{r.x0, b.box.Bottom + firstLevel})
		b.field.line(Point{r.x1, r.depth1}, Point{r.x1, b.box.Bottom + firstLevel})
	}
	for _, r := range columns {
		places.y = append(places.y, -r.x0, -r.x1)
		b.field.line(Point{r.depth0, -r.x0}, Point{b.box.Left - firstLevel, -r.x0})
		b.field.line(Point{r.depth1, -r.x1}, Point{b.box.Left - firstLevel, -r.x1})
	}
	return places, keys
}

// cornerKept is how far dimensions along one side of the plan may reach into the corner where those along the other begin.
const cornerKept = tailLong + 1

// extensions are the places on paper where extension lines run down (x) and to the left (y).
type extensions struct{ x, y []float64 }

func ordered(s span) span {
	if s.x0 > s.x1 {
		s.x0, s.x1, s.depth0, s.depth1 = s.x1, s.x0, s.depth1, s.depth0
	}
	return s
}

// below is where the extension line of a place begins on its way down: under the cross of a hole, else at the place itself.
func (b *flatBench) below(x, y float64) float64 { return b.v.at(x, y).Y + b.crossAt(x, y) }

// left is where it begins on its way to the left.
func (b *flatBench) left(x, y float64) float64 { return b.v.at(x, y).X - b.crossAt(x, y) }

// crossAt is how far the cross of a hole at a place reaches; 0 where there is none.
func (b *flatBench) crossAt(x, y float64) float64 {
	for _, h := range b.d.Flat.Holes {
		if math.Hypot(h.XMM-x, h.YMM-y) < touching {
			return reachOf(h, b.v.scale) + crossOver
		}
	}
	return 0
}

// reachOf is the radius on paper of all that is drawn of a hole.
func reachOf(h plan.FlatHole, scale float64) float64 {
	r := max(h.DiameterMM, h.SinkMM) / 2 * scale
	if h.Thread != "" {
		r = max(r*threadShare, r+0.5)
	}
	return r
}

const (
	triangleHigh = 3.0
	triangleHalf = 1.7
)

// datums marks the edges that places count from by filled triangles, where no extension line runs.
func (c *Canvas) datums(b *flatBench, e extensions) {
	for _, name := range b.d.Datum {
		s, ok := named(b.d.Flat.Outline, name)
		if !ok || s.RadiusMM != 0 {
			continue
		}
		from, to := b.v.at(s.X0, s.Y0), b.v.at(s.X1, s.Y1)
		long := math.Hypot(to.X-from.X, to.Y-from.Y)
		if long == 0 {
			continue
		}
		ux, uy := (to.X-from.X)/long, (to.Y-from.Y)/long
		out := Point{-uy, ux} // the metal lies on the left of an edge, which on paper is (uy, -ux)
		p := clearest(from, to, e)
		c.Poly(Head, true, p, Point{p.X + out.X*triangleHigh - ux*triangleHalf, p.Y + out.Y*triangleHigh - uy*triangleHalf},
			Point{p.X + out.X*triangleHigh + ux*triangleHalf, p.Y + out.Y*triangleHigh + uy*triangleHalf})
	}
}

// clearest is the place of an edge farthest from all extension lines.
func clearest(from, to Point, e extensions) Point {
	var best Point
	most := -1.0
	for i := 1; i < edgeTries; i++ {
		f := float64(i) / edgeTries
		p := Point{from.X + (to.X-from.X)*f, from.Y + (to.Y-from.Y)*f}
		off := math.Inf(1)
		for _, x := range e.x {
			off = min(off, math.Abs(x-p.X))
		}
		if math.Abs(to.X-from.X) < math.Abs(to.Y-from.Y) {
			off = math.Inf(1)
			for _, y := range e.y {
				off = min(off, math.Abs(y-p.Y))
			}
		}
		if off > most+touching {
			best, most = p, off
		}
	}
	return best
}

// edgeTries is how many places of an edge are tried.
const edgeTries = 24
