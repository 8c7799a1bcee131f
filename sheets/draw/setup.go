package draw

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// The most that the work may take on paper in the sketch of a holding, and what is drawn of it behind the grip.
const (
	workLong   = 85.0
	workHigh   = 62.0
	behindGrip = 16.0
	setupTall  = 165.0
)

// scene is a holding as it is drawn: headstock at the left, free end at the right.
type scene struct {
	v             view
	setup         *plan.Setup
	dims          []plan.Dim
	before, after plan.Section   // what is drawn of them
	rest          plan.Section   // what parting leaves in the chuck
	seats         []plan.Crossed // that are cut already
	broken        bool           // the work goes on behind what is drawn
	parted        bool
	xFree, xHead  float64 // ends of the drawn work on paper
	gripHead      float64 // ends of the grip on paper
	gripFree      float64
	gripR, reach  float64 // radius of the grip and of the work on paper
}

// Setup is the sketch of one holding: the work in section as it is when the holding begins, with the metal that comes off, what grips it,
// and where each operation cuts.
func Setup(name string, p *plan.Part, s *plan.Setup) Page {
	if s.FlatBefore != nil && len(s.FlatBefore.Outline) > 0 {
		after := s.FlatAfter
		if after == nil {
			after = s.FlatBefore
		}
		return flatSetup(name, p, s, withBores(p, s, s.FlatBefore, cutBefore), withBores(p, s, after, cutNow))
	}
	before, ok := solid(s.Before)
	after, okAfter := solid(s.After)
	title := fmt.Sprintf("Holding %d: %s", s.Number, Plain(s.Title))
	if !ok || !okAfter {
		return NewCanvas().Page(name, title, "No shape is known for this holding.")
	}
	switch {
	case s.Across:
		return acrossSetup(name, p, s, before, after)
	case s.Tilt != nil:
		return tiltedSetup(name, p, s, before, after)
	case onTable(s) || s.MachineKind == "bench":
		return uprightSetup(name, p, s, before, after)
	}
	scale := newScene(p, s, before, after, 1).fit()
	page := newScene(p, s, before, after, scale).draw().Page(name, title, sceneText(s))
	for tries := 0; tries < mostTries && (page.Width > PageWidth || page.Height > setupTall); tries++ {
		scale *= shrink
		page = newScene(p, s, before, after, scale).draw().Page(name, title, sceneText(s))
	}
	return page
}

// A sketch that does not fit the page is drawn again, smaller by shrink, at most mostTries times: after that only its labels take the room.
const (
	shrink    = 0.85
	mostTries = 8
)

// fit is the scale at which the work takes the room meant for it, found from a scene at scale 1. What is drawn behind the grip does not grow.
func (sc *scene) fit() float64 {
	long, high := sc.xFree-max(sc.xHead, sc.gripHead), 2*sc.reach
	room := workLong
	if sc.broken {
		room -= behindGrip
	}
	scale := mostScale
	if long > 0 {
		scale = min(scale, room/long)
	}
	if high > 0 {
		scale = min(scale, workHigh/high)
	}
	return scale
}

// mostScale bounds how far a small part is blown up.
const mostScale = 10.0

func newScene(p *plan.Part, s *plan.Setup, before, after plan.Section, scale float64) *scene {
	sc := &scene{setup: s, dims: p.Drawing.Dims}
	left, right := before.Outer[0].Z0, before.Outer[len(before.Outer)-1].Z1
	sc.v = view{scale: scale, mirror: s.FreeEnd == "left", originZ: right}
	gripLeft, gripRight := min(s.Grip.FromZ, s.Grip.ToZ), max(s.Grip.FromZ, s.Grip.ToZ)
	if sc.v.mirror {
		sc.v.originZ = left
		if back := gripRight + behindGrip/scale; back < right && back > left {
			right, sc.broken = back, true
		}
	} else if back := gripLeft - behindGrip/scale; back > left && back < right {
		left, sc.broken = back, true
	}
	sc.before, _ = solid(clip(before, left, right))
	sc.after, _ = solid(clip(after, left, right))
	sc.part(before, after, left, right)
	for _, x := range p.Drawing.Crossed {
		if x.Kind == plan.CrossedSeat && x.On != "" && stageOf(p, s, x.Feature) == cutBefore && x.Z0 > left-1 && x.Z1 < right+1 {
			sc.seats = append(sc.seats, x)
		}
	}
	sc.xFree = max(sc.v.x(left), sc.v.x(right))
	sc.xHead = min(sc.v.x(left), sc.v.x(right))
	sc.gripHead = min(sc.v.x(gripLeft), sc.v.x(gripRight))
	sc.gripFree = max(sc.v.x(gripLeft), sc.v.x(gripRight))
	sc.gripR = s.Grip.RadiusMM * scale
	sc.reach = greatest(before.Outer, left, right) * scale
	return sc
}

// part finds what a parting or sawing cut leaves in the chuck.
func (sc *scene) part(before, after plan.Section, left, right float64) {
	for _, op := range sc.setup.Operations {
		if op.Process == plan.PartOff || op.Process == plan.SawOff {
			sc.parted = true
		}
	}
	if !sc.parted {
		return
	}
	if sc.v.mirror {
		sc.rest = clip(before, after.Outer[len(after.Outer)-1].Z1, right)
	} else {
		sc.rest = clip(before, left, after.Outer[0].Z0)
	}
	sc.rest, sc.parted = solid(sc.rest)
}

func (sc *scene) draw() *Canvas {
	c := NewCanvas()
	c.holderBehind(sc)
	c.work(sc)
	c.holderBefore(sc)
	c.Line(Centre, Point{sc.xHead - 6, 0}, Point{sc.xFree + 6, 0})
	c.mainAxis(sc)
	held := c.Bounds()
	upper, column, unmarked := sc.operationMarks()
	bottom := c.column(sc, column)
	marks, top := c.cutArrows(sc, upper)
	c.marks(marks, min(held.Top, top)-2*cutClear, -1, sc.left(), sc.right())
	bottom = max(bottom, held.Bottom, c.stickOut(sc, max(bottom, sc.reach)))
	c.marks(sc.lowerMarks(), bottom+4, 1, sc.left(), sc.right())
	c.legend(sc, unmarked)
	return c
}

// left and right are the page's edges with the work a little left of the middle, where the chuck needs room.
func (sc *scene) left() float64  { return (sc.xHead+sc.xFree)/2 - PageWidth/2 + pageEdge }
func (sc *scene) right() float64 { return sc.left() + PageWidth - 2*pageEdge }

// work draws the work: all that was there as coming off, and over it what stays.
func (c *Canvas) work(sc *scene) {
	for _, side := range []half{upper, lower} {
		c.metal(Off, sc.v, nearSide(sc.before, side), side)
		c.metal(Paper, sc.v, sc.rest, side)
		c.metal(Stays, sc.v, nearSide(sc.after, side), side)
	}
	for _, e := range edges(sc.after.Inner) {
		if e.r > 0 {
			c.Line(Outline, sc.v.at(e.z, -e.r), sc.v.at(e.z, e.r))
		}
	}
	for _, x := range sc.seats {
		c.seatSection(sc.v, x)
	}
	if sc.broken {
		c.breakLine(sc.xHead, greatest(sc.before.Outer, math.Inf(-1), math.Inf(1))*sc.v.scale)
	}
}

// breakLine says that the work goes on: a zigzag across it.
func (c *Canvas) breakLine(x, r float64) {
	c.Rect(Paper, Point{x - 1, -r - 1}, Point{x + 0.5, r + 1})
	c.Poly(Thin, false, Point{x, -r - 1.5}, Point{x, -2}, Point{x + 1.5, -1}, Point{x - 1.5, 1}, Point{x, 2}, Point{x, r + 1.5})
}

// stickOut dimensions how far the work stands out of jaws or a collet, below top; it gives the lowest place that it takes.
func (c *Canvas) stickOut(sc *scene, top float64) float64 {
	if k := sc.setup.Grip.Kind; k != "jaws" && k != "collet" || sc.setup.StickOutMM <= 0 || sc.setup.Grip.Inside {
		return 0
	}
	var busy []float64
	_, risers := inOrder(sc.lowerMarks())
	for _, r := range risers {
		busy = append(busy, r.x)
	}
	from, to := min(sc.gripFree, sc.xFree), max(sc.gripFree, sc.xFree)
	text := units.Decimal(sc.setup.StickOutMM, 1) + " mm out"
	c.rungs(ladder([]span{{x0: from, x1: to, depth0: sc.reach, depth1: sc.reach, text: text}}, busy), top, 1)
	return top + firstLevel + extPast
}

// legend explains the fillings and names the operations that have no mark.
func (c *Canvas) legend(sc *scene, unmarked []string) {
	box := c.Bounds()
	x, y := max(box.Left, sc.left()), box.Bottom+4
	swatch := func(class Class, text string) {
		if class == Paper {
			c.Rect(Thin, Point{x, y}, Point{x + 7, y + 4})
		} else {
			c.Rect(class, Point{x, y}, Point{x + 7, y + 4})
			c.Rect(Thin, Point{x, y}, Point{x + 7, y + 4})
		}
		c.Text(Text{At: Point{x + 8.5, y + 3.2}, Anchor: AtStart, Size: noteSize, Text: text})
		x += 8.5 + Width(text, noteSize, false) + 5
	}
	start := x
	swatch(Stays, "stays")
	swatch(Off, "comes off in this holding")
	if sc.parted {
		swatch(Paper, "is left in the chuck")
	}
	lines := []string{"Not to scale. Headstock at the left, the part's " + sc.setup.FreeEnd + " end points to the right."}
	if sc.setup.ThrowMM > 0 {
		lines = append(lines, fmt.Sprintf("Cut open through both axes, which are %s mm apart: the work's own is the upper one, the spindle turns about the lower one. Noughts of the cross dial stand where the farthest side swings.", units.Decimal(sc.setup.ThrowMM, 3)))
	}
	if len(sc.seats) > 0 {
		lines = append(lines, "Cut open across the pipe that the seat is for.")
	}
	if len(zerosOf(sc.setup, "cross")) > mostCrossZeros {
		lines = append(lines, "The cross dial's noughts stand with the operations.")
	}
	if len(unmarked) > 0 {
		lines = append(lines, "Without a mark: "+strings.Join(unmarked, ", ")+".")
	}
	footnotes(c, start, y+5, lines)
}

// footnotes writes lines under a sketch, from a place downwards.
func footnotes(c *Canvas, x, y float64, lines []string) {
	for _, l := range lines {
		for _, part := range Wrap(l, PageWidth-2*pageEdge-10, noteSize, false) {
			y += LineStep * noteSize
			c.Text(Text{At: Point{x, y}, Anchor: AtStart, Size: noteSize, Text: part})
		}
	}
}

// sceneText says in words what the sketch shows.
func sceneText(s *plan.Setup) string {
	text := Plain(fmt.Sprintf("The work held by %s (%s), %s end free.", s.Holding, gripWords(s), s.FreeEnd))
	for _, op := range s.Operations {
		text += fmt.Sprintf(" Operation %d: %s.", op.Number, Plain(op.Title))
	}
	return text
}
