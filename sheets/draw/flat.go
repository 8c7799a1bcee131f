package draw

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// The most that a flat part may take on paper in its drawing.
const (
	flatWide  = 96.0
	flatHigh  = 112.0
	flatTall  = 215.0 // the figure as a whole
	sideApart = 16.0  // from the plan to the section
	crossOver = 2.0   // the cross of a hole goes on beyond its rim
)

// flatBench is what is known of a flat part while it is dimensioned.
type flatBench struct {
	v              planeView
	d              plan.Drawing
	box            Box // of the plan on paper
	x0, y0, x1, y1 float64
	field          field
}

// flatPart is the drawing of a flat part: its plan seen from the front, a section, its dimensions from the datum edges.
func flatPart(name string, p *plan.Part) Page {
	d := p.Drawing
	x0, y0, x1, y1 := extent(d.Flat.Outline)
	i := sort.Search(len(scales)-1, func(i int) bool { return (x1-x0)*scales[i] <= flatWide && (y1-y0)*scales[i] <= flatHigh })
	var page Page
	for _, scale := range scales[i:] {
		page = drawFlat(d, scale).Page(name, Title(p.Name)+" as it was understood", describeFlat(p))
		if page.Width <= PageWidth && page.Height <= flatTall || scale*max(x1-x0, y1-y0) < leastSeen {
			break
		}
	}
	return page
}

func describeFlat(p *plan.Part) string {
	text := fmt.Sprintf("%s seen from the front, with a section; %s thick.", Title(p.Name), units.Length(p.LengthMM))
	for _, dim := range p.Drawing.Dims {
		text += " " + dim.Text + "."
	}
	return text
}

func drawFlat(d plan.Drawing, scale float64) *Canvas {
	c := NewCanvas()
	b := &flatBench{v: planeView{scale: scale}, d: d}
	b.x0, b.y0, b.x1, b.y1 = extent(d.Flat.Outline)
	lower, upper := b.v.at(b.x0, b.y0), b.v.at(b.x1, b.y1)
	b.box = Box{lower.X, upper.Y, upper.X, lower.Y}
	c.planOf(b.v, d.Flat, &b.field)
	c.rings(b.v, d.Rings, d.Flat.Holes, &b.field)
	cut := c.flatSection(b)
	sizes, keys := c.flatLengths(b, []float64{cut})
	c.datums(b, sizes)
	c.flatLeaders(b)
	c.holeNumbers(b.v, d.Flat.Holes, d.Flat.Holes, d.Rings, &b.field)
	lines := []string{"Scale " + scaleText(scale) + ". Do not measure the paper. Seen from the front; the section is along line S."}
	if len(d.Datum) > 0 {
		lines = append(lines, "Filled triangles mark the datum edges, "+strings.Join(d.Datum, " and ")+": places count from them.")
	}
	all := c.Bounds()
	c.footNotes(append(append(lines, keys...), d.Notes...), all.Left, (all.Left+all.Right)/2)
	return c
}

// planOf draws a flat part from the front: its edges, holes and slots.
func (c *Canvas) planOf(v planeView, f *plan.Flat, keep *field) {
	rim := v.rim(Outline, f.Outline)
	c.Path(rim)
	keep.path(rim)
	for _, s := range f.Slots {
		c.slot(v, s, keep)
	}
	c.seatsInPlan(v, f, keep)
	for _, h := range f.Holes {
		c.hole(v, h, seenClass(h, f, v), keep)
	}
}

// seenClass is how a hole's edge is drawn: dashed where the face that is seen hides it.
func seenClass(h plan.FlatHole, f *plan.Flat, v planeView) Class {
	low, high := min(h.FromZ, h.ToZ), max(h.FromZ, h.ToZ)
	if v.mirror && low > f.BackZ+touching || !v.mirror && high < f.FrontZ-touching {
		return Hidden
	}
	return Outline
}

// threadShare is how far the outer circle of an inside thread stands off its core in a drawing.
const threadShare = 1.2

// hole draws a hole along Z with its cross: a thread as three quarters of a thin circle around the core, a sunk mouth as a circle.
func (c *Canvas) hole(v planeView, h plan.FlatHole, class Class, keep *field) {
	p, r := v.at(h.XMM, h.YMM), h.DiameterMM/2*v.scale
	c.Circle(class, p, r)
	keep.ring(p, r)
	if h.SinkMM > h.DiameterMM {
		r = h.SinkMM / 2 * v.scale
		c.Circle(class, p, r)
		keep.ring(p, r)
	}
	if h.Thread != "" {
		r = max(r*threadShare, r+0.5)
		c.Path(Path{Class: Thin, Start: Point{p.X + r, p.Y}, Steps: []Step{{To: Point{p.X, p.Y + r}, Radius: r, Centre: p, Clockwise: true},
			{To: Point{p.X - r, p.Y}, Radius: r, Centre: p, Clockwise: true}, {To: Point{p.X, p.Y - r}, Radius: r, Centre: p, Clockwise: true}}})
		keep.ring(p, r)
	}
	c.cross(p, r+crossOver, keep)
}

func (c *Canvas) cross(p Point, reach float64, keep *field) {
	for _, d := range []Point{{reach, 0}, {0, reach}} {
		a, b := Point{p.X - d.X, p.Y - d.Y}, Point{p.X + d.X, p.Y + d.Y}
		c.Line(Centre, a, b)
		keep.line(a, b)
	}
}

// slot draws a slot with round ends.
func (c *Canvas) slot(v planeView, s plan.FlatSlot, keep *field) {
	p := slotPath(v, s, Outline)
	c.Path(p)
	keep.path(p)
	for _, e := range []Point{v.at(s.X0, s.Y0), v.at(s.X1, s.Y1)} {
		c.cross(e, s.WidthMM/2*v.scale+crossOver, keep)
	}
}

func slotPath(v planeView, s plan.FlatSlot, class Class) Path {
	long, r := math.Hypot(s.X1-s.X0, s.Y1-s.Y0), s.WidthMM/2
	ux, uy := 1.0, 0.0
	if long > 0 {
		ux, uy = (s.X1-s.X0)/long, (s.Y1-s.Y0)/long
	}
	off := func(x, y, side float64) Point { return v.at(x-side*uy*r, y+side*ux*r) }
	return Path{Class: class, Closed: true, Start: off(s.X0, s.Y0, 1), Steps: []Step{
		{To: off(s.X0, s.Y0, -1), Radius: r * v.scale, Centre: v.at(s.X0, s.Y0), Clockwise: v.mirror},
		{To: off(s.X1, s.Y1, -1)},
		{To: off(s.X1, s.Y1, 1), Radius: r * v.scale, Centre: v.at(s.X1, s.Y1), Clockwise: v.mirror}}}
}

// rings draws pitch circles, and the line from the middle through hole 1 that shows where the count begins.
func (c *Canvas) rings(v planeView, rings []plan.Ring, holes []plan.FlatHole, keep *field) {
	for _, r := range rings {
		p, radius := v.at(r.XMM, r.YMM), r.DiameterMM/2*v.scale
		c.Circle(Centre, p, radius)
		keep.ring(p, radius)
		for _, h := range holes {
			if h.Feature == r.Feature && h.Number == 1 {
				end := v.at(h.XMM, h.YMM)
				c.Line(Centre, p, end)
				keep.line(p, end)
			}
		}
	}
}

// holeNumbers writes each numbered hole's number beside it, away from the middle of its ring where it has one.
func (c *Canvas) holeNumbers(v planeView, holes, all []plan.FlatHole, rings []plan.Ring, keep *field) {
	for _, h := range holes {
		if h.Number == 0 || alone(all, h.Feature) {
			continue
		}
		p, way := v.at(h.XMM, h.YMM), Point{1, -1}
		for _, r := range rings {
			if m := v.at(r.XMM, r.YMM); r.Feature == h.Feature && m != p {
				way = Point{p.X - m.X, p.Y - m.Y}
			}
		}
		r := max(h.DiameterMM, h.SinkMM) / 2 * v.scale
		if h.Thread != "" {
			r = max(r*threadShare, r+0.5)
		}
		c.near(keep, p, r+labelPad, way, Text{Size: noteSize, Bold: true, Text: patternTag(all, h.Feature) + fmt.Sprint(h.Number)})
	}
}

// footNotes writes lines below everything drawn, from left on, within a page whose middle lies at middle.
func (c *Canvas) footNotes(lines []string, left, middle float64) {
	box := c.Bounds()
	left = max(min(box.Left, left), middle-PageWidth/2+pageEdge)
	y := box.Bottom + 3
	for _, l := range lines {
		for _, part := range Wrap(Plain(l), PageWidth-2*pageEdge-10, noteSize, false) {
			y += LineStep * noteSize
			c.Text(Text{At: Point{left, y}, Anchor: AtStart, Size: noteSize, Text: part})
		}
	}
}
