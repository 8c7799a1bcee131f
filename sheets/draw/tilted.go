package draw

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// Sizes of a tilting plate, in millimetres on paper: how the work is held, not how large the plate is.
const (
	plateTall   = 5.0
	plateBeyond = 10.0 // each side of the chuck
	hingeRound  = 2.2
	packWide    = 8.0
	tableTall   = 4.0
	tiltedHigh  = 44.0 // the most that the work takes
	spindleUp   = 14.0
	angleOut    = 26.0
)

// tiltedScene is work that is set over on a tilting plate, as seen from the right end of the table: y to the right, the spindle at the top.
type tiltedScene struct {
	*scene
	p        *plan.Part
	sin, cos float64
}

func tiltedSetup(name string, p *plan.Part, s *plan.Setup, before, after plan.Section) Page {
	title := fmt.Sprintf("Holding %d: %s", s.Number, Plain(s.Title))
	sin, cos := math.Sincos(s.Tilt.Degrees() * math.Pi / 180)
	one := newScene(p, s, before, after, 1)
	scale := min(mostScale, tiltedHigh/max(2*one.reach, touching))
	draw := func() Page {
		sc := &tiltedScene{newScene(p, s, before, after, scale), p, sin, cos}
		return sc.draw().Page(name, title, sceneText(s)+" "+sc.packingText())
	}
	page := draw()
	for tries := 0; tries < mostTries && (page.Width > PageWidth || page.Height > setupTall); tries++ {
		scale *= shrink
		page = draw()
	}
	return page
}

// over carries a place of the work, as it is drawn lying, to where it stands set over.
func (sc *tiltedScene) over(p Point) Point {
	return Point{p.Y*sc.cos - p.X*sc.sin, -p.Y*sc.sin - p.X*sc.cos}
}

// placeOver draws all of a lying canvas set over.
func (c *Canvas) placeOver(sc *tiltedScene, o *Canvas) {
	for _, s := range o.shapes {
		switch s := mapped(s, sc.over).(type) {
		case Path:
			c.Path(s)
		case Circle:
			c.Circle(s.Class, s.Centre, s.Radius)
		}
	}
}

func (sc *tiltedScene) draw() *Canvas {
	c, lying := NewCanvas(), NewCanvas()
	half := sc.gripR + jawHigh + 4 + plateBeyond
	bottom := sc.gripHead - bodyLong - plateTall // underside of the plate, lying
	low, high := sc.over(Point{bottom, -half}), sc.over(Point{bottom, half})
	table := low.Y + hingeRound
	c.Rect(Holder, Point{low.X - 12, table}, Point{high.X + 16, table + tableTall})
	if rise := table - high.Y; sc.sin > 0 && rise > 0 {
		at := sc.over(Point{bottom, half - packWide})
		c.Poly(Holder, true, Point{at.X, table}, Point{high.X, table}, high, at)
	}
	lying.Rect(Holder, Point{bottom, -half}, Point{bottom + plateTall, half})
	lying.holderBehind(sc.scene)
	lying.work(sc.scene)
	lying.holderBefore(sc.scene)
	lying.Line(Centre, Point{sc.xHead - 4, 0}, Point{sc.xFree + 8, 0})
	c.placeOver(sc, lying)
	c.Circle(Holder, low, hingeRound)
	c.Circle(Outline, low, hingeRound)
	sc.holes(c)
	sc.dims(c, low, high, table)
	c.tiltedLegend(sc)
	return c
}

// holes draws what is drilled in this holding, upright under the spindle, and says by which operations.
func (sc *tiltedScene) holes(c *Canvas) {
	var numbers []string
	for _, op := range sc.setup.Operations {
		numbers = append(numbers, fmt.Sprint(op.Number))
	}
	for _, x := range sc.seats {
		axis := sc.over(sc.v.at(x.AxisZ, 0))
		mouth := axis.Y + x.RadiusMM*sc.v.scale
		out := mouth
		for _, h := range fresh(besideBefore(sc.p, sc.setup), sc.setup.Beside) {
			back := h.FromZ
			if (x.On == "left") == (h.ToZ > h.FromZ) {
				back = h.ToZ
			}
			foot := sc.v.x(back) // lying; where the upright through the axis meets that plane
			out = max(out, -(foot+axis.X*sc.sin)/sc.cos)
			r := h.DiameterMM / 2 * sc.v.scale
			if sc.inBore(x, h) { // it lies before or behind the cut
				c.Line(Hidden, Point{axis.X - r, mouth}, Point{axis.X - r, out})
				c.Line(Hidden, Point{axis.X + r, mouth}, Point{axis.X + r, out})
				continue
			}
			c.Rect(Off, Point{axis.X - r, mouth}, Point{axis.X + r, out})
			c.Rect(Outline, Point{axis.X - r, mouth}, Point{axis.X + r, out})
		}
		top := min(c.Bounds().Top, mouth) - spindleUp
		c.Line(Centre, Point{axis.X, top}, Point{axis.X, out + 6})
		c.Line(CutWay, Point{axis.X, top}, Point{axis.X, mouth - 2*arrowLong})
		c.Arrow(Point{axis.X, mouth - 1}, Point{axis.X, top})
		c.Text(Text{At: Point{axis.X + 2, top + textSize}, Anchor: AtStart, Size: textSize, Bold: true, Text: strings.Join(numbers, ", ")})
	}
}

// inBore reports whether a hole, seen along the pipe, lies over the bore that the work is cut open through.
func (sc *tiltedScene) inBore(x plan.Crossed, h plan.FlatHole) bool {
	sin, cos := math.Sincos(x.AngleDeg * math.Pi / 180)
	return math.Abs(h.YMM*cos-h.XMM*sin)-h.DiameterMM/2 < greatest(sc.after.Inner, x.Z0, x.Z1)
}

// fresh are the holes that were not there, or not so, before.
func fresh(before, after []plan.FlatHole) (out []plan.FlatHole) {
	for _, h := range after {
		if !hasHole(before, h) {
			out = append(out, h)
		}
	}
	return out
}

// dims dimensions the angle and the packing.
func (sc *tiltedScene) dims(c *Canvas, low, high Point, table float64) {
	t := sc.setup.Tilt
	if t.RiseMM == 0 {
		return
	}
	x := high.X + 9
	c.Line(Thin, Point{high.X + 1, high.Y}, Point{x + 1.5, high.Y})
	c.Line(Thin, Point{x, high.Y}, Point{x, table})
	c.Arrow(Point{x, high.Y}, Point{x, table})
	c.Arrow(Point{x, table}, Point{x, high.Y})
	c.Text(Text{At: Point{x + 1.5, (high.Y + table) / 2}, Anchor: AtStart, Size: textSize, Text: "packing " + units.Decimal(t.RiseMM, 2)})
	level, lean := Point{low.X + angleOut, low.Y}, Point{low.X + angleOut*sc.cos, low.Y - angleOut*sc.sin}
	c.Line(Thin, low, Point{low.X + angleOut + 4, low.Y})
	c.Path(Path{Class: Thin, Start: level, Steps: []Step{{To: lean, Radius: angleOut, Centre: low}}})
	c.Text(Text{At: Point{low.X + angleOut + 5.5, low.Y - 0.8}, Anchor: AtStart, Size: textSize, Bold: true, Text: units.Decimal(t.Degrees(), 2) + "°"})
}

// tiltedLegend explains the fillings and which way the sketch is seen.
func (c *Canvas) tiltedLegend(sc *tiltedScene) {
	box := c.Bounds()
	x, y := box.Left, box.Bottom+4
	for _, w := range []struct {
		class Class
		text  string
	}{{Stays, "stays"}, {Off, "comes off in this holding"}} {
		c.Rect(w.class, Point{x, y}, Point{x + 7, y + 4})
		c.Rect(Thin, Point{x, y}, Point{x + 7, y + 4})
		c.Text(Text{At: Point{x + 8.5, y + 3.2}, Anchor: AtStart, Size: noteSize, Text: w.text})
		x += 8.5 + Width(w.text, noteSize, false) + 5
	}
	footnotes(c, box.Left, y+5, []string{"Not to scale. Seen from the right end of the table, along the pipe that the seat is for, and cut open across it; the spindle stands above the lowest line of the hollow. " +
		sc.packingText() + " The y slide's count grows to the right."})
}

// packingText is how the plate is set over, in a sentence.
func (sc *tiltedScene) packingText() string {
	t := sc.setup.Tilt
	if t.RiseMM == 0 {
		return "The plate is shut."
	}
	return fmt.Sprintf("The plate is set over by %s degrees; the packing stands %s mm from the hinge, along it.", units.Decimal(t.Degrees(), 2), units.Decimal(t.SineMM, 2))
}
