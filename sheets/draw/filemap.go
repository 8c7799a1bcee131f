package draw

import (
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// Sizes of the map of metal to file, in millimetres on paper.
const (
	mapWide = 90.0
	mapHigh = 90.0
	mapBand = 3.5 // how wide the metal to come off is drawn, whatever it is
)

// FileMap shows how much metal stands on each edge of a flat part that is filed, and how sure that is.
func FileMap(name, title string, p *plan.Part, left []plan.EdgeLeft) Page {
	c := NewCanvas()
	if p.Drawing.Flat == nil || len(p.Drawing.Flat.Outline) == 0 {
		return c.Page(name, title, "No outline is known.")
	}
	f := p.Drawing.Flat
	x0, y0, x1, y1 := extent(f.Outline)
	v := planeView{scale: min(mostScale, mapWide/max(x1-x0, touching), mapHigh/max(y1-y0, touching))}
	var keep field
	for _, e := range left {
		if s, ok := named(f.Outline, e.Edge); ok {
			c.band(v, s)
		}
	}
	c.planOf(v, &plan.Flat{Outline: f.Outline, BackZ: f.BackZ, FrontZ: f.FrontZ, Holes: f.Holes, Slots: f.Slots}, &keep)
	for _, e := range left {
		s, ok := named(f.Outline, e.Edge)
		if !ok {
			continue
		}
		p, out := v.onSegment(s, 0.5)
		c.near(&keep, stepBy(p, out, mapBand), 2, out, Text{Size: textSize, Bold: true, Text: leftWords(e)})
	}
	box := c.Bounds()
	y := box.Bottom + 4
	c.Rect(Off, Point{box.Left, y}, Point{box.Left + 7, y + 4})
	c.Rect(Thin, Point{box.Left, y}, Point{box.Left + 7, y + 4})
	c.Text(Text{At: Point{box.Left + 8.5, y + 3.2}, Anchor: AtStart, Size: noteSize, Text: "metal to file, as wide as its figure says, not as drawn"})
	c.footNotes([]string{"Seen from the front. The heavy line is the finished edge."}, box.Left, (box.Left+box.Right)/2)
	return c.Page(name, title, mapText(left))
}

func leftWords(e plan.EdgeLeft) string {
	text := units.Decimal(e.LeftMM, 2)
	if e.WithinMM > 0 {
		text += " ±" + units.Decimal(e.WithinMM, 2)
	}
	return text + " mm"
}

func mapText(left []plan.EdgeLeft) string {
	text := "Metal to file on the edges:"
	for _, e := range left {
		text += " " + Plain(e.Edge) + " " + leftWords(e) + ";"
	}
	return text[:len(text)-1] + "."
}

// band is the metal that stands on an edge.
func (c *Canvas) band(v planeView, s plan.OutlineSegment) {
	const pieces = 24
	var inner, outer []Point
	for i := range pieces + 1 {
		p, out := v.onSegment(s, float64(i)/pieces)
		inner, outer = append(inner, p), append([]Point{stepBy(p, out, mapBand)}, outer...)
	}
	c.Poly(Off, true, append(inner, outer...)...)
	c.Poly(Thin, true, append(inner, outer...)...)
}

// onSegment is a place of an edge on paper, and the direction out of the metal there.
func (v planeView) onSegment(e plan.OutlineSegment, share float64) (p, out Point) {
	if e.RadiusMM == 0 {
		deg := math.Atan2(-(e.X1-e.X0), e.Y1-e.Y0) * 180 / math.Pi
		return v.at(e.X0+share*(e.X1-e.X0), e.Y0+share*(e.Y1-e.Y0)), v.towards(deg)
	}
	from, sweep := sweepOf(e)
	a := from + share*sweep
	deg := a * 180 / math.Pi
	if e.Hollow {
		deg += 180
	}
	return v.at(e.CentreX+e.RadiusMM*math.Cos(a), e.CentreY+e.RadiusMM*math.Sin(a)), v.towards(deg)
}
