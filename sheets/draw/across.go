package draw

import (
	"fmt"
	"math"
	"strings"

	"catchplate/planner/plan"
)

// The most that turned work lying on a table may take on paper, and the gaps between its three views.
const (
	lyingLong = 80.0
	lyingHigh = 46.0
	viewApart = 9.0
)

// acrossScene is turned work lying along a table under the spindle: seen from above, cut open along its axis below that, and from its free end.
type acrossScene struct {
	v             view
	p             *plan.Part
	s             *plan.Setup
	before, after plan.Section
	reach         float64 // greatest radius on paper
	left, right   float64 // ends of the work on paper
	keep          field
}

func acrossSetup(name string, p *plan.Part, s *plan.Setup, before, after plan.Section) Page {
	title := fmt.Sprintf("Holding %d: %s", s.Number, Plain(s.Title))
	first, last := before.Outer[0].Z0, before.Outer[len(before.Outer)-1].Z1
	most := greatest(before.Outer, first, last)
	scale := min(mostScale, lyingLong/max(last-first, touching), lyingHigh/max(2*most, touching))
	draw := func() Page {
		sc := &acrossScene{v: view{scale: scale, originZ: (first + last) / 2}, p: p, s: s, before: before, after: after, reach: most * scale}
		sc.left, sc.right = sc.v.x(first), sc.v.x(last)
		return sc.draw().Page(name, title, flatSceneText(s))
	}
	page := draw()
	for tries := 0; tries < mostTries && (page.Width > PageWidth || page.Height > flatSetupTall); tries++ {
		scale *= shrink
		page = draw()
	}
	return page
}

func (sc *acrossScene) draw() *Canvas {
	c := NewCanvas()
	c.fromAbove(sc)
	held := c.Bounds()
	marks, unmarked := c.acrossOperations(sc, held)
	c.tableZeros(sc.s, held, func(z, side float64) Point { return Point{sc.v.x(z), -side * sc.v.scale} })
	front, end := NewCanvas(), NewCanvas()
	front.cutAlong(sc)
	end.fromEnd(sc)
	f, e := front.Bounds(), end.Bounds()
	down := c.Bounds().Bottom + viewApart - min(f.Top, e.Top)
	c.Place(front, 0, down)
	c.Place(end, f.Right+viewApart-e.Left, down)
	c.upZeros(sc, down, min(f.Left, held.Left))
	c.slideSide(sc.s)
	c.heldWords(append([]string{holderWords(sc.s)}, bedWords(sc.s)...))
	all := c.Bounds()
	middle := (all.Left + all.Right) / 2
	c.marks(marks, min(held.Top-flatLabelsOff, all.Top)-2, -1, middle-PageWidth/2+pageEdge, middle+PageWidth/2-pageEdge)
	c.acrossLegend(sc.s, unmarked)
	return c
}

// lyingAs is the direction of a feature as the table has it: 90 degrees is up, 0 towards the back of the table as seen from the work's right end.
func (sc *acrossScene) lyingAs(deg float64) float64 { return deg - sc.s.AcrossDeg + 90 }

// facesUp reports whether a direction is up.
func (sc *acrossScene) facesUp(deg float64) bool { return nearAngle(sc.lyingAs(deg), 90) }

// likes parts a row of like flats into single ones.
func likes(x plan.Crossed) []plan.Crossed {
	out := []plan.Crossed{x}
	for i := 1; i < x.Count; i++ {
		y := x
		y.AngleDeg += 360 * float64(i) / float64(x.Count)
		out = append(out, y)
	}
	return out
}

// shown are the crossing features that are cut before or in this holding, each with its class.
func (sc *acrossScene) shown(draw func(x plan.Crossed, class Class)) {
	for _, x := range sc.p.Drawing.Crossed {
		class := Paper
		switch stageOf(sc.p, sc.s, x.Feature) {
		case cutNow:
			class = Off
		case cutLater:
			continue
		}
		for _, one := range likes(x) {
			draw(one, class)
		}
	}
}

// fromAbove draws the work as the spindle sees it.
func (c *Canvas) fromAbove(sc *acrossScene) {
	c.lyingHolder(sc, sc.holderAbove())
	for _, side := range []half{upper, lower} {
		c.Path(sc.v.region(Paper, plan.Section{Outer: sc.after.Outer, Inner: axisOf(sc.after)}, side))
		c.skin(sc.v, sc.after, side)
	}
	for _, e := range edges(sc.after.Outer) {
		c.Line(Outline, sc.v.at(e.z, -e.r), sc.v.at(e.z, e.r))
	}
	sc.keep.line(Point{sc.left, -sc.reach}, Point{sc.right, -sc.reach})
	sc.shown(func(x plan.Crossed, class Class) { c.aboveOf(sc, x, class) })
	c.Line(Centre, Point{sc.left - 5, 0}, Point{sc.right + 5, 0})
	c.lyingHolder(sc, sc.clampAbove())
}

func axisOf(s plan.Section) []plan.Segment {
	return []plan.Segment{{Z0: s.Outer[0].Z0, Z1: s.Outer[len(s.Outer)-1].Z1}}
}

// aboveOf draws one crossing feature from above.
func (c *Canvas) aboveOf(sc *acrossScene, x plan.Crossed, class Class) {
	r := greatest(sc.after.Outer, x.Z0, x.Z1)
	switch {
	case sideSeat(x):
		switch up := sc.lyingAs(x.AngleDeg); {
		case nearAngle(up, 90):
			c.sideMouth(sc.v, x, class, r)
		case nearAngle(up, 0):
			c.sideNotch(sc.v, x, class, r, 1)
		case nearAngle(up, 180):
			c.sideNotch(sc.v, x, class, r, -1)
		}
	case x.Kind == plan.CrossedSeat:
		if up := sc.lyingAs(x.AngleDeg); nearAngle(up, 90) || nearAngle(up, 270) {
			c.seatCut(sc.v, x, class)
		} else {
			c.straightSeat(sc.v, x, class, x.WidthMM/2)
		}
	case x.Kind == plan.CrossedHole && (sc.facesUp(x.AngleDeg) || x.FloorMM < 0 && sc.facesUp(x.AngleDeg+180)):
		p := sc.v.at((x.Z0+x.Z1)/2, 0)
		c.Circle(class, p, x.RadiusMM*sc.v.scale)
		c.Circle(Outline, p, x.RadiusMM*sc.v.scale)
		c.cross(p, x.RadiusMM*sc.v.scale+crossOver, &sc.keep)
	case x.Kind == plan.CrossedFlat && sc.facesUp(x.AngleDeg) && x.FloorMM < r:
		c.boxAbout(sc.v, class, x.Z0, x.Z1, math.Sqrt(r*r-x.FloorMM*x.FloorMM))
	case x.Kind == plan.CrossedSlot && sc.facesUp(x.AngleDeg):
		c.boxAbout(sc.v, class, x.Z0, x.Z1, x.WidthMM/2)
	}
}

// boxAbout is a rectangle about the axis.
func (c *Canvas) boxAbout(v view, class Class, z0, z1, half float64) {
	c.Rect(class, v.at(z0, half), v.at(z1, -half))
	c.Rect(Outline, v.at(z0, half), v.at(z1, -half))
}

// seatCut fills what a seat takes off both halves and draws its arc.
func (c *Canvas) seatCut(v view, x plan.Crossed, class Class) {
	c.seatSection(v, x)
	if class != Off {
		return
	}
	half, end, crown := x.WidthMM/2, x.Z0, x.Z1
	if x.On == "right" {
		end, crown = x.Z1, x.Z0
	}
	from, to, top, centre := v.at(end, half), v.at(end, -half), v.at(crown, 0), v.at(x.AxisZ, 0)
	arc := func(a, b Point) Step {
		return Step{To: b, Radius: x.RadiusMM * v.scale, Centre: centre, Clockwise: cross(centre, a, b) > 0}
	}
	region := Path{Class: Off, Closed: true, Start: from, Steps: []Step{arc(from, top), arc(top, to)}}
	c.Path(region)
	region.Class = Outline
	c.Path(region)
}

// straightSeat is a seat seen along the plane in which its pipe's axis lies.
func (c *Canvas) straightSeat(v view, x plan.Crossed, class Class, half float64) {
	c.boxAbout(v, class, x.Z0, x.Z1, half)
}

// cutAlong draws the work cut open along its axis, up at the top, with what carries it.
func (c *Canvas) cutAlong(sc *acrossScene) {
	c.lyingHolder(sc, sc.holderAlong())
	for _, side := range []half{upper, lower} {
		c.metal(Off, sc.v, sc.before, side)
		c.metal(Stays, sc.v, sc.after, side)
	}
	for _, e := range edges(sc.after.Inner) {
		if e.r > 0 {
			c.Line(Outline, sc.v.at(e.z, -e.r), sc.v.at(e.z, e.r))
		}
	}
	sc.shown(func(x plan.Crossed, class Class) { c.alongOf(sc, x, class) })
	c.lyingHolder(sc, sc.boltAlong())
	c.Line(Centre, Point{sc.left - 5, 0}, Point{sc.right + 5, 0})
}

func (c *Canvas) alongOf(sc *acrossScene, x plan.Crossed, class Class) {
	r := greatest(sc.after.Outer, x.Z0, x.Z1)
	side := 1.0
	if sc.facesUp(x.AngleDeg + 180) {
		side = -1
	}
	upright := sc.facesUp(x.AngleDeg) || side < 0
	switch {
	case sideSeat(x) && upright:
		c.sideNotch(sc.v, x, class, r, side)
	case sideSeat(x):
	case x.Kind == plan.CrossedSeat && upright:
		c.straightSeat(sc.v, x, class, x.WidthMM/2)
	case x.Kind == plan.CrossedSeat:
		c.seatCut(sc.v, x, class)
	case upright && x.FloorMM < r:
		c.Rect(class, sc.v.at(x.Z0, side*x.FloorMM), sc.v.at(x.Z1, side*r))
		c.Poly(Outline, false, sc.v.at(x.Z0, side*r), sc.v.at(x.Z0, side*x.FloorMM), sc.v.at(x.Z1, side*x.FloorMM), sc.v.at(x.Z1, side*r))
	}
}

// fromEnd draws the work from its free end, as it lies.
func (c *Canvas) fromEnd(sc *acrossScene) {
	c.lyingHolder(sc, sc.holderEnd())
	v := planeView{scale: sc.v.scale, mirror: sc.s.FreeEnd == "left"}
	c.Circle(Paper, Point{}, sc.reach)
	var keep field
	c.endEdges(v, sc.after, &keep)
	c.Circle(Outline, Point{}, sc.reach)
	for _, x := range sc.p.Drawing.Crossed {
		if stageOf(sc.p, sc.s, x.Feature) == cutLater || x.Kind == plan.CrossedSeat && !sideSeat(x) {
			continue
		}
		x.AngleDeg = sc.lyingAs(x.AngleDeg)
		c.crossedEnd(v, sc.after, x, &keep)
	}
	turn := (90 - sc.s.AcrossDeg) * math.Pi / 180
	shape := endShape(sc.after, sc.s.Beside, v.mirror)
	for _, h := range shape.Holes {
		h.XMM, h.YMM = h.XMM*math.Cos(turn)-h.YMM*math.Sin(turn), h.XMM*math.Sin(turn)+h.YMM*math.Cos(turn)
		c.hole(v, h, seenClass(h, shape, v), &keep)
	}
	c.cross(Point{}, sc.reach+4, &keep)
	c.lyingHolder(sc, sc.clampEnd())
	box := c.Bounds()
	c.Text(Text{At: Point{0, box.Bottom + 2 + noteSize}, Anchor: AtMiddle, Size: noteSize, Text: "from the " + sc.s.FreeEnd + " end"})
}

// acrossLegend explains the fillings and the three views.
func (c *Canvas) acrossLegend(s *plan.Setup, unmarked []string) {
	box := c.Bounds()
	x, y := box.Left, box.Bottom+4
	for _, w := range []struct {
		class Class
		text  string
	}{{Off, "comes off in this holding"}, {Stays, "cut open, stays"}} {
		c.Rect(w.class, Point{x, y}, Point{x + 7, y + 4})
		c.Rect(Thin, Point{x, y}, Point{x + 7, y + 4})
		c.Text(Text{At: Point{x + 8.5, y + 3.2}, Anchor: AtStart, Size: noteSize, Text: w.text})
		x += 8.5 + Width(w.text, noteSize, false) + 5
	}
	lines := []string{"Not to scale. Above: from the spindle; below: cut open along the axis. The right end lies on the right.",
		countWords(s, " of the upper view") + " Heavy arrows are the cutter's way over the work."}
	if len(unmarked) > 0 {
		lines = append(lines, "Without a mark: "+strings.Join(unmarked, ", ")+".")
	}
	y += 5
	for _, l := range lines {
		for _, part := range Wrap(l, PageWidth-2*pageEdge-10, noteSize, false) {
			y += LineStep * noteSize
			c.Text(Text{At: Point{box.Left, y}, Anchor: AtStart, Size: noteSize, Text: part})
		}
	}
}
