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
	need := t.length
	if r := c.rounds[0]; r.through {
		need = front - back
	} else if floor := float64(r.depth.High); deep > floor+figure {
		f.failOp("depth", "%s is drilled %s deep; the tap would go %s", c.name, mm(floor), mm(deep))
	}
	if deep < need-figure {
		f.failOp("depth", "%s is tapped %s deep; %s is drawn", c.name, mm(deep), mm(need))
		return
	}
	if f.tapped[t.hole] {
		f.failOp("order", "%s is tapped twice", c.name)
	}
	f.tapped[t.hole] = true
}
