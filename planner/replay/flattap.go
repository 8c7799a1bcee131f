package replay

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// tapByHand taps holes at the bench: each cut stands in a hole, and ends where it is measured.
func (f *flatWalk) tapByHand(i, k int, op plan.Operation) {
	for c, cut := range op.Cuts {
		tool, err := f.cutterFor(op, cut)
		if err != nil || cut.At == nil {
			f.failOp("tool", "cut %q needs a tap of the workshop, and a hole to stand in", cut.Name)
			return
		}
		f.motion++
		m := pass{cutter: tool, key: cutKey{i, k, c}, name: cut.Name, pose: f.poseOf()}
		if q := cut.ToMeasure; q != nil {
			f.endAtMeasure(&m, cut)
		}
		m.to[0], m.to[1] = cut.At.XMM, cut.At.YMM
		f.checkPlaced(cut, m)
		f.passes = append(f.passes, m)
		f.tap(op, m)
	}
}

// tap holds that a tap finds a drilled hole of the drawing, is that of its thread, and goes deep enough; then the hole counts as tapped.
func (f *flatWalk) tap(op plan.Operation, m pass) {
	f.removing[m.key] = true // a thread is a mark in this model
	if m.Kind != partspec.Taps {
		f.failOp("tool", "a thread is tapped with a tap, not with a %s", m.Kind)
		return
	}
	if _, ok := f.holeAt(m.to[0], m.to[1]); !ok {
		f.failOp("start", "cut %q taps where there is no hole, at %s, %s", m.name, mm(m.to[0]), mm(m.to[1]))
		return
	}
	back, front, _ := f.work.faces()
	if f.onSpindle() {
		f.checkBelow(m.name, m.to[2], m.radius, m.Kind, func(by float64) plane.Set { return plane.Round(m.to[0], m.to[1], m.radius+by) })
	}
	for _, c := range f.drawn.columns {
		x, y := c.place()
		if math.Hypot(x-m.to[0], y-m.to[1]) > c.widest()/2 {
			continue
		}
		for _, t := range c.tapped {
			f.tapInto(op, c, t, m, back, front)
		}
		if len(c.tapped) == 0 {
			f.failOp("tool", "%s has no thread", c.name)
		}
		return
	}
	f.failOp("tool", "no hole is drawn where cut %q taps", m.name)
}

func (f *flatWalk) tapInto(op plan.Operation, c column, t tapping, m pass, back, front float64) {
	if !slices.Contains(m.Threads, t.thread.Thread.Designation) {
		f.failOp("tool", "%s is %s; these taps do not cut it", c.name, t.thread.Thread.Designation)
		return
	}
	f.checkSizeOfTaps(op, float64(t.thread.Thread.Major))
	deep := front - m.to[2]
	if m.pose.up() < 0 {
		deep = m.to[2] - back
	}
	need := t.deep
	switch up := m.pose.up() > 0; {
	case t.through:
		need = front - back + tapLeadPitches*float64(t.thread.Thread.Pitch) // the tap's lead cuts no full thread
	case up != (t.from == partspec.Right):
		f.failOp("depth", "%s is tapped from the wrong face", c.name)
		return
	case t.floor > 0 && deep > t.floor+figure:
		f.failOp("depth", "%s is drilled %s deep; the tap would go %s", c.name, mm(t.floor), mm(deep))
	}
	if deep < need-figure {
		f.failOp("depth", "%s is tapped %s deep; %s gives it its full thread", c.name, mm(deep), mm(need))
		return
	}
	f.threaded(c, t)
}

// threaded notes that a drawn thread has been cut.
func (f *flatWalk) threaded(c column, t tapping) {
	if f.tapped[t.hole] {
		f.failOp("order", "%s is threaded twice", c.name)
	}
	f.tapped[t.hole] = true
}

// threadTurned holds that a thread is cut from the lead screw in the bore that runs true, from its own face, in a blank of its size, with a tool that goes in and cuts
// it; then it counts as cut.
func (f *flatWalk) threadTurned(op plan.Operation) {
	th, ok := f.part.Feature(op.Feature).(*partspec.Thread)
	if !ok {
		f.failOp("thread", "%q is no thread of the part", op.Feature)
		return
	}
	for _, c := range f.drawn.columns {
		for _, t := range c.tapped {
			if t.hole.feature != th.Name {
				continue
			}
			if x, y := c.place(); math.Hypot(x-f.setup.CentreX, y-f.setup.CentreY) > centreNear {
				f.failOp("thread", "%s does not run true about the spindle's axis", c.name)
				return
			}
			f.checkThreadTool(op, th)
			f.checkThreadReach(op, t)
			f.checkBlank(th.On, th.Span, true, 0)
			f.checkRunOut(op.Process, th)
			f.threaded(c, t)
			return
		}
	}
	f.failOp("thread", "%s is not drawn in a bore", th.Name)
}

// checkThreadReach holds that a threading tool comes from the face that the thread begins at, enters the core, and reaches its end.
func (f *flatWalk) checkThreadReach(op plan.Operation, t tapping) {
	if facing := f.free() > 0; facing != (t.from == partspec.Right) {
		f.failOp("reach", "%s begins at the face that is turned to the headstock", t.thread.Name)
	}
	c, err := findCutter(f.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil {
		return // told by checkThreadTool
	}
	if core := float64(t.thread.Thread.MinorInt); float64(c.LeastBore) > core+same {
		f.failOp("reach", "%s needs a hole of Ø%s to enter; the core is Ø%s", c.Name, mm(float64(c.LeastBore)), mm(core))
	}
	if reach := float64(c.Reach); reach > 0 && t.deep > reach+same {
		f.failOp("reach", "the thread ends %s deep; %s reaches %s", mm(t.deep), c.Name, mm(reach))
	}
}
