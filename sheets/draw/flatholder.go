package draw

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// Sizes of the symbols that hold flat work, in millimetres on paper.
const (
	jawDeep    = 9.0  // of a jaw away from the work
	studOff    = 6.0  // from the work's edge to a clamp's stud
	strapMost  = 16.0 // and from there to the packing, twice as far as to the toe but no more than this
	packHalf   = 2.5
	studRadius = 1.9
	plateMore  = 5.0 // a faceplate reaches beyond all that is on it
	chuckMore  = 6.0
)

// flatHolderBehind draws what lies behind the work.
func (c *Canvas) flatHolderBehind(sc *flatScene) {
	centre := sc.v.at(sc.centre.x, sc.centre.y)
	c.ledgeBehind(sc)
	switch {
	case onLathe(sc.s) && len(sc.s.Clamps) > 0:
		r := sc.plateRadius()
		c.Circle(Holder, centre, r)
		sc.keep.ring(centre, r)
		for i := range 4 {
			deg := 45 + 90*float64(i)
			along, from := sc.v.towards(deg), exit(sc.course, sc.centre, deg)*sc.v.scale+2 // what lies under the work is not seen
			if from < r-5 {
				c.Line(Thin, stepBy(centre, along, from), stepBy(centre, along, r-3))
				sc.keep.line(stepBy(centre, along, from), stepBy(centre, along, r-3))
			}
		}
	case sc.s.Grip.Kind == "jaws":
		c.Circle(Holder, centre, sc.farthest(centre)+jawDeep+chuckMore)
	}
}

// carriers draws in dashes the parallels or packing below the work.
func (c *Canvas) carriers(sc *flatScene) {
	if sc.s.Bed == nil {
		return
	}
	for _, u := range sc.s.Bed.Under {
		a, b := sc.v.at(u.X0, u.Y0), sc.v.at(u.X1, u.Y1)
		c.Rect(Hidden, a, b)
		for _, side := range [][2]Point{{a, {b.X, a.Y}}, {{b.X, a.Y}, b}, {b, {a.X, b.Y}}, {{a.X, b.Y}, a}} {
			sc.keep.line(side[0], side[1])
		}
	}
}

// farthest is how far the work reaches from a place on paper.
func (sc *flatScene) farthest(from Point) float64 {
	most := 0.0
	for _, q := range sc.course {
		p := sc.v.at(q.x, q.y)
		most = max(most, math.Hypot(p.X-from.X, p.Y-from.Y))
	}
	return most
}

// plateRadius is how large a faceplate is drawn: around the work, its clamps and the counterweight.
func (sc *flatScene) plateRadius() float64 {
	centre := sc.v.at(sc.centre.x, sc.centre.y)
	most := sc.farthest(centre)
	for _, cl := range sc.s.Clamps {
		_, end := sc.strap(cl)
		most = max(most, math.Hypot(end.X-centre.X, end.Y-centre.Y))
	}
	if l, ok := sc.ledge(); ok {
		for _, p := range l.corners() {
			most = max(most, math.Hypot(p.X-centre.X, p.Y-centre.Y))
		}
	}
	if b := sc.s.Balance; b != nil && b.WeightKg > 0 {
		most = max(most, min(b.RadiusMM*sc.v.scale+weightRadius, most*1.5))
	}
	return most + plateMore
}

// strap is where a clamp's stud stands and where its strap ends, on paper.
func (sc *flatScene) strap(cl plan.Clamp) (stud, end Point) {
	toe, along := sc.v.at(cl.XMM, cl.YMM), sc.v.towards(cl.AngleDeg)
	off := cl.StudMM * sc.v.scale
	if off <= 0 {
		off = exit(sc.course, xy{cl.XMM, cl.YMM}, cl.AngleDeg)*sc.v.scale + studOff
	}
	stud = stepBy(toe, along, off)
	return stud, stepBy(stud, along, min(2*off, strapMost)+packHalf)
}

// flatHolderBefore draws what lies on or around the work.
func (c *Canvas) flatHolderBefore(sc *flatScene) {
	c.carriers(sc)
	c.ledgeBefore(sc)
	c.flushBars(sc)
	for _, cl := range sc.s.Clamps {
		c.clamp(sc, cl)
	}
	for _, pr := range sc.presses() {
		p, along := sc.v.at(pr.XMM, pr.YMM), sc.v.towards(pr.AngleDeg)
		wide := max(pr.WidthMM*sc.v.scale, 8)
		c.blockAt(Holder, p, along, jawDeep, wide)
		sc.keep.box(Box{p.X - 1, p.Y - 1, p.X + 1, p.Y + 1})
	}
	centre := sc.v.at(sc.centre.x, sc.centre.y)
	switch sc.s.Grip.Kind {
	case "mandrel", "glued_bore":
		c.Circle(Holder, centre, sc.s.Grip.RadiusMM*sc.v.scale)
		if sc.s.Grip.Kind == "glued_bore" {
			c.Circle(Glue, centre, sc.s.Grip.RadiusMM*sc.v.scale)
		}
		c.cross(centre, sc.s.Grip.RadiusMM*sc.v.scale+crossOver, &sc.keep)
	case "clamps":
		if sc.s.Grip.Inside && sc.s.Grip.RadiusMM > 0 { // a bush in the bore and a screw through it
			c.Circle(Holder, centre, sc.s.Grip.RadiusMM*sc.v.scale)
			c.Circle(Holder, centre, min(screwHead, sc.s.Grip.RadiusMM*sc.v.scale*0.6))
			c.cross(centre, sc.s.Grip.RadiusMM*sc.v.scale+crossOver, &sc.keep)
		}
	case "glued_face":
		c.Circle(Hidden, centre, sc.s.Grip.RadiusMM*sc.v.scale)
	}
	if onLathe(sc.s) {
		c.cross(centre, 4, &sc.keep)
		c.counterweight(sc, centre)
	}
}

// clamp draws a strap from its toe over the edge of the work to its stud, and the packing under its other end.
func (c *Canvas) clamp(sc *flatScene, cl plan.Clamp) {
	toe, along := sc.v.at(cl.XMM, cl.YMM), sc.v.towards(cl.AngleDeg)
	stud, end := sc.strap(cl)
	wide := max(cl.ToeMM*sc.v.scale, 4)
	start := stepBy(toe, along, -cl.ToeMM*sc.v.scale/2)
	c.blockAt(Holder, stepBy(end, along, -2*packHalf), along, 2*packHalf+1, wide+2)
	c.blockAt(Holder, start, along, math.Hypot(end.X-start.X, end.Y-start.Y), wide)
	c.Circle(Holder, stud, studRadius)
	c.Circle(Head, stud, studRadius/2)
	half := wide/2 + 1
	for _, p := range []Point{start, stud, stepBy(end, along, -packHalf)} {
		sc.keep.box(Box{p.X - half, p.Y - half, p.X + half, p.Y + half})
	}
}

// clampNames writes each clamp's number at the end of its strap.
func (c *Canvas) clampNames(sc *flatScene) {
	c.ledgeNames(sc)
	for i, cl := range sc.s.Clamps {
		_, end := sc.strap(cl)
		c.near(&sc.keep, end, 2.5, sc.v.towards(cl.AngleDeg), Text{Size: noteSize, Text: fmt.Sprintf("clamp %d", i+1)})
	}
}

// presses are where jaws press on the work: as the plan says, else worked out from the kind of grip.
func (sc *flatScene) presses() []plan.Press {
	if len(sc.s.Presses) > 0 {
		return sc.s.Presses
	}
	g := sc.s.Grip
	switch {
	case g.Kind == "jaws" && g.Jaws > 0 && g.RadiusMM > 0 && !g.Inside:
		return sc.around(g)
	case g.Kind == "vice":
		return sc.viceJaws(g)
	}
	return nil
}

// around are the jaws of a chuck, spread evenly about the axis, the first above it.
func (sc *flatScene) around(g plan.Grip) []plan.Press {
	var out []plan.Press
	for i := range g.Jaws {
		deg := 90 + 360*float64(i)/float64(g.Jaws)
		far := exit(sc.course, sc.centre, deg)
		x, y := sc.centre.x+far*math.Cos(deg*math.Pi/180), sc.centre.y+far*math.Sin(deg*math.Pi/180)
		out = append(out, plan.Press{XMM: x, YMM: y, AngleDeg: deg, WidthMM: g.JawWidthMM})
	}
	return out
}

// viceJaws are the two jaws of a vice: on the edge that is named, or on the longest straight one, and on the side across from it.
func (sc *flatScene) viceJaws(g plan.Grip) []plan.Press {
	edge, ok := named(sc.before.Outline, g.Surface)
	if !ok || edge.RadiusMM != 0 {
		edge = plan.OutlineSegment{}
		for _, s := range sc.before.Outline {
			if s.RadiusMM == 0 && math.Hypot(s.X1-s.X0, s.Y1-s.Y0) > math.Hypot(edge.X1-edge.X0, edge.Y1-edge.Y0) {
				edge = s
			}
		}
	}
	if edge.X0 == edge.X1 && edge.Y0 == edge.Y1 {
		return nil
	}
	mid := xy{(edge.X0 + edge.X1) / 2, (edge.Y0 + edge.Y1) / 2}
	out := math.Atan2(-(edge.X1-edge.X0), edge.Y1-edge.Y0) * 180 / math.Pi
	far := exit(sc.course, mid, out+180)
	other := plan.Press{XMM: mid.x - far*math.Cos(out*math.Pi/180), YMM: mid.y - far*math.Sin(out*math.Pi/180), AngleDeg: out + 180, WidthMM: g.JawWidthMM}
	return []plan.Press{{XMM: mid.x, YMM: mid.y, AngleDeg: out, WidthMM: g.JawWidthMM}, other}
}

const (
	weightRadius = 5.0
	screwHead    = 5.0
)

// counterweight draws the weight that balances the work, with its radius and the angle from the part's X.
func (c *Canvas) counterweight(sc *flatScene, centre Point) {
	b := sc.s.Balance
	if b == nil || b.WeightKg <= 0 {
		return
	}
	along := sc.v.towards(b.AngleDeg)
	far := min(b.RadiusMM*sc.v.scale, sc.plateRadius()-plateMore-weightRadius)
	p := stepBy(centre, along, far)
	c.Line(Thin, centre, p)
	sc.keep.line(centre, p)
	zero := sc.v.towards(0)
	c.Line(Thin, centre, stepBy(centre, zero, angleRadius+3))
	c.angleArc(sc.v, &sc.keep, centre, b.AngleDeg)
	c.Circle(Holder, p, weightRadius)
	c.Line(Outline, Point{p.X - weightRadius*0.7, p.Y - weightRadius*0.7}, Point{p.X + weightRadius*0.7, p.Y + weightRadius*0.7})
	c.Line(Outline, Point{p.X - weightRadius*0.7, p.Y + weightRadius*0.7}, Point{p.X + weightRadius*0.7, p.Y - weightRadius*0.7})
	sc.keep.box(Box{p.X - weightRadius, p.Y - weightRadius, p.X + weightRadius, p.Y + weightRadius})
}

const angleRadius = 7.0

// angleArc draws the arc from the part's X to a direction, with its size beside it.
func (c *Canvas) angleArc(v planeView, keep *field, centre Point, deg float64) {
	whole := math.Mod(math.Mod(deg, 360)+360, 360)
	if whole == 0 {
		return
	}
	path := Path{Class: Thin, Start: stepBy(centre, v.towards(0), angleRadius)}
	parts := max(1, int(math.Ceil(whole/90)))
	for i := 1; i <= parts; i++ {
		to := stepBy(centre, v.towards(whole*float64(i)/float64(parts)), angleRadius)
		path.Steps = append(path.Steps, Step{To: to, Radius: angleRadius, Centre: centre, Clockwise: v.mirror})
	}
	c.Path(path)
	keep.path(path)
	c.near(keep, centre, angleRadius+1, v.towards(whole/2), Text{Size: noteSize, Text: units.Decimal(whole, 0) + "°"})
}
