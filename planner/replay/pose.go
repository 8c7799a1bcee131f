package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// pose is how the work stands under a mill's or a drilling machine's spindle.
type pose struct {
	across bool
	free   float64 // +1: the right end or the front looks at the spindle, else -1; of no account across
	deg    float64 // across: where up is, from +X
}

// place is a place in a pose's frame: X, Y, Z of the part upright; Z, side, up across. The first two lie in the table, the last along the spindle.
type place [3]float64

// poseOf is the pose of the setup at hand.
func (w *walk) poseOf() pose { return pose{w.setup.Across, w.free(), w.setup.AcrossDeg} }

// up is the direction along the frame's last axis in which the spindle lies.
func (p pose) up() float64 {
	if p.across {
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
	return w.setup.MachineKind == string(partspec.Mill) || w.setup.MachineKind == string(partspec.Drill)
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
	case axis == 0 && !p.across:
		return p.free
	}
	return 1
}

// found is a surface that a dial can be set on.
type found struct {
	at  float64 // where it is along the dial's axis
	off float64 // how far it may lie from there for all that is known of it, apart from the finding
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
