package draw

import "catchplate/planner/plan"

// nearSide is a section on the side of the spindle's axis on which work that is set over is nearest.
func nearSide(s plan.Section, side half) plan.Section {
	if side == lower && len(s.Near) > 0 {
		s.Outer = s.Near
	}
	return s
}

// gripOn is the radius on paper at which the jaws of one side stand: of work that is set over, one of a pair far out and the other near.
func (sc *scene) gripOn(side half) float64 {
	return sc.gripR + float64(side)*sc.setup.ThrowMM*sc.v.scale
}

// mainAxis draws the work's own axis beside the spindle's, where it is set over.
func (c *Canvas) mainAxis(sc *scene) {
	e := sc.setup.ThrowMM * sc.v.scale
	if e <= 0 {
		return
	}
	c.Line(Centre, Point{sc.xHead - 6, -e}, Point{sc.xFree + 6, -e})
}

// eccentric is a section with the spigots about offset axes cut from it, on one side of the main axis.
func eccentric(s plan.Section, axes []plan.Axis, side half) plan.Section {
	for _, a := range axes {
		for _, e := range a.Eccentrics {
			if e.Inside {
				continue
			}
			r := e.RadiusMM + float64(side)*a.ThrowMM
			first, last := s.Outer[0].Z0, s.Outer[len(s.Outer)-1].Z1
			var outer []plan.Segment
			if e.Z0 > first {
				outer = append(outer, clipCurve(s.Outer, first, e.Z0)...)
			}
			outer = append(outer, plan.Segment{Z0: e.Z0, R0: r, Z1: e.Z1, R1: r})
			if e.Z1 < last {
				outer = append(outer, clipCurve(s.Outer, e.Z1, last)...)
			}
			s.Outer = outer
		}
	}
	return s
}

// axes draws the offset axes of a part, and the bores about them where the upper half is cut open.
func (c *Canvas) axes(v view, d plan.Drawing) {
	for _, a := range d.Axes {
		from, to := d.Section.Outer[0].Z0, d.Section.Outer[len(d.Section.Outer)-1].Z1
		for _, e := range a.Eccentrics {
			if e.Inside {
				top, bottom := a.ThrowMM+e.RadiusMM, max(0, a.ThrowMM-e.RadiusMM)
				c.Rect(Paper, v.at(e.Z0, top), v.at(e.Z1, bottom))
				c.Poly(Outline, bottom > 0, v.at(e.Z0, bottom), v.at(e.Z0, top), v.at(e.Z1, top), v.at(e.Z1, bottom))
			}
		}
		c.Line(Centre, v.at(from-4/v.scale, a.ThrowMM), v.at(to+4/v.scale, a.ThrowMM))
	}
}

// axesEnd draws what is turned about the offset axes of a part as its end shows it, with the throw.
func (c *Canvas) axesEnd(v planeView, d plan.Drawing, keep *field) {
	last := d.Section.Outer[len(d.Section.Outer)-1].Z1
	for _, a := range d.Axes {
		at := v.at(a.ThrowMM, 0)
		most := 0.0
		for _, e := range a.Eccentrics {
			class := Outline
			if !e.Inside && e.Z1 < last-touching {
				class = Hidden
			}
			c.Circle(class, at, e.RadiusMM*v.scale)
			keep.ring(at, e.RadiusMM*v.scale)
			most = max(most, e.RadiusMM*v.scale)
		}
		c.Line(Centre, Point{at.X, at.Y - most - 4}, Point{at.X, at.Y + most + 4})
		box := c.Bounds()
		y := box.Top - 5
		c.Line(Thin, Point{0, y - 1}, Point{0, box.Top + 2})
		c.Line(Thin, Point{at.X, y - 1}, Point{at.X, at.Y - most - 5})
		c.Line(Thin, Point{min(0, at.X) - 5, y}, Point{max(0, at.X) + 5, y})
		c.Text(Text{At: Point{at.X / 2, y - 2.5}, Anchor: AtMiddle, Size: noteSize, Text: Plain(a.Text)})
	}
}
