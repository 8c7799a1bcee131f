package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/dividing"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// turnHead puts on the card how a dividing head is turned until the work's direction looks up.
func (p *page) turnHead(w Way) {
	d := p.j.Setup.Dividing
	if d == nil {
		return
	}
	count, off := dividing.Head{Ratio: d.Ratio, Circles: []int{d.Circle}}.Count(d.Circle, w.AcrossDeg-p.j.Setup.AcrossDeg)
	on := "circle"
	if d.Ratio == 1 {
		on = "plate"
	}
	l := headLine(*d, count)
	l.Label, l.Note = "turn the work", fmt.Sprintf("marks are %s of the %s of %d; lock the spindle", d.Marks(), on, d.Circle)
	l.Makes = fmt.Sprintf("%s° of the drawing looks up", units.Decimal(w.AcrossDeg+off, 4))
	if off != 0 {
		l.Makes += fmt.Sprintf(", %s° %s %s°", units.Decimal(math.Abs(off), 4), pastOrShort(off), units.Decimal(w.AcrossDeg, 4))
	}
	p.head = count
	p.op.Card = append(p.op.Card, l)
	p.why("what lies round the axis is divided in one setting, every place counted from one nought", "C-24d")
}

func pastOrShort(off float64) string {
	if off > 0 {
		return "past"
	}
	return "short of"
}

// onHead adds to every cut how the dividing head then stands.
func (p *page) onHead() {
	if p.j.Setup == nil || p.j.Setup.Dividing == nil || !p.j.Setup.Across {
		return // upright it is turned from cut to cut: see index
	}
	at := plan.Reading{Dial: plan.HeadDial, Graduations: p.head}
	for i := range p.op.Cuts {
		c := &p.op.Cuts[i]
		c.From, c.To = append(c.From[:len(c.From):len(c.From)], at), append(c.To[:len(c.To):len(c.To)], at)
	}
}

// acrossAside is how far round the axis, at the outside, a cross hole may lie off: as its place lets it, and where other tools follow the drill no further than they find
// the hole when they are set where it is drawn.
func (c *Context) acrossAside(a across) float64 {
	if a.reamMM > 0 || a.CrossHole.Thread != nil {
		return math.Min(c.acrossPlace(a), followsMM)
	}
	return c.acrossPlace(a)
}

// followsMM is how far from where it is set a tool that follows a hole finds it. Common practice, no source.
const followsMM = 0.05

// asideOf is how far from the axis the rim of a flat or a slot stands, and how far round it may lie off there: a flat by the general tolerance of an angle whose leg is that
// radius, a slot by that of the width which it is in the middle of.
func (c *Context) asideOf(m milled) (rim, aside float64, middle bool) {
	if _, slot := m.f.(*partspec.Slot); slot {
		d, err := tables.ISO2768(c.Part.General, tables.GeneralLength, units.Length(2*m.top))
		if err != nil {
			return 0, 0, false
		}
		return m.top, float64(d.Upper), true
	}
	angle, _, err := tables.ISO2768Angle(c.Part.General, units.Length(m.top))
	if err != nil {
		return 0, 0, false
	}
	return m.top, m.top * angle.Radians(), false
}

// indexed reports whether a pattern is turned under the spindle by a dividing head that stands upright.
func (s spotted) indexed() bool { return s.by == partspec.LocateHead }

// indexes says why a ring cannot be turned under the spindle; empty where it can.
func (c *Context) indexes(f *partspec.Holes, dials bool) string {
	upright := false
	for _, h := range c.Shop.Holdings {
		upright = upright || h.Kind == partspec.DividingHead && h.Upright
	}
	switch {
	case !dials || c.Slide != nil:
		return fmt.Sprintf("%s: locate_by = \"dividing_head\" wants a mill with dials x, y and quill (or z)", f.Name)
	case !upright || !c.Rules.Has("C-24u"):
		return fmt.Sprintf("%s: locate_by = \"dividing_head\" wants a holding \"dividing_head\" with upright = true: one that stands with its spindle up", f.Name)
	}
	return ""
}

// Station is a hole of a ring as a dividing head that stands upright turns it under the spindle: the nearest count to its place, counted from nought.
type Station struct {
	Count  int64
	PastMM float64 // how far past its place that is, anticlockwise along its circle
	X, Y   float64 // where the hole then is
}

// Directions are those of the holes of a ring, from +X, in degrees: on a circle as it is divided, else from their places.
func Directions(f *partspec.Holes) []float64 {
	var list []float64
	for i, at := range f.Places {
		if f.Circle != nil {
			list = append(list, float64(f.Circle.Start)+360*float64(i)/float64(f.Circle.Count))
			continue
		}
		list = append(list, math.Atan2(float64(at.Y.Value), float64(at.X.Value))*180/math.Pi)
	}
	return list
}

// Stations are the holes of a ring as a dividing head has them, with the table set off by the whole graduations nearest to the ring's radius.
func (c *Context) Stations(d plan.Dividing, noughtDeg float64, f *partspec.Holes) (offsetMM float64, list []Station) {
	for _, at := range f.Places {
		offsetMM += math.Hypot(float64(at.X.Value), float64(at.Y.Value)) / float64(len(f.Places))
	}
	radius := offsetMM
	if g := radial(c.dialOf("x")); g > 0 {
		offsetMM = math.Round(offsetMM/g) * g
	}
	head := dividing.Head{Ratio: d.Ratio, Circles: []int{d.Circle}}
	for _, deg := range Directions(f) {
		count, off := head.Count(d.Circle, deg-noughtDeg)
		sin, cos := math.Sincos((noughtDeg + d.Degrees(count)) * math.Pi / 180)
		list = append(list, Station{Count: count, PastMM: off * math.Pi / 180 * radius, X: offsetMM * cos, Y: offsetMM * sin})
	}
	return offsetMM, list
}

// index sets the table off by a ring's radius, and counts every hole of it from nought.
func (p *page) index(s spotted) {
	d := *p.j.Setup.Dividing
	offset, stations := p.c.Stations(d, p.j.Setup.AskewDeg, s.Holes)
	over := p.overDials(offset, 0)
	for _, l := range []plan.Line{over.x, over.y} {
		l.Label, l.Note = "over the ring", "lock this slide"
		p.op.Card = append(p.op.Card, l)
	}
	p.op.Card[len(p.op.Card)-2].Makes = p.both(offset, "x") + " from the axis"
	p.op.Card[len(p.op.Card)-1].Makes = "over the axis"
	for i, st := range stations {
		line := plan.HoleLine{Number: i + 1, XMM: tidyMM(float64(s.Places[i].X.Value)), YMM: tidyMM(float64(s.Places[i].Y.Value)), Head: new(plan.Line), PastMM: math.Round(st.PastMM*1e4) / 1e4}
		*line.Head = headLine(d, st.Count)
		p.op.Holes = append(p.op.Holes, line)
		p.turns = append(p.turns, stand{at: withReading(over.at, plan.HeadDial, st.Count)})
	}
	if step := evenStep(d, stations); step > 0 {
		p.note("A check on the table: from hole to hole the crank makes %s.", turnsAndHoles(d, step))
	}
	p.why("the table is set off once and stands still; the work is turned to every hole, each counted from one nought", "C-24u")
}

// evenStep is the count from each hole of a ring to the next where it is the same all round; else 0.
func evenStep(d plan.Dividing, list []Station) int64 {
	whole := int64(d.Ratio * d.Circle)
	step := int64(0)
	for i := range list {
		by := (list[(i+1)%len(list)].Count - list[i].Count + whole) % whole
		if i > 0 && by != step {
			return 0
		}
		step = by
	}
	return step
}

// turnsAndHoles is a count in a person's words.
func turnsAndHoles(d plan.Dividing, count int64) string {
	turns, holes := count/int64(d.Circle), count%int64(d.Circle)
	text := fmt.Sprintf("%d turns", turns)
	if turns == 1 {
		text = "1 turn"
	}
	if holes > 0 {
		text += fmt.Sprintf(" and %d of the %d %s", holes, d.Circle, d.Marks())
	}
	return text
}

// headLine is a count of a dividing head as it is read.
func headLine(d plan.Dividing, count int64) plan.Line {
	circle := int64(d.Circle)
	return plan.Line{Dial: plan.HeadDial, Counted: true, Turns: count / circle, Marks: count % circle, Total: count, Reads: d.Marks(),
		Reading: units.Decimal(d.Degrees(count), 4) + "°"}
}
