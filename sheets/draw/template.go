package draw

import (
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// The check lines of a template, in millimetres on paper: what measures so has been printed true.
const (
	checkMM   = 100.0
	checkInch = 4 * 25.4
	checkTick = 4.0

	mostTemplate = 240.0 // height that a sheet of A4 has between its margins, less what the words take
)

// Template is a part's outline and holes at full size, to lay on the metal or to prick through; false where there is nothing to mark out.
func Template(name string, p *plan.Part) (Page, bool) {
	outline, holes, mirror := marked(p)
	if len(outline) == 0 {
		return Page{}, false
	}
	c := NewCanvas()
	v := planeView{1, mirror}
	var keep field
	rim := v.rim(Thin, outline)
	c.Path(rim)
	keep.path(rim)
	c.rings(v, p.Drawing.Rings, holes, &keep)
	for _, h := range holes {
		at := v.at(h.XMM, h.YMM)
		c.Circle(Thin, at, h.DiameterMM/2)
		keep.ring(at, h.DiameterMM/2)
		c.pricked(at, h.DiameterMM/2+crossOver, &keep)
	}
	if p.Drawing.Flat != nil {
		for _, s := range p.Drawing.Flat.Slots {
			c.Path(slotPath(v, s, Thin))
			c.pricked(v.at(s.X0, s.Y0), s.WidthMM/2+crossOver, &keep)
			c.pricked(v.at(s.X1, s.Y1), s.WidthMM/2+crossOver, &keep)
		}
	}
	for _, x := range p.Drawing.Crossed {
		if x.Kind == plan.CrossedSeat {
			c.crossedEnd(v, p.Drawing.Section, x, &keep)
		}
	}
	c.holeNumbers(v, holes, drawnHoles(p), p.Drawing.Rings, &keep)
	c.checkLines()
	side := "the front"
	if p.Drawing.Flat == nil {
		side = "the " + map[bool]string{false: "right", true: "left"}[mirror] + " end"
	}
	box := c.Bounds()
	lines := []string{Title(p.Name) + ": marking-out template, full size, seen from " + side + ". Print at 100 %, without fitting to the page.",
		"Measure both check lines before use: if either is wrong, the print is."}
	if box.Width() > PageWidth-2*pageEdge || box.Height() > mostTemplate {
		lines = append(lines, "Larger than a sheet of A4: print it on larger paper, or prick it through from parts of it.")
	}
	c.footNotes(lines, box.Left, (box.Left+box.Right)/2)
	return c.Page(name, Title(p.Name)+": marking-out template, full size", templateText(p, holes)), true
}

// marked is what a template shows of a part: a flat part's outline and holes, or the end of a turned part that has holes beside its axis. The end is the
// right one unless all its holes are drilled from the left.
func marked(p *plan.Part) (outline []plan.OutlineSegment, holes []plan.FlatHole, mirror bool) {
	if f := p.Drawing.Flat; f != nil {
		return f.Outline, f.Holes, false
	}
	section, ok := solid(p.Drawing.Section)
	if !ok || len(p.Drawing.Beside) == 0 {
		return nil, nil, false
	}
	mirror = true
	for _, h := range p.Drawing.Beside {
		mirror = mirror && h.FromZ < h.ToZ
	}
	z := section.Outer[len(section.Outer)-1].Z1
	if mirror {
		z = section.Outer[0].Z0
	}
	most := greatest(section.Outer, section.Outer[0].Z0, section.Outer[len(section.Outer)-1].Z1)
	outline = discOutline(most)
	for _, r := range []float64{radiusAt(section.Outer, z), radiusAt(section.Inner, z)} {
		if r > 0 && r < most {
			holes = append(holes, plan.FlatHole{DiameterMM: 2 * r})
		}
	}
	return outline, append(holes, p.Drawing.Beside...), mirror
}

func discOutline(r float64) []plan.OutlineSegment {
	return []plan.OutlineSegment{{X0: r, X1: -r, RadiusMM: r}, {X0: -r, X1: r, RadiusMM: r}}
}

// pricked is the cross of a place to be centre punched: thin lines that go through.
func (c *Canvas) pricked(p Point, reach float64, keep *field) {
	for _, d := range []Point{{reach, 0}, {0, reach}} {
		a, b := Point{p.X - d.X, p.Y - d.Y}, Point{p.X + d.X, p.Y + d.Y}
		c.Line(Thin, a, b)
		keep.line(a, b)
	}
}

// checkLines draws below everything a line of 100 mm and one of 4 in.
func (c *Canvas) checkLines() {
	box := c.Bounds()
	y := box.Bottom + 8
	for _, l := range []struct {
		long float64
		text string
	}{{checkMM, "100 mm"}, {checkInch, "4 in"}} {
		c.Line(Thin, Point{box.Left, y}, Point{box.Left + l.long, y})
		for _, x := range []float64{0, l.long} {
			c.Line(Thin, Point{box.Left + x, y - checkTick/2}, Point{box.Left + x, y + checkTick/2})
		}
		c.Text(Text{At: Point{box.Left + l.long + 3, y + 1.2}, Anchor: AtStart, Size: textSize, Bold: true, Text: l.text})
		y += 8
	}
}

func templateText(p *plan.Part, holes []plan.FlatHole) string {
	text := "The outline at full size, a check line of 100 mm and one of 4 in."
	for _, h := range holes {
		if h.Number > 0 {
			text += " Hole " + HoleName(p, h.Feature, h.Number) + " at X " + units.Decimal(h.XMM, 3) + ", Y " + units.Decimal(h.YMM, 3) + "."
		}
	}
	return text
}
