package draw

import (
	"fmt"
	"sort"
	"strconv"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// scales are the scales of ISO 5455 (from memory), largest first, with steps between them so that a part fills its page.
var scales = []float64{50, 20, 10, 5, 4, 3, 2, 1.5, 1, 0.75, 0.5, 0.4, 0.3, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001}

// scaleText shows a scale: "5:1", "1:2".
func scaleText(scale float64) string {
	if scale >= 1 {
		return units.Decimal(scale, 1) + ":1"
	}
	return "1:" + units.Decimal(1/scale, 2)
}

// The most that the work itself may take on paper, and the figure as a whole.
const (
	mostLong = 125.0
	mostHigh = 110.0
	mostTall = 190.0
)

// Part is the dimensioned drawing of a part: upper half in section, lower half from outside, to be held against the paper drawing.
func Part(name string, p *plan.Part) Page {
	if p.Drawing.Flat != nil && len(p.Drawing.Flat.Outline) > 0 {
		return flatPart(name, p)
	}
	section, ok := solid(p.Drawing.Section)
	if !ok {
		return NewCanvas().Page(name, Title(p.Name)+": no drawing", "This part has no drawing.")
	}
	d := p.Drawing
	d.Section = section
	title := Title(p.Name) + " as it was understood"
	desc := describe(p, d)
	var page Page
	tall := mostTall
	if hasEnd(d) {
		tall = flatTall
	}
	for _, scale := range scalesFor(section) {
		for _, beside := range besides(d) {
			page = drawPart(d, scale, beside).Page(name, title, desc)
			if page.Width <= PageWidth && page.Height <= tall || scale*size(section) < leastSeen {
				return page
			}
		}
	}
	return page
}

// leastSeen is the size on paper below which a part is not drawn smaller still: then its labels need a larger page.
const leastSeen = 25.0

// size is the larger of a section's length and diameter.
func size(s plan.Section) float64 {
	from, to := s.Outer[0].Z0, s.Outer[len(s.Outer)-1].Z1
	return max(to-from, 2*greatest(s.Outer, from, to))
}

// scalesFor are the scales at which the work itself fits.
func scalesFor(s plan.Section) []float64 {
	long := s.Outer[len(s.Outer)-1].Z1 - s.Outer[0].Z0
	high := 2 * greatest(s.Outer, s.Outer[0].Z0, s.Outer[len(s.Outer)-1].Z1)
	i := sort.Search(len(scales)-1, func(i int) bool { return long*scales[i] <= mostLong && high*scales[i] <= mostHigh })
	return scales[i:]
}

func describe(p *plan.Part, d plan.Drawing) string {
	text := fmt.Sprintf("Half section of %s, %s long.", Plain(p.Name), units.Length(p.LengthMM))
	for _, dim := range d.Dims {
		text += " " + dim.Text + "."
	}
	return text
}

// besides are the places tried for the view of the end: beside the half section, then below it.
func besides(d plan.Drawing) []bool {
	if hasEnd(d) {
		return []bool{true, false}
	}
	return []bool{false}
}

func drawPart(d plan.Drawing, scale float64, beside bool) *Canvas {
	c := NewCanvas()
	v := view{scale: scale, originZ: d.Section.Outer[0].Z0}
	c.body(v, d)
	b := newBench(v, d)
	var end *Canvas
	if hasEnd(d) {
		end = endView(d, scale)
	}
	if beside {
		b.room -= end.Bounds().Width() + endApart
	}
	c.diameters(b)
	keys := c.lengths(b)
	if end != nil {
		c.addEnd(end, beside)
	}
	c.notes(b, d, scale, keys)
	return c
}

// addEnd puts the view of an end beside what is drawn, its axis level with the axis there, or below.
func (c *Canvas) addEnd(end *Canvas, beside bool) {
	box, e := c.Bounds(), end.Bounds()
	if beside {
		c.Place(end, box.Right+endApart-e.Left, 0)
		return
	}
	c.Place(end, (box.Left+box.Right)/2-(e.Left+e.Right)/2, box.Bottom+endApart-e.Top)
}

// body draws the part without dimensions.
func (c *Canvas) body(v view, d plan.Drawing) {
	s := d.Section
	c.skin(v, eccentric(s, d.Axes, lower), lower)
	c.metal(Stays, v, eccentric(s, d.Axes, upper), upper)
	c.axes(v, d)
	for _, e := range edges(s.Inner) {
		if e.r > 0 {
			c.Line(Outline, v.at(e.z, 0), v.at(e.z, e.r))
		}
	}
	for _, e := range edges(eccentric(s, d.Axes, lower).Outer) {
		c.Line(Outline, v.at(e.z, 0), v.at(e.z, -e.r))
	}
	if d.Hexagon {
		c.hexagon(v, s.Outer)
	}
	if insideLengths(d.Dims) {
		for _, run := range bored(s.Inner) {
			c.Path(Path{Class: Hidden, Start: v.at(run[0].Z0, -run[0].R0), Steps: v.curve(run, lower)})
		}
	}
	c.crossedSection(v, s, d.Crossed)
	first, last := s.Outer[0].Z0, s.Outer[len(s.Outer)-1].Z1
	c.Line(Centre, Point{v.x(first) - 5, 0}, Point{v.x(last) + 5, 0})
}

func insideLengths(dims []plan.Dim) bool {
	for _, d := range dims {
		if d.Kind == plan.DimLength && d.Inside {
			return true
		}
	}
	return false
}

// hexagon draws the edges of the flats where the bar's own outside is left: seen across corners, they lie at half the corners' radius.
func (c *Canvas) hexagon(v view, outer []plan.Segment) {
	corners := greatest(outer, outer[0].Z0, outer[len(outer)-1].Z1)
	for _, s := range outer {
		if s.R0 == corners && s.R1 == corners {
			c.Line(Outline, v.at(s.Z0, -corners/2), v.at(s.Z1, -corners/2))
		}
	}
}

// lengths draws the lengths below the part. A text too long to stand on its line becomes a letter, explained among the notes.
func (c *Canvas) lengths(b *bench) (keys []string) {
	var spans []span
	for _, d := range b.dims {
		if d.Kind != plan.DimLength {
			continue
		}
		text := d.Text
		if Width(text, textSize, false) > labelMost {
			text = letter(len(keys))
			keys = append(keys, text+": "+d.Text)
		}
		z0, z1 := min(d.Z0, d.Z1), max(d.Z0, d.Z1)
		spans = append(spans, span{x0: b.v.x(z0), x1: b.v.x(z1), depth0: b.depth(d, z0), depth1: b.depth(d, z1), text: text})
	}
	c.rungs(ladder(spans, nil), b.reach, 1)
	return keys
}

// letter names a long text: a, b, ... z, then a1, b1 and so on.
func letter(n int) string {
	const letters = 26
	name := string(rune('a' + n%letters))
	if n >= letters {
		name += strconv.Itoa(n / letters)
	}
	return name
}

// notes writes what must be known to read the drawing, and the drawing's own notes.
func (c *Canvas) notes(b *bench, d plan.Drawing, scale float64, keys []string) {
	lines := []string{
		"Scale " + scaleText(scale) + ". Do not measure the paper. Upper half cut open, lower half from outside.",
	}
	if d.Hexagon {
		lines = append(lines, "The outside is a hexagon bar's, drawn across corners.")
	}
	if len(d.Crossed) > 0 {
		lines = append(lines, "What crosses the axis is drawn turned into the plane of the cut; the view of the end shows how it lies.")
	}
	lines = append(lines, keys...)
	for _, n := range d.Notes {
		lines = append(lines, Plain(n))
	}
	box := c.Bounds()
	left := max(min(box.Left, b.v.x(b.first)), (b.v.x(b.first)+b.v.x(b.last))/2-PageWidth/2+pageEdge)
	y := box.Bottom + 3
	for _, l := range lines {
		for _, part := range Wrap(l, PageWidth-2*pageEdge-10, noteSize, false) {
			y += LineStep * noteSize
			c.Text(Text{At: Point{left, y}, Anchor: AtStart, Size: noteSize, Text: part})
		}
	}
}
