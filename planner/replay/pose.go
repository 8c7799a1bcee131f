package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// pose is how the work stands under a mill's or a drilling machine's spindle.
type pose struct {
	across bool
	free   float64 // +1: the right end or the front looks at the spindle, else -1; of no account across
	deg    float64 // across: where up is, from +X
	coarse float64 // across, on a dividing head: half the angle from one hole of its circle to the next; nothing is turned nearer than that
	leans  bool    // on a tilting plate: set over by lean degrees about the table's x, along which the direction along of the part lies
	lean   float64
	along  float64
}

// place is a place in a pose's frame: X, Y, Z of the part upright; Z, side, up across. The first two lie in the table, the last along the spindle.
type place [3]float64

// poseOf is the pose of the setup at hand.
func (w *walk) poseOf() pose {
	p := pose{across: w.setup.Across, free: w.free(), deg: w.setup.AcrossDeg + w.turnedDeg, coarse: w.halfHole()}
	if t := w.setup.Tilt; t != nil {
		p.leans, p.lean, p.along = true, tiltOf(*t), t.AlongDeg
	}
	return p
}

// looks reports whether a pose that lies across has a direction of the drawing up, as near as its holding turns it.
func (p pose) looks(deg float64) bool {
	return turnBetween(p.deg, deg) <= math.Max(sameAngle, p.coarse)
}

// poseFor is the pose in which the cuts of an operation are read: the setup's, or that of the hole itself where it is tapped by hand at the bench, however the work lies.
func (w *walk) poseFor(op plan.Operation) pose {
	if w.machine.Kind == partspec.Bench && op.Process == plan.Tap {
		if f, ok := w.part.Feature(op.Feature).(*partspec.CrossHole); ok {
			return pose{across: true, free: w.free(), deg: float64(f.Angle)}
		}
	}
	return w.poseOf()
}

// up is the direction along the frame's last axis in which the spindle lies.
func (p pose) up() float64 {
	if p.across || p.leans {
		return 1
	}
	return p.free
}

// inPart turns a place of the pose's frame into one of the part's.
func (p pose) inPart(at place) (x, y, z float64) {
	if !p.across {
		return at[0], at[1], at[2]
	}
	sin, cos := math.Sincos(p.deg * math.Pi / 180)
	return at[2]*cos + at[1]*sin, at[2]*sin - at[1]*cos, at[0] // side lies at deg - 90
}

// onMill reports whether the setup at hand stands on a mill or a drilling machine.
func (w *walk) onMill() bool {
	return w.setup.MachineKind == string(partspec.Mill) || w.setup.MachineKind == string(partspec.Drill) || w.onSlide()
}

// The dials of a mill: two of the table, and one along the spindle.
const (
	dialX     = "x"
	dialY     = "y"
	dialQuill = "quill"
	dialZ     = "z"
)

// axisOf is which of a place's numbers a dial sets; -1 for one that no mill has.
func axisOf(dial string) int {
	switch dial {
	case dialX:
		return 0
	case dialY:
		return 1
	case dialQuill, dialZ:
		return 2
	}
	return -1
}

// goes is the direction in which the number grows with a dial's count.
func (p pose) goes(axis int) float64 {
	switch {
	case axis == 2:
		return -p.up()
	case axis == 0 && !p.across && !p.leans:
		return p.free
	}
	return 1
}

// found is a surface that a dial can be set on.
type found struct {
	at      float64 // where it is along the dial's axis
	off     float64 // how far it may lie from there for all that is known of it, apart from the finding
	clocked bool    // the middle of a round surface
}

// centre is a round surface along the spindle whose middle an indicator finds.
type centre struct {
	x, y float64 // in the frame's first two numbers
	off  float64 // radially
}

// touchable is the work as the noughts of a mill find it, now: flat and turned work each give it.
type touchable interface {
	// tops are the places along the spindle where the tool's end can touch: faces that look at it, and across the crown of the round.
	tops(p pose) []found
	// edges are the places along a dial of the table (axis 0 or 1) where an edge finder can touch, and across the middle between two alike.
	edges(p pose, axis int) []found
	// centres are the round surfaces that an indicator in the spindle can sweep.
	centres(p pose) []centre
}

// slot is the stretch of a movement in the table's plane, and whether there is one.
func (m pass) slot() (long float64, moves bool) {
	long = math.Hypot(m.to[0]-m.from[0], m.to[1]-m.from[1])
	return long, long > same
}

// readingsOf joins the readings of a cut.
func readingsOf(cut plan.Cut) []plan.Reading {
	return append(append([]plan.Reading(nil), cut.From...), cut.To...)
}

// path is the way of the tool's axis in the table's plane.
func (m pass) path() plane.Capsule {
	return plane.Capsule{X0: m.from[0], Y0: m.from[1], X1: m.to[0], Y1: m.to[1], Radius: m.radius}
}

// strapPerStud is how far a clamp's strap reaches to its packing, for its stud's distance from the toe (rule B-08: the stud at one third).
const strapPerStud = 3.0

// strap is the line along a clamp from its toe over its stud to its packing.
func strap(c plan.Clamp) plane.Capsule {
	sin, cos := math.Sincos(c.AngleDeg * math.Pi / 180)
	return plane.Capsule{X0: c.XMM, Y0: c.YMM, X1: c.XMM + strapPerStud*c.StudMM*cos, Y1: c.YMM + strapPerStud*c.StudMM*sin, Radius: c.ToeMM / 2}
}

// apart is the least distance between two ways; 0 where they cross.
func apart(a, b plane.Capsule) float64 {
	if cross(a, b) {
		return 0
	}
	return min(a.Off(b.X0, b.Y0), a.Off(b.X1, b.Y1), b.Off(a.X0, a.Y0), b.Off(a.X1, a.Y1))
}

// cross reports whether two ways cross.
func cross(a, b plane.Capsule) bool {
	left := func(c plane.Capsule, x, y float64) float64 { return (c.X1-c.X0)*(y-c.Y0) - (c.Y1-c.Y0)*(x-c.X0) }
	return left(a, b.X0, b.Y0)*left(a, b.X1, b.Y1) < 0 && left(b, a.X0, a.Y0)*left(b, a.X1, a.Y1) < 0
}
