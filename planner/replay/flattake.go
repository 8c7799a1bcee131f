package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/solid"
	"catchplate/planner/tables"
)

// mostFileSure and mostSawSure are what hand work is trusted with at best, either way: a file to a gauge or a micrometer 0.02 to 0.05 (table of
// accuracies, from memory), a saw to a line 0.5 (rule A-40: 0.5 to 2 is left to clean up).
const (
	mostFileSure = 0.02
	mostSawSure  = 0.5
)

// take adds what a movement takes, and notes whether it finds metal.
func (f *flatWalk) take(t taken) {
	if f.work.meets(t) {
		f.removing[t.key] = true
	}
	f.work.taken = append(f.work.taken, t)
	if !t.centre {
		f.work.ends = nil
	}
}

// byHand takes what saw or file leave on edges.
func (f *flatWalk) byHand(i, k int, op plan.Operation) {
	f.motion++
	key := cutKey{i, k, 0}
	if len(op.Edges) == 0 {
		f.failOp("cuts", "it does not say what it leaves on any edge")
		return
	}
	sure := mostFileSure
	if op.Process == plan.Saw {
		sure = mostSawSure
	}
	t := trimmed{outline: f.drawn.outline, moved: make([]float64, len(f.drawn.outline.Edges)), sure: make([]float64, len(f.drawn.outline.Edges))}
	named := map[int]bool{}
	for e := range t.moved {
		t.moved[e] = f.reach()
	}
	for _, l := range op.Edges {
		e := f.edgeNamed(l.Edge)
		switch {
		case e < 0:
			f.failOp("edges", "%q is no edge of the outline", l.Edge)
			return
		case !(l.WithinMM >= sure) || math.IsInf(l.WithinMM, 0) || !(math.Abs(l.LeftMM) <= f.reach()):
			f.failOp("edges", "%s is to be left %s on within %s; by hand at best within %s", l.Edge, mm(l.LeftMM), mm(l.WithinMM), mm(sure))
			return
		}
		t.moved[e], t.sure[e], named[e] = l.LeftMM, l.WithinMM, true
		if f.drawn.datum[e] && l.LeftMM == 0 {
			t.sure[e] = 0 // it is where coordinates begin
		}
	}
	if op.Process == plan.FileEdge {
		f.checkFiled(op, t, named)
	}
	for _, one := range f.byHandTakes(t, named, op.Process, key) {
		f.take(one)
	}
	if !f.removing[key] {
		f.failOp("removes metal", "there is nothing beyond these edges to take away")
	}
}

// byHandTakes is what saw or file take outside an outline: beyond all edges at once, or each by itself where what they leave does not meet. A file goes right along
// the sides that it is put to.
func (f *flatWalk) byHandTakes(t trimmed, named map[int]bool, by plan.Process, key cutKey) []taken {
	all := []taken{{swath: t, z0: -solid.Far, z1: solid.Far, off: 1, key: key}}
	if _, err := t.outline.Moved(t.moved); err != nil {
		all = f.strips(t, named, key)
	}
	if by == plan.FileEdge {
		all = append(all, f.besideSides(t, named, key)...)
	}
	return all
}

// mostFiled is the most that is filed away square to an edge, mm: what a saw leaves, or the tip of a small corner's round. Common practice, no source.
const mostFiled = 5.0

// checkFiled holds that a file is not asked to take what a saw takes.
func (f *flatWalk) checkFiled(op plan.Operation, t trimmed, named map[int]bool) {
	more := t
	more.moved = append([]float64(nil), t.moved...)
	for _, l := range op.Edges {
		if e := f.edgeNamed(l.Edge); e >= 0 {
			more.moved[e] += mostFiled
		}
	}
	back, front, ok := f.work.faces()
	if !ok {
		return
	}
	var beyond []plane.Set
	for _, one := range f.byHandTakes(more, named, op.Process, cutKey{}) {
		beyond = append(beyond, one.at(0, 0))
	}
	for _, b := range beyond {
		if plane.Meet(append(f.workAt((back+front)/2), b)...) {
			f.failOp("depth of cut", "more than %s would be filed away: saw it first", mm(mostFiled))
			return
		}
	}
}

// workAt is the work at a height, without its holes, as sets that it lies in.
func (f *flatWalk) workAt(z float64) []plane.Set {
	sets := []plane.Set{f.work.stock}
	for _, t := range f.work.taken {
		if !t.centre && t.z0 < z && z < t.z1 {
			sets = append(sets, plane.Around(t.at(z, 0)))
		}
	}
	return sets
}

// reach is farther than any metal stands out of the outline.
func (f *flatWalk) reach() float64 {
	x0, y0, x1, y1 := f.drawn.outline.Bounds()
	return x1 - x0 + y1 - y0
}

// edgeNamed finds an edge of the outline; -1 when there is none.
func (f *flatWalk) edgeNamed(name string) int {
	for i, e := range f.part.Outline.Edges {
		if e.Name == name {
			return i
		}
	}
	return -1
}

// takeTurned takes what a lathe's tool does, about the place that runs on the spindle's axis.
func (f *flatWalk) takeTurned(op plan.Operation, m motion) taken {
	t := taken{key: m.key, centre: m.inside, off: f.setup.LocateMM + f.base, shared: f.setup.LocateMM + f.base}
	g := turned{x: f.setup.CentreX, y: f.setup.CentreY, curve: m.outer, outside: true}
	if m.inside {
		g.curve, g.outside = m.inner, false
	}
	var ok bool
	if t.z0, t.z1, ok = g.curve.Domain(); !ok {
		t.swath = g
		return t
	}
	if m.wander() > 0 {
		t.off += turnedWander()
	}
	if !m.inside {
		t.off += f.counted(m)
	}
	t.mark, t.mouth = m.Kind == partspec.CentreDrill, op.Process == plan.Chamfer
	t.swath = g
	t.follow(f, m.Kind)
	f.take(t)
	return t
}

// counted is how far a cut outside may lie off because of what its dial was set on: a rim that hand work left so surely. Once it is measured, a diameter is counted
// from that.
func (f *flatWalk) counted(m motion) float64 {
	if m.measured > 0 {
		f.rough = m.measured / 4 // half of the range, of which half on radius
		return 0
	}
	return f.rough
}

// handLeft is how far the rim may lie off where saw or file left it.
func (f *flatWalk) handLeft(rim []plane.Edge) float64 {
	off := 0.0
	for _, e := range rim {
		x, y := e.At(0.5)
		for _, t := range f.work.taken {
			if _, byLathe := t.swath.(turned); byLathe || t.centre {
				continue
			}
			for _, r := range t.at((f.work.back+f.work.front)/2, 0).Rim() {
				if _, _, far := r.Nearest(x, y); far <= figure {
					off = math.Max(off, f.byHandWithin(t, e))
				}
			}
		}
	}
	return off
}

// byHandWithin is what saw or file are sure of at an edge; 0 for what a machine took.
func (f *flatWalk) byHandWithin(t taken, e plane.Edge) float64 {
	switch t.swath.(type) {
	case trimmed, strip, alongside:
		return f.sureOf(t, e)
	}
	return 0
}

// turnedWander is how far a drill in the lathe lands off the axis of work that turns, once it is centred: the better end of what spotted drills do.
func turnedWander() float64 {
	row, _ := tables.FindProcess(string(tables.ByDrill))
	return float64(row.RunOut.Low)
}

// takePass takes what a tool on the mill or the drilling machine does.
func (f *flatWalk) takePass(op plan.Operation, m pass) {
	if m.pose.across {
		f.failOp("pose", "flat work stands upright under the spindle")
		return
	}
	long, moves := m.slot()
	if moves && math.Abs(m.from[2]-m.to[2]) > same {
		f.failOp("cuts", "cut %q goes down and across at once", m.name)
		return
	}
	t := m.sweeps()
	if !moves {
		t.off += m.wander()
		t.mark, t.mouth = m.Kind == partspec.CentreDrill, m.Kind == partspec.Countersink
		t.follow(f, m.Kind)
		t.loosen(f, m)
	} else {
		t.swath = f.alongDatum(t.swath.(swept))
	}
	f.checkPass(op, m, t, long)
	f.take(t)
	f.checkPassClear(m, t)
	f.checkShownPass(op, m, f.airBeyond(m, t, long))
	f.addPush(op, m, t)
}

// sweeps is what a pass takes.
func (m pass) sweeps() taken {
	_, moves := m.slot()
	t := taken{swath: swept{path: plane.Capsule{X0: m.from[0], Y0: m.from[1], X1: m.to[0], Y1: m.to[1], Radius: m.radius}, tip: m.to[2], cone: m.coneLong() * m.pose.up(), ball: m.ball()},
		key: m.key, centre: !moves, off: m.within, less: m.less, shared: m.shared()}
	t.z0, t.z1 = m.to[2], solid.Far
	if m.pose.up() < 0 {
		t.z0, t.z1 = -solid.Far, m.to[2]
	}
	return t
}

// airBeyond reports whether the tool could go on for a millimetre at the end of its way without cutting more.
func (f *flatWalk) airBeyond(m pass, t taken, long float64) bool {
	g := t.swath.(swept)
	if long > same {
		g.path.X1, g.path.Y1 = m.to[0]+(m.to[0]-m.from[0])/long, m.to[1]+(m.to[1]-m.from[1])/long
		g.path.X0, g.path.Y0, g.datum = m.to[0], m.to[1], nil
	} else {
		g.tip -= m.pose.up()
		if m.pose.up() > 0 {
			t.z0--
		} else {
			t.z1++
		}
	}
	t.swath = g
	return !f.work.meets(t)
}

// follow puts a tool that follows the hole that is there where that hole is (reamers, counterbores, countersinks, drills that open a hole).
func (t *taken) follow(f *flatWalk, kind partspec.ToolKind) {
	switch kind {
	case partspec.Reamers, partspec.Counterbores, partspec.Countersink, partspec.Drills, partspec.HoleSaw:
	default:
		return
	}
	x, y, _ := t.centred((t.z0 + t.z1) / 2)
	h, ok := f.holeAt(x, y)
	if !ok {
		return
	}
	hx, hy, _ := h.centred((h.z0 + h.z1) / 2)
	t.off, t.less, t.shared, t.led = h.off, h.less, h.shared, h.led
	if t.led == nil {
		t.led = &h.key
	}
	switch g := t.swath.(type) {
	case swept:
		g.path.X0, g.path.Y0, g.path.X1, g.path.Y1 = hx, hy, hx, hy
		t.swath = g
	case turned:
		g.x, g.y = hx, hy
		t.swath = g
	}
}

// leadRadius is the least radius of a hole that leads a drill; a centre drill's mark does not.
const leadRadius = 0.5

// holeAt is the last hole that was made at a place, from face to face or blind; a centre drill's mark is none.
func (f *flatWalk) holeAt(x, y float64) (taken, bool) {
	for i := len(f.work.taken) - 1; i >= 0; i-- {
		t := f.work.taken[i]
		if !t.centre || t.mark || t.mouth {
			continue
		}
		if hx, hy, r := t.centred((math.Max(t.z0, f.work.back) + math.Min(t.z1, f.work.front)) / 2); r >= leadRadius && math.Hypot(hx-x, hy-y) <= math.Max(r/2, centreNear) {
			return t, true
		}
	}
	return taken{}, false
}

// alongDatum notes where a path just brings a datum edge to its place, or to within a graduation of it: that is then where coordinates begin, and what it lies off
// the dials' own place counts against all else that is cut by them in the same setting.
func (f *flatWalk) alongDatum(g swept) swept {
	for i, e := range f.drawn.outline.Edges {
		if !f.drawn.datum[i] || e.IsArc() {
			continue
		}
		ox, oy := e.Outward(0)
		beside := func(x, y float64) float64 { return (x-e.X0)*ox + (y-e.Y0)*oy - g.path.Radius }
		d := beside(g.path.X0, g.path.Y0)
		if math.Abs(d) > f.graduation(ox, oy)+figure || math.Abs(d-beside(g.path.X1, g.path.Y1)) > same {
			continue
		}
		g.path.X0, g.path.Y0, g.path.X1, g.path.Y1 = g.path.X0-d*ox, g.path.Y0-d*oy, g.path.X1-d*ox, g.path.Y1-d*oy
		g.datum, g.beside = &[2]float64{ox, oy}, math.Abs(d)
		return g
	}
	return g
}

// graduation is that of the table's dial which sets an edge with this normal.
func (f *flatWalk) graduation(ox, oy float64) float64 {
	name := dialX
	if math.Abs(oy) > math.Abs(ox) {
		name = dialY
	}
	d, _ := f.machine.Dial(name)
	return graduationOf(d)
}
