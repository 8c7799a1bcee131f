package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// A seat in a face of flat work runs from rim to rim, so that it is proved in the plane across its pipe, like one across an end of turned work. What it takes is
// left out of the figures at each height: nothing is cut on a machine once it is there, and no machine holds the work any more.

// faceView is a seat in a face as seen along its pipe, on the work as it is.
func (f *flatWalk) faceView(seat *partspec.Seat) seatView {
	r, half := float64(seat.Radius.Value), float64(seat.Across)/2
	back, front, _ := f.work.faces()
	v := seatView{Seat: seat, axisQ: -math.Sqrt(math.Max(0, r*r-half*half)), half: half, face: back, long: front - back, within: float64(seat.Middle.Width()) / 2}
	if seat.On == partspec.Right {
		v.face = front
	}
	sin, cos := math.Sincos(float64(seat.Angle) * math.Pi / 180)
	v.drawn = float64(seat.Middle.Value) * (sin - cos) // its place along X as it is, along Y the other way round
	v.set = v.drawn
	if at, known := f.seatSet[seat.Name]; known {
		v.set = at
	}
	x0, y0, x1, y1 := plane.Region{Edges: f.work.outer((back + front) / 2)}.Bounds()
	v.s0, v.s1, v.t0, v.t1 = -y1, -y0, x0, x1
	if acrossX(seat) {
		v.s0, v.s1, v.t0, v.t1 = x0, x1, y0, y1
	}
	return v
}

// acrossX reports whether a seat's pipe lies along Y, so that its axis is set by the dial x.
func acrossX(seat *partspec.Seat) bool { return sameTurn(float64(seat.Angle), 90) }

// settle keeps where the dials have the pipe's axis: on the graduation nearest to its drawn place, as none stands between two.
func (f *flatWalk) settle(seat *partspec.Seat, p pose) {
	if _, known := f.seatSet[seat.Name]; known {
		return
	}
	dial, axis, sign := dialY, 1, -1.0
	if acrossX(seat) {
		dial, axis, sign = dialX, 0, 1
	}
	z := f.zeros[dial]
	marks := math.Round((float64(seat.Middle.Value) - z.reference) * p.goes(axis) / z.graduation)
	f.seatSet[seat.Name] = sign * (z.reference + p.goes(axis)*marks*z.graduation)
}

// takeSeatPass takes what a pass along a seat does, and holds what must be true of it at once.
func (f *flatWalk) takeSeatPass(op plan.Operation, seat *partspec.Seat, m pass) {
	f.settle(seat, m.pose)
	a := aside{pass: m, feature: op.Feature, process: op.Process, at: f.at}
	f.milled = append(f.milled, a)
	v := f.faceView(seat)
	f.checkSeatPass(v, a)
	if _, moves := m.slot(); !moves {
		f.failOp("cuts", "cut %q of a seat does not go along it", m.name)
		return
	}
	t := m.sweeps()
	f.checkPass(op, m, t, math.Hypot(m.to[0]-m.from[0], m.to[1]-m.from[1]))
	f.checkPassClear(m, t)
	f.checkShownPass(op, m, f.airBeyond(m, t, 1))
	f.addSeatPush(op, v, a)
}

// addSeatPush reckons a pass's force from the metal that those before it have left.
func (f *flatWalk) addSeatPush(op plan.Operation, v seatView, a aside) {
	deep, wide := f.engagedInSeat(v, v.sees(a))
	if op.FeedMM <= 0 || deep <= same || wide <= same {
		return
	}
	if deep > op.DepthMM+f.slackPlace+figure {
		f.failOp("depth of cut", "cut %q is %s deep, the operation says at most %s", a.name, mm(deep), mm(op.DepthMM))
	}
	p := flatPush{at: f.at, name: a.name, x: a.from[0], y: a.from[1], x1: a.to[0], y1: a.to[1], radius: a.radius, sideN: f.teethPush(a.pass, deep, wide, op.FeedMM)}
	if op.ForceN < forceShare*p.sideN {
		f.failOp("force", "cut %q pushes with %.0f N, the holding was judged by %.0f", a.name, p.sideN, op.ForceN)
	}
	f.checkMillPower(op, p)
	f.checkRim(op, a.pass)
	f.pushes = append(f.pushes, p)
}

// checkNotHollow holds that no machine takes the work once a seat has hollowed a face: it is not known how that would lie.
func (f *flatWalk) checkNotHollow() {
	if f.onSpindle() && len(f.milled) > 0 {
		f.failOp("grip", "%s has hollowed a face of it: only the bench takes it now (rule A-37f)", f.milled[0].feature)
	}
}

// checkSeatLast holds that nothing is cut on a machine once a seat is begun, but that seat.
func (f *flatWalk) checkSeatLast(op plan.Operation) {
	if f.onSpindle() && len(f.milled) > 0 && op.Feature != f.milled[0].feature {
		f.failOp("order", "it comes after %s, which has hollowed a face (rule A-37f)", f.milled[0].feature)
	}
}

// checkFaceSeats holds every seat when all is done.
func (f *flatWalk) checkFaceSeats() {
	for _, feature := range f.part.Features {
		if seat, ok := feature.(*partspec.Seat); ok {
			f.finishSeat(f.faceView(seat))
		}
	}
}
