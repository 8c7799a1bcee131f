package draw

import (
	"fmt"
	"math"

	"catchplate/planner/plan"
)

// The most that flat work may take on paper in the sketch of a holding.
const (
	flatWorkWide  = 84.0
	flatWorkHigh  = 80.0
	latheWorkHigh = 72.0
	flatSetupTall = 205.0
)

// flatScene is flat work as it is held: in plan as seen from the side of its free face, and cut open beside or below that.
type flatScene struct {
	v             planeView
	p             *plan.Part
	s             *plan.Setup
	before, after *plan.Flat
	course        []xy // of the work as it comes
	box           Box  // of the work on paper, in plan
	centre        xy   // on a lathe: what runs on the axis
	cutAt         float64
	sections      []plan.Section // of turned work, before and after; none of flat work
	fed           bool           // an arrow of a cutter's way is drawn
	keep          field
}

// flatSetup is the sketch of one holding of flat work; or of turned work that stands on a table, of which the sections before and after are given too.
func flatSetup(name string, p *plan.Part, s *plan.Setup, before, after *plan.Flat, turned ...plan.Section) Page {
	title := fmt.Sprintf("Holding %d: %s", s.Number, Plain(s.Title))
	x0, y0, x1, y1 := extent(before.Outline)
	high := flatWorkHigh
	if onLathe(s) {
		high = latheWorkHigh
	}
	scale := min(mostScale, flatWorkWide/max(x1-x0, touching), high/max(y1-y0, touching))
	draw := func() Page {
		return newFlatScene(p, s, before, after, turned, scale).draw().Page(name, title, flatSceneText(s))
	}
	page := draw()
	for tries := 0; tries < mostTries && (page.Width > PageWidth || page.Height > flatSetupTall); tries++ {
		scale *= shrink
		page = draw()
	}
	return page
}

func onLathe(s *plan.Setup) bool { return s.MachineKind == "lathe" || s.MachineKind == "" }

func newFlatScene(p *plan.Part, s *plan.Setup, before, after *plan.Flat, turned []plan.Section, scale float64) *flatScene {
	sc := &flatScene{v: planeView{scale, s.FreeEnd == "left"}, p: p, s: s, before: before, after: after, sections: turned, course: course(before.Outline)}
	x0, y0, x1, y1 := extent(before.Outline)
	a, b := sc.v.at(x0, y0), sc.v.at(x1, y1)
	sc.box = Box{min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)}
	sc.centre = xy{s.CentreX, s.CentreY}
	if !sc.turned() {
		sc.cutAt = sc.sectionAt((x0+x1)/2, (y0+y1)/2)
	}
	return sc
}

// sectionAt is where the work is cut open: through the largest hole made in this holding, else through the largest there is, else in the middle. On a
// lathe it is the x of a cut along Y, else the y of a cut along X.
func (sc *flatScene) sectionAt(x, y float64) float64 {
	for _, s := range sc.after.Seats {
		if !hasSeat(sc.before.Seats, s.Feature) && !s.AlongY && !onLathe(sc.s) {
			return s.MiddleMM
		}
	}
	h, ok := largest(sc.fresh())
	if !ok {
		h, ok = largest(sc.after.Holes)
	}
	if ok {
		x, y = h.XMM, h.YMM
	}
	if onLathe(sc.s) {
		if ok || sc.centre != (xy{}) {
			return sc.centre.x
		}
		return x
	}
	return y
}

// fresh are the holes that this holding makes or changes.
func (sc *flatScene) fresh() []plan.FlatHole {
	var out []plan.FlatHole
	for _, h := range sc.after.Holes {
		if !hasHole(sc.before.Holes, h) {
			out = append(out, h)
		}
	}
	return out
}

func hasHole(holes []plan.FlatHole, h plan.FlatHole) bool {
	for _, o := range holes {
		if o == h {
			return true
		}
	}
	return false
}

func (sc *flatScene) draw() *Canvas {
	c := NewCanvas()
	c.flatHolderBehind(sc)
	c.flatWork(sc)
	c.flatHolderBefore(sc)
	c.clampNames(sc)
	held := c.Bounds()
	marks, unmarked := c.flatOperations(sc, held)
	c.flatZeros(sc, held)
	if onLathe(sc.s) {
		c.latheSide(sc, held)
	} else if !sc.atBench() {
		c.tableSide(sc, held)
	}
	c.holeNumbers(sc.v, sc.after.Holes, drawnHoles(sc.p), sc.p.Drawing.Rings, &sc.keep)
	all := c.Bounds()
	middle := (all.Left + all.Right) / 2
	c.marks(marks, min(held.Top-flatLabelsOff, all.Top)-2, -1, middle-PageWidth/2+pageEdge, middle+PageWidth/2-pageEdge)
	c.flatLegend(sc, unmarked)
	return c
}

// flatLabelsOff is from what holds the work to where leaders turn upright.
const flatLabelsOff = 4.0

func (sc *flatScene) turned() bool { return len(sc.sections) > 0 }

func (sc *flatScene) atBench() bool { return sc.s.MachineKind == "bench" || sc.s.Grip.Kind == "bench" }

// flatWork draws the work from the side of its free face: what comes off dotted, what is there already plain.
func (c *Canvas) flatWork(sc *flatScene) {
	c.Path(sc.v.rim(Off, sc.before.Outline))
	c.Path(sc.v.rim(Outline, sc.before.Outline))
	c.Path(sc.v.rim(Paper, sc.after.Outline))
	rim := sc.v.rim(Outline, sc.after.Outline)
	c.Path(rim)
	sc.keep.path(rim)
	if sc.turned() {
		c.turnedWork(sc)
	}
	c.scribed(sc)
	var rings []plan.Ring
	for _, r := range sc.p.Drawing.Rings {
		if hasFeature(sc.after.Holes, r.Feature) {
			rings = append(rings, r)
		}
	}
	c.rings(sc.v, rings, sc.after.Holes, &sc.keep)
	for _, s := range sc.after.Slots {
		if !hasSlot(sc.before.Slots, s) {
			c.Path(slotPath(sc.v, s, Off))
		}
		c.slot(sc.v, s, &sc.keep)
	}
	c.seatsInPlan(sc.v, sc.after, &sc.keep)
	for _, h := range sc.after.Holes {
		if !hasHole(sc.before.Holes, h) {
			c.Circle(Off, sc.v.at(h.XMM, h.YMM), max(h.DiameterMM, h.SinkMM)/2*sc.v.scale)
		}
	}
	for _, h := range sc.after.Holes {
		class := seenClass(h, sc.after, sc.v)
		c.hole(sc.v, h, class, &sc.keep)
	}
}

// scribed draws the finished outline, and the crosses of holes to come, where they are marked out in this holding; of a part that is spotted through, the holes of
// its mate that lies over it.
func (c *Canvas) scribed(sc *flatScene) {
	f := sc.p.Drawing.Flat
	for _, op := range sc.s.Operations {
		if op.Process != plan.MarkOut {
			continue
		}
		if f != nil {
			c.Path(sc.v.rim(Thin, f.Outline))
		}
		for _, h := range op.Holes {
			at := sc.v.at(h.XMM, h.YMM)
			c.pricked(at, crossOver*2, &sc.keep)
			if throughMate(op) {
				r := op.Tool.SizeMM / 2 * sc.v.scale
				c.Circle(Thin, at, r)
				sc.keep.ring(at, r)
			}
		}
	}
}

func hasFeature(holes []plan.FlatHole, feature string) bool {
	for _, h := range holes {
		if h.Feature == feature {
			return true
		}
	}
	return false
}

func hasSlot(slots []plan.FlatSlot, s plan.FlatSlot) bool {
	for _, o := range slots {
		if o == s {
			return true
		}
	}
	return false
}

// flatZeros marks where the table's dials stand at nought.
func (c *Canvas) flatZeros(sc *flatScene, held Box) {
	for _, b := range c.tableZeros(sc.s, held, func(x, y float64) Point { return sc.v.at(x, y) }) {
		sc.keep.box(b)
	}
}

// unit is the direction of an angle on paper, and the direction to its left.
func (v planeView) unit(deg float64) (along, left Point) {
	along = v.towards(deg)
	return along, Point{along.Y, -along.X}
}

func stepBy(p, d Point, far float64) Point { return Point{p.X + d.X*far, p.Y + d.Y*far} }

// block draws a rectangle that begins at p and reaches far along a direction, wide across it.
func (c *Canvas) blockAt(class Class, p, along Point, far, wide float64) {
	side := Point{-along.Y * wide / 2, along.X * wide / 2}
	q := stepBy(p, along, far)
	c.Poly(class, true, Point{p.X + side.X, p.Y + side.Y}, Point{q.X + side.X, q.Y + side.Y}, Point{q.X - side.X, q.Y - side.Y}, Point{p.X - side.X, p.Y - side.Y})
}

func nearAngle(a, b float64) bool {
	d := math.Mod(math.Abs(a-b), 360)
	return min(d, 360-d) < smoothDeg
}
