package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
	"catchplate/planner/tables"
)

// pass is one movement of a tool on a mill or a drilling machine, rebuilt from its readings.
type pass struct {
	cutter
	key      cutKey
	name     string
	pose     pose
	from, to place      // of the tool's end on its axis
	told     [2]float64 // where its end would stand over the table if every nought were where the plan has it
	radius   float64    // it takes everything within, from its end towards the spindle
	within   float64    // how far its axis may lie from there, in the table's plane: what found the work, not what the drill adds
	less     float64    // how much less that is along either axis: two edges were found each by itself
	by       string     // what the place was taken from: "" = the dials; else as plan.Place says
	measured float64    // width of the range in which measuring ends it; 0 = the dials do
	counts   map[string][2]int64
	turning  float64 // of within, what turns with the work on an upright dividing head: it moves no ring as a whole
	ringed   float64 // upright on a dividing head: how far off along its circle the nearest hole may bring a place
}

// coneLong is how long the cone in front of the full diameter is.
func (m pass) coneLong() float64 {
	deg := m.pointDeg()
	if m.ball() {
		return m.radius
	}
	if deg >= 180 {
		return 0
	}
	return m.radius / math.Tan(deg/2*math.Pi/180)
}

// wander is what the tool adds to the error of its place where it begins in solid metal: a drill lands a little off; boring heads and milling cutters
// cut where they stand.
func (c cutter) wander() float64 {
	switch c.Kind {
	case partspec.Drills, partspec.CentreDrill, partspec.HoleSaw:
		return float64(tables.PlaceError(tables.ByDrill))
	}
	return 0
}

// rebuildMill makes the movement of a cut on a mill or a drilling machine.
func (w *walk) rebuildMill(op plan.Operation, cut plan.Cut, key cutKey) (pass, bool) {
	tool, err := w.cutterFor(op, cut)
	if err != nil {
		w.failOp("tool", "%v", err)
		return pass{}, false
	}
	if cut.Along != nil {
		w.failOp("readings", "cut %q goes along an edge of an outline; it has none here", cut.Name)
		return pass{}, false
	}
	m := pass{cutter: tool, key: key, name: cut.Name, pose: w.poseFor(op), counts: countsOf(cut)}
	unread := math.NaN()
	m.from, m.to = place{unread, unread, unread}, place{unread, unread, unread}
	if !w.readMill(&m.from, cut.From) {
		return pass{}, false
	}
	m.to = m.from
	if !w.readMill(&m.to, cut.To) || !w.stands(&m, cut) || !w.spans(&m, op, cut) {
		return pass{}, false
	}
	if !w.endAtMeasure(&m, cut) {
		return pass{}, false
	}
	m.told = [2]float64{m.to[0] - w.strayed(m, dialX), m.to[1] - w.strayed(m, dialY)}
	if w.indexing() && !w.indexPass(&m, cut) {
		return pass{}, false
	}
	for _, v := range [...]float64{m.from[0], m.from[1], m.from[2], m.to[0], m.to[1], m.to[2]} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			w.failOp("readings", "cut %q: the dials must say where the tool stands, over the table and along the spindle", cut.Name)
			return pass{}, false
		}
	}
	return m, true
}

// strayed is how far the surface that a dial of the table is set on lies from where the plan has it, where that surface was made by measuring.
func (w *walk) strayed(m pass, dial string) float64 {
	z, ok := w.zeros[dial]
	if !ok || m.by != "" {
		return 0
	}
	return z.reference - z.ReferenceMM
}

// readMill puts the tool where the readings say.
func (w *walk) readMill(at *place, readings []plan.Reading) bool {
	p := w.poseOf()
	for _, rd := range readings {
		if rd.Dial == plan.HeadDial && w.divided() {
			continue // it turns the work: see turnHead
		}
		z, ok := w.zeros[rd.Dial]
		if !ok {
			w.failOp("zero", "the %s dial is read but was never set to nought with this tool", rd.Dial)
			return false
		}
		axis := axisOf(rd.Dial)
		if axis < 0 {
			w.failOp("readings", "%q is no dial of a mill: expected x, y, quill or z", rd.Dial)
			return false
		}
		at[axis] = z.reference + p.goes(axis)*float64(rd.Graduations)*z.graduation
	}
	return true
}

// stands puts the spindle over the table: by its dials, or where the cut says.
func (w *walk) stands(m *pass, cut plan.Cut) bool {
	if cut.At == nil {
		m.within, m.less = w.setup.LocateMM, w.apartFound()
		w.checkLocated(m)
		return true
	}
	if _, x := m.counts[dialX]; x {
		w.failOp("readings", "cut %q: the x dial is read, and yet its place is taken from the work", cut.Name)
		return false
	}
	if _, y := m.counts[dialY]; y {
		w.failOp("readings", "cut %q: the y dial is read, and yet its place is taken from the work", cut.Name)
		return false
	}
	at := *cut.At
	m.from[0], m.from[1], m.to[0], m.to[1] = at.XMM, at.YMM, at.XMM, at.YMM
	m.within, m.by = at.WithinMM, at.By
	return w.checkAt(at)
}

// Where a spindle can be set by other things than dials.
const (
	byPunch  = "punch mark"
	byScribe = "scribed line"
	byHole   = "hole"
	byMate   = "mate"
)

// checkAt holds that a place taken from the work claims no more than its means give. What a hole or a mate gives is held where that is known.
func (w *walk) checkAt(at plan.Place) bool {
	switch at.By {
	case byPunch, byScribe:
		if need := w.markError(); at.WithinMM < need-figure {
			w.failOp("located", "a %s is said to lie within %s of its place; marking out is good to %s", at.By, mm(at.WithinMM), mm(need))
		}
	case byHole, byMate:
	default:
		w.failOp("located", "its place is taken from a %q: expected %s, %s, %s or %s", at.By, byPunch, byScribe, byHole, byMate)
		return false
	}
	if at.WithinMM < 0 || math.IsNaN(at.WithinMM) {
		w.failOp("located", "its place is said to be good within %s", mm(at.WithinMM))
		return false
	}
	return true
}

// markError is how far a line or a punch mark may lie from its place.
func (w *walk) markError() float64 {
	usual := float64(tables.PlaceError(tables.ByPunch))
	return w.ownError(partspec.Scriber, tables.ByPunch, usual)
}

// shared is what of a pass's error all that is made in its setting has alike: nothing where each place is taken from the work.
func (m pass) shared() float64 {
	if m.by != "" {
		return 0
	}
	return m.within - m.turning
}

// apartFound is how much less far the work lies off along either axis than the setup says it does radially: of two edges, each found by itself, each has its
// share in that.
func (w *walk) apartFound() float64 {
	x, y := w.zeros[dialX], w.zeros[dialY]
	both := math.Hypot(x.off, y.off)
	if x.clocked || y.clocked || both == 0 {
		return 0
	}
	return w.setup.LocateMM * (1 - math.Max(x.off, y.off)/both)
}

// checkLocated holds the setting's error against what its noughts were found with.
func (w *walk) checkLocated(m *pass) {
	need := math.Hypot(w.zeros[dialX].off, w.zeros[dialY].off) + w.slidePlay() + w.headRunOut() + w.leanPlay()
	if w.setup.LocateMM < need-figure {
		w.failOp("located", "the work is said to lie within %s of where the dials have it; its noughts are found within %s", mm(w.setup.LocateMM), mm(need))
	}
}

// spans finds how much the tool takes on each side of its axis.
func (w *walk) spans(m *pass, op plan.Operation, cut plan.Cut) bool {
	d := m.size
	switch m.Kind {
	case partspec.BoringHead, partspec.FlyCutter:
		d = op.Tool.SizeMM
		if cut.ToolSizeMM > 0 {
			d = cut.ToolSizeMM
		}
		if q := cut.ToMeasure; q != nil && q.What == "diameter" {
			d = w.world.value(m.key, *q)
		}
		if d < float64(m.LeastSwing)-same || m.MostSwing > 0 && d > float64(m.MostSwing)+same {
			w.failOp("tool", "cut %q swings Ø%s; %s swings %s to %s", m.name, mm(d), m.Name, mm(float64(m.LeastSwing)), mm(float64(m.MostSwing)))
			return false
		}
	}
	if d <= 0 && m.Kind != partspec.Taps {
		w.failOp("tool", "cut %q: a %s takes no metal away on this machine", m.name, m.Kind)
		return false
	}
	m.radius = d / 2
	return true
}

// endAtMeasure puts the end of the movement where this world has it, when it is measured.
func (w *walk) endAtMeasure(m *pass, cut plan.Cut) bool {
	q := cut.ToMeasure
	if q == nil {
		return true
	}
	m.measured = math.Abs(q.HighMM - q.LowMM)
	v := w.world.value(m.key, *q)
	switch {
	case q.What == "diameter" && (m.Kind == partspec.BoringHead || m.Kind == partspec.FlyCutter):
		return true
	case q.What == "position" && math.IsNaN(m.to[2]): // fed by hand to a stop or a mark, from the clear
		m.from[2], m.to[2] = m.pose.up()*solid.Far, v
		return true
	case q.What == "position" && m.to[2] == m.from[2]:
		m.from[2], m.to[2] = v, v
		return true
	case q.What == "position":
		m.to[2] = v
		return true
	}
	w.failOp("measure", "cut %q is measured as %q: expected a position along the spindle, or the diameter of a boring head or fly-cutter", cut.Name, q.What)
	return false
}
