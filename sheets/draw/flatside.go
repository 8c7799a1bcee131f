package draw

import (
	"math"
	"sort"

	"catchplate/planner/plan"
)

// flatSection draws beside the plan what a cut along Y through the largest hole shows, back to the left and front to the right, and marks the line
// of the cut. It gives where that line stands on paper.
func (c *Canvas) flatSection(b *flatBench) float64 {
	f := b.d.Flat
	at := (b.x0 + b.x1) / 2
	if h, ok := largest(f.Holes); ok {
		at = min(max(h.XMM, b.x0), b.x1)
	}
	left := b.box.Right + sideApart
	side := sideView{scale: b.v.scale, left: left, zero: f.BackZ}
	c.sideCut(side, f, at, Stays)
	top, bottom := b.v.at(at, b.y1), b.v.at(at, b.y0)
	for _, end := range []struct {
		p Point
		s float64
	}{{top, -1}, {bottom, 1}} {
		c.Line(Outline, Point{end.p.X, end.p.Y + end.s*1.5}, Point{end.p.X, end.p.Y + end.s*5})
		b.field.line(Point{end.p.X, end.p.Y + end.s*1.5}, Point{end.p.X, end.p.Y + end.s*5})
	}
	c.Line(Centre, Point{top.X, top.Y - 1.5}, Point{bottom.X, bottom.Y + 1.5})
	b.field.line(top, bottom)
	mark := Text{At: Point{top.X + 1.5, top.Y - 2}, Anchor: AtStart, Size: textSize, Bold: true, Text: "S"}
	if top.X > (b.box.Left+b.box.Right)/2 { // keep away from the section's own letter
		mark.At.X, mark.Anchor = top.X-1.5, AtEnd
	}
	c.Text(mark)
	b.field.box(mark.Box())
	middle := side.x((f.BackZ + f.FrontZ) / 2)
	c.Text(Text{At: Point{middle, b.box.Top - 3}, Anchor: AtMiddle, Size: noteSize, Text: "S"})
	quiet := -quietest(f, at, b.y0, b.y1) * b.v.scale
	c.Text(Text{At: Point{side.x(f.BackZ) - 1.5, quiet}, Anchor: AtMiddle, Size: noteSize, Turned: true, Text: "back"})
	c.Text(Text{At: Point{side.x(f.FrontZ) + 1.5 + ascent*noteSize, quiet}, Anchor: AtMiddle, Size: noteSize, Turned: true, Text: "front"})
	return top.X
}

// quietest is the y that lies farthest from the middle of every hole that a cut at x opens.
func quietest(f *plan.Flat, x, y0, y1 float64) float64 {
	best, most := (y0+y1)/2, -1.0
	for i := range edgeTries - 3 {
		y := y0 + (y1-y0)*float64(i+2)/edgeTries
		off := math.Inf(1)
		for _, g := range gaps(f, x) {
			off = min(off, math.Abs(y-(g.y0+g.y1)/2))
		}
		if off > most && !math.IsInf(off, 1) {
			best, most = y, off
		}
	}
	return best
}

// largest is the largest bore, or where there is none the largest hole of a pattern.
func largest(holes []plan.FlatHole) (plan.FlatHole, bool) {
	best := plan.FlatHole{}
	for _, h := range holes {
		bore, before := h.Number == 0, best.Number == 0 && best.DiameterMM > 0
		if bore && !before || bore == before && h.DiameterMM > best.DiameterMM {
			best = h
		}
	}
	return best, best.DiameterMM > 0
}

// sideView carries (z, y) of a flat part to paper: the back to the left.
type sideView struct {
	scale, left, zero float64
}

func (v sideView) x(z float64) float64   { return v.left + (z-v.zero)*v.scale }
func (v sideView) at(z, y float64) Point { return Point{v.x(z), -y * v.scale} }

// gap is a stretch along Y where a hole meets the plane of a cut, between two depths.
type gap struct{ y0, y1, z0, z1 float64 }

// gaps are the holes and slots that a plane at x cuts open.
func gaps(f *plan.Flat, x float64) []gap {
	var out []gap
	for _, h := range f.Holes {
		for _, d := range []float64{h.DiameterMM, h.SinkMM} {
			half2 := d*d/4 - (x-h.XMM)*(x-h.XMM)
			if half2 <= touching {
				continue
			}
			g := gap{h.YMM - math.Sqrt(half2), h.YMM + math.Sqrt(half2), min(h.FromZ, h.ToZ), max(h.FromZ, h.ToZ)}
			if d == h.SinkMM && d > h.DiameterMM {
				g = sunk(g, h)
			}
			out = append(out, g)
		}
	}
	return out
}

// sunkShare is the part of a widened mouth's extra width that it is drawn deep: its own depth is not known to the drawing.
const sunkShare = 0.5

// sunk is the mouth of a hole alone, drawn as a countersink of a right angle is deep.
func sunk(g gap, h plan.FlatHole) gap {
	deep := (h.SinkMM - h.DiameterMM) * sunkShare
	if h.FromZ > h.ToZ {
		g.z0 = max(g.z0, h.FromZ-deep)
	} else {
		g.z1 = min(g.z1, h.FromZ+deep)
	}
	return g
}

// sideCut fills the metal that a plane at x cuts through and draws its edges.
func (c *Canvas) sideCut(v sideView, f *plan.Flat, x float64, class Class) {
	cuts := gaps(f, x)
	for _, run := range chords(f.Outline, x, true) {
		c.Rect(class, v.at(f.BackZ, run[0]), v.at(f.FrontZ, run[1]))
		c.Rect(Outline, v.at(f.BackZ, run[0]), v.at(f.FrontZ, run[1]))
	}
	sort.SliceStable(cuts, func(i, j int) bool { return cuts[i].y1-cuts[i].y0 > cuts[j].y1-cuts[j].y0 })
	for _, g := range cuts {
		z0, z1 := max(g.z0, f.BackZ), min(g.z1, f.FrontZ)
		c.Rect(Paper, v.at(z0, g.y0), v.at(z1, g.y1))
	}
	for i := len(cuts) - 1; i >= 0; i-- {
		g := cuts[i]
		c.Rect(Outline, v.at(max(g.z0, f.BackZ), g.y0), v.at(min(g.z1, f.FrontZ), g.y1))
		y := (g.y0 + g.y1) / 2
		c.Line(Centre, Point{v.x(f.BackZ) - 3, -y * v.scale}, Point{v.x(f.FrontZ) + 3, -y * v.scale})
	}
	for _, s := range f.Seats {
		z, in := faceZ(f, s)
		for _, line := range troughs(f, s, x, true) {
			c.trough(Paper, line, func(y, deep, over float64) Point {
				p := v.at(z+in*deep, y)
				return Point{p.X - in*over, p.Y}
			})
		}
	}
}
