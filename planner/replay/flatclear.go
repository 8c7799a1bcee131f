package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

const (
	// spareBelow is how clear the air below a tool's end must be. Common practice, no source.
	spareBelow = 0.5
	// spindleClear is how much narrower than the spindle's bore a tool must be to come out into it through a faceplate or chuck. Common practice, no source.
	spindleClear = 1.0
	// stripClear is how far parallels stand from a hole that comes through (rule B-35).
	stripClear = 2.0
)

// checkPass holds what must be true of one movement: it begins in the clear and is no deeper than it says.
func (f *flatWalk) checkPass(op plan.Operation, m pass, t taken, long float64) {
	start := t
	g := t.swath.(swept)
	if long > same { // it moves across: the tool must stand in the air, or in what it has cut before
		g.path.X1, g.path.Y1 = g.path.X0, g.path.Y0
		g.datum = nil
		g.path.Radius -= same
		start.swath = g
		if !f.entered(m) && f.work.meets(start) {
			f.failOp("way in", "cut %q begins in metal, at %s, %s", m.name, mm(m.from[0]), mm(m.from[1]))
		}
	} else if f.inWork(m.from[2]*m.pose.up(), m) && !f.entered(m) {
		g.tip = m.from[2]
		start.swath, start.z0, start.z1 = g, m.from[2]+same, t.z1
		if m.pose.up() < 0 {
			start.z0, start.z1 = t.z0, m.from[2]-same
		}
		if f.work.meets(start) {
			f.failOp("way in", "cut %q begins in metal, %s along the spindle", m.name, mm(m.from[2]))
		}
	}
	f.checkDrilled(op, m)
}

// inWork reports whether a height, seen towards the spindle, lies below the face that looks at it.
func (f *flatWalk) inWork(up float64, m pass) bool {
	back, front, ok := f.work.faces()
	if !ok {
		return false
	}
	return up < math.Max(front*m.pose.up(), back*m.pose.up())-same
}

// entered reports whether a movement begins where the one before it in the operation ended.
func (f *flatWalk) entered(m pass) bool {
	if len(f.passes) < 2 {
		return false
	}
	before := f.passes[len(f.passes)-2]
	return before.key.op == m.key.op && math.Abs(before.to[0]-m.from[0]) <= same && math.Abs(before.to[1]-m.from[1]) <= same && math.Abs(before.to[2]-m.from[2]) <= same && before.radius >= m.radius-same
}

// checkDrilled holds that drills find a start, reamers and counterbores a hole, and no drill opens a hole too far at once.
func (f *flatWalk) checkDrilled(op plan.Operation, m pass) {
	x, y := m.to[0], m.to[1]
	h, ok := f.holeAt(x, y)
	across := 0.0
	if ok {
		_, _, r := h.centred((math.Max(h.z0, f.work.back) + math.Min(h.z1, f.work.front)) / 2)
		across = 2 * r
	}
	switch m.Kind {
	case partspec.Drills:
		if !ok && !f.markedAt(x, y) && m.by != byPunch && m.by != byMate {
			f.failOp("start", "cut %q starts a drill on bare metal: spot it first (rule A-02)", m.name)
		}
		if m.size > mostFromSolid && (!ok || m.size-across > mostDrillStep+same) {
			f.failOp("depth of cut", "a drill of Ø%s finds a hole of Ø%s: from solid at most Ø%s is drilled, and a hole is opened by at most %s at once (rule A-25)",
				mm(m.size), mm(across), mm(mostFromSolid), mm(mostDrillStep))
		}
	case partspec.Reamers:
		if !ok || m.size-across > mostForReamer+same {
			f.failOp("depth of cut", "the reamer finds a hole of Ø%s; it takes at most %s off the diameter (rule A-27)", mm(across), mm(mostForReamer))
		}
	case partspec.HoleSaw:
		f.checkHoleSaw(m)
	case partspec.Counterbores, partspec.BoringHead:
		if !ok {
			f.failOp("start", "cut %q needs a hole that is there", m.name)
		}
	}
	if m.Kind == partspec.BoringHead && m.radius-across/2 > op.DepthMM+m.measured/2+f.slackRadius+figure {
		f.failOp("depth of cut", "cut %q is %s deep, the operation says at most %s", m.name, mm(m.radius-across/2), mm(op.DepthMM))
	}
}

// markedAt reports whether a centre drill has made a start there.
func (f *flatWalk) markedAt(x, y float64) bool {
	for _, t := range f.work.taken {
		if tx, ty, _ := t.centred(t.z0); t.mark && math.Hypot(tx-x, ty-y) <= figure {
			return true
		}
	}
	return false
}

// checkPassClear holds that the tool, on its way, keeps clear of what holds and carries the work.
func (f *flatWalk) checkPassClear(m pass, t taken) {
	path := t.swath.(swept).path
	spare := (m.measured + f.slackPlace) / 2 // what is measured may end a little otherwise than the plan reckons
	way := func(by float64) plane.Set { return path.Grown(by - spare) }
	beside := func(top, by float64) plane.Set { return path.Grown(m.besideJaws(top, by) - m.radius - spare) }
	f.checkHoldersClear(m.name, m.to[2]+2*spare*m.pose.up(), way, beside)
	f.checkBelow(m.name, m.to[2]-m.ahead()*m.pose.up(), m.radius, m.Kind, func(by float64) plane.Set {
		back, front, _ := f.work.faces()
		under := math.Min(back*m.pose.up(), front*m.pose.up())
		return path.Grown(m.radiusAt(under) - m.radius + by - spare)
	})
}

// checkTurnedClear is the same for a tool in the lathe.
func (f *flatWalk) checkTurnedClear(m motion, t taken) {
	g := t.swath.(turned)
	reach := func(by float64) plane.Set {
		if g.outside {
			return plane.Around(plane.Round(g.x, g.y, math.Max(0, math.Min(m.from.R, m.to.R)-by)))
		}
		return plane.Round(g.x, g.y, math.Max(math.Max(m.from.R, m.to.R), m.size/2)+by)
	}
	end := m.from.Z
	if f.free()*(m.to.Z-end) < 0 {
		end = m.to.Z
	}
	f.checkHoldersClear(m.name, end, reach, func(_, by float64) plane.Set { return reach(by) })
	if g.outside {
		f.checkBehind(m)
		return
	}
	f.checkBelow(m.name, end, math.Max(math.Abs(m.to.R), m.size/2), m.Kind, reach)
}

// checkBehind holds that a tool on the rim stays clear of what carries the work from behind: a glued arbor; the shoulder of a mandrel is made to clear it.
func (f *flatWalk) checkBehind(m motion) {
	if r := math.Min(m.from.R, m.to.R); f.setup.Grip.Kind == "glued_face" && r < f.setup.Grip.RadiusMM+clearance-figure {
		f.failOp("clearance", "cut %q comes to Ø%s; the arbor behind is Ø%s (rule B-45)", m.name, mm(2*r), mm(2*f.setup.Grip.RadiusMM))
	}
}

// besideJaws is how far from its axis a tool keeps jaws whose top is at a height (seen towards the spindle): its radius and the room, or where its end is a cone
// that is narrower there, what leaves that room square to its flank.
func (m pass) besideJaws(top, room float64) float64 {
	wide, long := m.radius+room, m.coneLong()
	if long <= 0 || m.ball() {
		return wide
	}
	return math.Min(wide, m.radiusAt(top)+room*math.Hypot(m.radius, long)/long)
}

// radiusAt is the tool's radius at a height seen towards the spindle, with its end where the movement ends: less in a cone, 0 below its point.
func (m pass) radiusAt(height float64) float64 {
	long := m.coneLong()
	if long <= 0 || m.ball() {
		return m.radius
	}
	return m.radius * math.Min(1, math.Max(0, height-m.to[2]*m.pose.up())/long)
}

// checkHoldersClear holds a tool's way, with its end at a height, against clamps and, as it is beside them, against jaws.
func (f *flatWalk) checkHoldersClear(name string, end float64, way func(by float64) plane.Set, beside func(top, by float64) plane.Set) {
	for _, c := range f.setup.Clamps {
		if plane.Meet(plane.Round(c.XMM, c.YMM, c.ToeMM/2), way(clearance-figure)) || plane.Meet(f.strap(c), way(clearance-figure)) {
			f.failOp("clearance", "cut %q comes within %s of the clamp at %s, %s (rule B-45)", name, mm(clearance), mm(c.XMM), mm(c.YMM))
			return
		}
	}
	f.checkStrapsClear(name, way)
	lo, hi := f.heights()
	top := hi
	if f.free() < 0 {
		top = -lo
	}
	if end*f.free() >= top+clearance-figure {
		return
	}
	for _, p := range f.setup.Presses {
		if plane.Meet(jawOf(p), beside(top, clearance-figure)) {
			f.failOp("clearance", "cut %q comes within %s of the jaw at %s, %s, with its end at %s (rule B-45)", name, mm(clearance), mm(p.XMM), mm(p.YMM), mm(end))
			return
		}
	}
}

// jawOf is a jaw as it stands beside the work.
func jawOf(p plan.Press) plane.Set {
	sin, cos := math.Sincos(p.AngleDeg * math.Pi / 180)
	at := func(out, along float64) (x, y float64) {
		return p.XMM + out*cos - along*sin, p.YMM + out*sin + along*cos
	}
	var r plane.Region
	corners := [][2]float64{{0, -p.WidthMM / 2}, {jawDeep, -p.WidthMM / 2}, {jawDeep, p.WidthMM / 2}, {0, p.WidthMM / 2}}
	for i := range corners {
		k := (i + 1) % len(corners)
		x0, y0 := at(corners[i][0], corners[i][1])
		x1, y1 := at(corners[k][0], corners[k][1])
		r.Edges = append(r.Edges, plane.Edge{X0: x0, Y0: y0, X1: x1, Y1: y1})
	}
	return r.Figure()
}

// checkBelow holds that a tool which comes out at the held face finds air or a board there (rule B-35), and no parallel.
func (f *flatWalk) checkBelow(name string, end, radius float64, kind partspec.ToolKind, way func(by float64) plane.Set) {
	back, front, ok := f.work.faces()
	if !ok {
		return
	}
	out := back - end
	if f.free() < 0 {
		out = end - front
	}
	if out <= same || f.onLathe() && radius <= float64(f.machine.SpindleBore)/2-spindleClear {
		return // it comes out into the spindle's bore
	}
	b := f.setup.Bed
	drill := kind == partspec.Drills || kind == partspec.HoleSaw || kind == partspec.CentreDrill
	switch {
	case b == nil:
		f.failOp("bed", "cut %q comes %s out below the work, where nothing is said to be clear (rule B-35)", name, mm(out))
	case b.Kind == "backing board" && b.HeightMM < out+spareBelow-figure:
		f.failOp("bed", "cut %q comes %s out below the work, into a board of %s (rule B-35)", name, mm(out), mm(b.HeightMM))
	case b.Kind == "backing board" && drill && b.HeightMM < boardShare*2*radius+boardSpare-figure:
		f.failOp("bed", "cut %q: a board of %s backs a drill of Ø%s; %s is needed (rule B-35)", name, mm(b.HeightMM), mm(2*radius), mm(boardShare*2*radius+boardSpare))
	case b.Kind != "backing board" && b.GapMM < out+spareBelow-figure:
		f.failOp("bed", "cut %q comes %s out below the work; %s is clear there (rule B-35)", name, mm(out), mm(b.GapMM))
	}
	if b == nil || b.Kind == "backing board" {
		return
	}
	for _, s := range b.Under {
		strip := plane.Rectangle(math.Min(s.X0, s.X1), math.Min(s.Y0, s.Y1), math.Max(s.X0, s.X1), math.Max(s.Y0, s.Y1)).Figure()
		if plane.Meet(strip, way(stripClear-figure)) {
			f.failOp("bed", "cut %q comes out within %s of what carries the work at %s, %s (rule B-35)", name, mm(stripClear), mm(s.X0), mm(s.Y0))
			return
		}
	}
}
