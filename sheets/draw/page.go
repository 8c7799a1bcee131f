package draw

import "math"

// Module is the step of a page's width and height in millimetres: 24 CSS pixels. A browser snaps an image to whole pixels and shrinks the
// drawing to fit, so that only multiples of whole pixels print at 1:1 (measured with Chromium 156: 100 mm prints as 100.0000 mm).
const Module = 6.35

// PageWidth is the width of every figure: 27 modules, which an A4 page leaves between a binder's margin of 20 mm and 15 mm on the right.
const PageWidth = 27 * Module

// Point is a place on paper.
type Point struct{ X, Y float64 }

// Box is a rectangle on paper, edges parallel to the page's.
type Box struct{ Left, Top, Right, Bottom float64 }

// emptyBox is the box of nothing: it gives way to whatever is joined to it.
func emptyBox() Box { return Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)} }

// Overlaps reports whether two boxes share more than an edge.
func (b Box) Overlaps(o Box) bool {
	return b.Left < o.Right && o.Left < b.Right && b.Top < o.Bottom && o.Top < b.Bottom
}

// Inside reports whether b lies within o.
func (b Box) Inside(o Box) bool {
	return b.Left >= o.Left && b.Right <= o.Right && b.Top >= o.Top && b.Bottom <= o.Bottom
}

// Width and Height are the box's sides.
func (b Box) Width() float64  { return b.Right - b.Left }
func (b Box) Height() float64 { return b.Bottom - b.Top }

func (b Box) join(o Box) Box {
	return Box{min(b.Left, o.Left), min(b.Top, o.Top), max(b.Right, o.Right), max(b.Bottom, o.Bottom)}
}

func (b Box) with(p Point) Box { return b.join(Box{p.X, p.Y, p.X, p.Y}) }

// Page is a finished figure.
type Page struct {
	Name          string // of the figure within its document; unique there
	Title         string
	Desc          string // says in words what the figure shows
	Width, Height float64
	Shapes        []Shape // later ones cover earlier ones
}

// Class says how a shape is drawn: its pen, its filling. Meaning never hangs on colour.
type Class string

// The classes. Each has one entry in the stylesheet of the writer.
const (
	Outline Class = "outline" // edges of the work
	Thin    Class = "thin"    // dimension and extension lines, leaders
	Centre  Class = "centre"  // centre line
	Hidden  Class = "hidden"  // edges that lie behind metal
	Stays   Class = "stays"   // cut metal that stays in this holding
	Off     Class = "off"     // cut metal that comes off in this holding
	Holder  Class = "holder"  // jaws, mandrel, centres
	Paper   Class = "paper"   // white, covers what lies below
	Glue    Class = "glue"    // a film of adhesive, or soft packing
	Head    Class = "head"    // arrow heads and marks, filled
	CutWay  Class = "cutway"  // the way of a cut
)

// Classes lists every class, for the writer and its test.
func Classes() []Class {
	return []Class{Outline, Thin, Centre, Hidden, Stays, Off, Holder, Paper, Glue, Head, CutWay}
}

// Shape is a Path, a Circle or a Text. The list is closed.
type Shape interface{ isShape() }

// Path is a run of lines and arcs.
type Path struct {
	Class  Class
	Start  Point
	Steps  []Step
	Closed bool
}

// Step goes on to a point: straight, or round Centre when Radius is not 0. Clockwise is as seen on the page. An arc is at most half a circle.
type Step struct {
	To        Point
	Radius    float64
	Centre    Point
	Clockwise bool
}

// Circle is a full circle.
type Circle struct {
	Class  Class
	Centre Point
	Radius float64
}

// Anchor says which point of a line of text stands at Text.At.
type Anchor string

// The anchors.
const (
	AtStart  Anchor = "start"
	AtMiddle Anchor = "middle"
	AtEnd    Anchor = "end"
)

// Text is one line of text; At is on its base line.
type Text struct {
	At     Point
	Anchor Anchor
	Size   float64 // height of the font in millimetres
	Bold   bool
	Turned bool // reads upwards: turned a quarter anticlockwise about At
	Text   string
}

func (Path) isShape()   {}
func (Circle) isShape() {}
func (Text) isShape()   {}

// Box is the room that the text may take, by the widest of the fonts that are likely to print it.
func (t Text) Box() Box {
	w := Width(t.Text, t.Size, t.Bold)
	start := 0.0
	switch t.Anchor {
	case AtMiddle:
		start = -w / 2
	case AtEnd:
		start = -w
	}
	if t.Turned {
		return Box{t.At.X - ascent*t.Size, t.At.Y - start - w, t.At.X + descent*t.Size, t.At.Y - start}
	}
	return Box{t.At.X + start, t.At.Y - ascent*t.Size, t.At.X + start + w, t.At.Y + descent*t.Size}
}

func (p Path) box() Box {
	b := emptyBox().with(p.Start)
	at := p.Start
	for _, s := range p.Steps {
		b = b.with(s.To)
		if s.Radius != 0 {
			for _, q := range crests(at, s) {
				b = b.with(q)
			}
		}
		at = s.To
	}
	return b
}

// crests are the points of an arc that lie farthest left, right, up or down, where they are on it.
func crests(from Point, s Step) []Point {
	var out []Point
	for _, d := range []Point{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		q := Point{s.Centre.X + d.X*s.Radius, s.Centre.Y + d.Y*s.Radius}
		if onArc(from, s, q) {
			out = append(out, q)
		}
	}
	return out
}

// onArc reports whether q, a point of the circle, lies on the arc: on the side of the chord that the arc bulges to.
func onArc(from Point, s Step, q Point) bool {
	side := cross(from, s.To, q)
	if s.Clockwise {
		return side < 0
	}
	return side > 0
}

// cross is positive when c lies to the right of the way from a to b as seen on the page (y downwards).
func cross(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
