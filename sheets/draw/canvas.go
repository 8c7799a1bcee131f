package draw

import "math"

// Sizes on paper, in millimetres. Text is a little larger than the drawing office's usual 3.5 mm
// (ISO 3098 series, from memory): a sketch is read standing at the machine.
const (
	textSize  = 3.8
	noteSize  = 3.3
	arrowLong = 3.0
	arrowWide = 1.1
	pageEdge  = 2.0 // white left at the page's edges
)

// Canvas collects shapes around any origin; Page moves them onto paper.
type Canvas struct {
	shapes []Shape
	box    Box
}

// NewCanvas is an empty canvas.
func NewCanvas() *Canvas { return &Canvas{box: emptyBox()} }

// Line draws a straight line.
func (c *Canvas) Line(class Class, a, b Point) { c.Poly(class, false, a, b) }

// Poly draws straight lines through points.
func (c *Canvas) Poly(class Class, closed bool, points ...Point) {
	p := Path{Class: class, Start: points[0], Closed: closed}
	for _, q := range points[1:] {
		p.Steps = append(p.Steps, Step{To: q})
	}
	c.Path(p)
}

// Rect draws a rectangle between two opposite corners.
func (c *Canvas) Rect(class Class, a, b Point) {
	c.Poly(class, true, a, Point{b.X, a.Y}, b, Point{a.X, b.Y})
}

// Path draws lines and arcs.
func (c *Canvas) Path(p Path) {
	c.shapes = append(c.shapes, p)
	c.box = c.box.join(p.box())
}

// Circle draws a circle.
func (c *Canvas) Circle(class Class, centre Point, radius float64) {
	c.shapes = append(c.shapes, Circle{class, centre, radius})
	c.box = c.box.join(Box{centre.X - radius, centre.Y - radius, centre.X + radius, centre.Y + radius})
}

// Text writes one line.
func (c *Canvas) Text(t Text) {
	if t.Text == "" {
		return
	}
	c.shapes = append(c.shapes, t)
	c.box = c.box.join(t.Box())
}

// Arrow draws an arrow head with its point at tip, coming from the direction of from. It draws no shaft.
func (c *Canvas) Arrow(tip, from Point) {
	dx, dy := from.X-tip.X, from.Y-tip.Y
	long := math.Hypot(dx, dy)
	if long == 0 {
		return
	}
	dx, dy = dx/long, dy/long
	back := Point{tip.X + dx*arrowLong, tip.Y + dy*arrowLong}
	half := arrowWide / 2
	c.Poly(Head, true, tip, Point{back.X - dy*half, back.Y + dx*half}, Point{back.X + dy*half, back.Y - dx*half})
}

// Bounds is the room that everything drawn so far takes.
func (c *Canvas) Bounds() Box { return c.box }

// Page moves everything drawn onto a page at least as wide as PageWidth, centred, with both sides whole modules.
func (c *Canvas) Page(name, title, desc string) Page {
	box := c.box
	if math.IsInf(box.Left, 0) {
		box = Box{}
	}
	width := max(PageWidth, modules(box.Width()+2*pageEdge))
	height := modules(box.Height() + 2*pageEdge)
	dx := (width-box.Width())/2 - box.Left
	dy := (height-box.Height())/2 - box.Top
	page := Page{Name: name, Title: title, Desc: desc, Width: width, Height: height}
	for _, s := range c.shapes {
		page.Shapes = append(page.Shapes, moved(s, dx, dy))
	}
	return page
}

// modules rounds a length up to whole modules.
func modules(mm float64) float64 { return math.Ceil(mm/Module) * Module }

func moved(s Shape, dx, dy float64) Shape {
	return mapped(s, func(p Point) Point { return Point{p.X + dx, p.Y + dy} })
}

// Place draws all of another canvas, moved.
func (c *Canvas) Place(o *Canvas, dx, dy float64) {
	for _, s := range o.shapes {
		c.shapes = append(c.shapes, moved(s, dx, dy))
	}
	if !math.IsInf(o.box.Left, 0) {
		c.box = c.box.join(Box{o.box.Left + dx, o.box.Top + dy, o.box.Right + dx, o.box.Bottom + dy})
	}
}

// PlaceTurned draws all of another canvas, turned a quarter anticlockwise about its origin: what lay to the right then lies above.
func (c *Canvas) PlaceTurned(o *Canvas) {
	for _, s := range o.shapes {
		s = mapped(s, func(p Point) Point { return Point{p.Y, -p.X} })
		if t, ok := s.(Text); ok {
			t.Turned = true
			s = t
		}
		c.shapes = append(c.shapes, s)
	}
	if !math.IsInf(o.box.Left, 0) {
		c.box = c.box.join(Box{o.box.Top, -o.box.Right, o.box.Bottom, -o.box.Left})
	}
}

// mapped carries a shape's points elsewhere without changing its size or handedness.
func mapped(s Shape, shift func(Point) Point) Shape {
	switch s := s.(type) {
	case Path:
		steps := make([]Step, len(s.Steps))
		for i, step := range s.Steps {
			step.To, step.Centre = shift(step.To), shift(step.Centre)
			steps[i] = step
		}
		s.Start, s.Steps = shift(s.Start), steps
		return s
	case Circle:
		s.Centre = shift(s.Centre)
		return s
	case Text:
		s.At = shift(s.At)
		return s
	}
	return s
}
