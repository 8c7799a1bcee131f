package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// A seat across the side of round work is proved in the plane through the part's axis that its pipe's axis is square to: there the round stands highest, so that what is
// clear of the curve there is clear of it along all of the pipe.

// seatOf is a seat of turned work as seen along its pipe; ok is false for any other feature.
func (w *walk) seatOf(f partspec.Feature) (v seatView, ok bool) {
	switch f := f.(type) {
	case *partspec.Seat:
		return w.viewOf(f), true
	case *partspec.SideSeat:
		return w.sideView(f), true
	}
	return seatView{}, false
}

// sideView is the seat laid on the round that the work really has. Across its pipe, places are counted from where its axis is drawn.
func (w *walk) sideView(f *partspec.SideSeat) seatView {
	r := float64(f.Radius.Mid())
	deep := math.Min(r, float64(f.Sunk.Mid()))
	v := seatView{Seat: &f.Seat, side: f, body: w.body, axisQ: deep - r, half: math.Sqrt(deep * (2*r - deep)), set: w.seatSet[f.Name]}
	z := float64(f.Z.Value)
	v.face = w.body.Outer.Greatest(z-v.half, z+v.half)
	z0, z1 := w.body.Ends()
	v.s0, v.s1, v.long = z0-z, z1-z, 2*v.face
	floor := math.Max(0, v.face-deep)
	v.t1 = math.Sqrt(math.Max(0, v.face*v.face-floor*floor))
	v.t0 = -v.t1
	return v
}

// lengthwise is the work cut open along its axis, each piece of its outside as wide as it is anywhere.
func (v seatView) lengthwise() plane.Set {
	var top, bottom []plane.Edge
	z := float64(v.side.Z.Value)
	for _, p := range v.body.Outer.Pieces() {
		if p.Z1-p.Z0 <= plane.Thin {
			continue
		}
		r := v.body.Outer.Greatest(p.Z0, p.Z1)
		top = append(top, plane.Edge{X0: p.Z0 - z, Y0: v.face - r, X1: p.Z1 - z, Y1: v.face - r})
		bottom = append(bottom, plane.Edge{X0: p.Z1 - z, Y0: v.face + r, X1: p.Z0 - z, Y1: v.face + r})
	}
	for i, k := 0, len(bottom)-1; i < k; i, k = i+1, k-1 {
		bottom[i], bottom[k] = bottom[k], bottom[i]
	}
	return plane.Region{Edges: joined(append(top, bottom...))}.Figure()
}

// joined puts upright lines between edges that do not meet.
func joined(edges []plane.Edge) []plane.Edge {
	var rim []plane.Edge
	for i, e := range edges {
		rim = append(rim, e)
		if next := edges[(i+1)%len(edges)]; math.Abs(next.Y0-e.Y1) > plane.Thin {
			rim = append(rim, plane.Edge{X0: e.X1, Y0: e.Y1, X1: next.X0, Y1: next.Y0})
		}
	}
	return rim
}

// checkSidePass holds at once what must be true of a pass.
func (w *walk) checkSidePass(op plan.Operation, f *partspec.SideSeat, a aside) {
	w.settleSide(f)
	v := w.sideView(f)
	z := float64(f.Z.Value)
	if low := w.body.Outer.Least(z-v.half+same, z+v.half-same); v.face-low > same {
		w.failOp("order", "%s is cut across a round that is no cylinder yet: Ø%s to Ø%s (rule A-22)", f.ID(), mm(2*low), mm(2*v.face))
	}
	w.checkSeatPass(v, a)
	if deep, wide := w.engagedInSeat(v, v.sees(a)); wide > same && deep > op.DepthMM+w.slackPlace+w.slackRadius+figure {
		w.failOp("depth of cut", "cut %q is %s deep, the operation says at most %s", a.name, mm(deep), mm(op.DepthMM))
	}
}

// settleSide keeps where the dials have the pipe's axis: on the graduation nearest to its drawn place, as none stands between two.
func (w *walk) settleSide(f *partspec.SideSeat) {
	if _, known := w.seatSet[f.Name]; known {
		return
	}
	n, goes := w.zeros[dialX], w.poseOf().goes(0)
	if n.graduation <= 0 {
		return // its readings have been refused
	}
	marks := math.Round((float64(f.Z.Mid()) - n.ReferenceMM) * goes / n.graduation)
	w.seatSet[f.Name] = n.reference + goes*marks*n.graduation - float64(f.Z.Value)
}

// checkSidePlace holds that the pipe's axis is cut within the limits of its place, counted from the face that it is measured from, where the work has that.
func (w *walk) checkSidePlace(at where, v seatView, s, off float64) {
	from := w.drawing(lengthsOf(w.part)).outer.at(float64(v.side.ZFrom))
	z := float64(v.side.Z.Value)
	low, high := float64(v.side.Z.Low)-z+from.hi-from.drawn, float64(v.side.Z.High)-z+from.lo-from.drawn
	if s-off < low-figure || s+off > high+figure {
		w.fail(at, "place", "the axis of the pipe in %s may lie %s to %s beside its place along the part; drawn within %s and %s", v.ID(), mm(s-off), mm(s+off), mm(low), mm(high))
	}
	if math.Abs(float64(v.Depth)-float64(v.side.Sunk.Value)) > figure || math.Abs(float64(v.AxisZ)-z) > figure {
		w.fail(at, "finished part", "%s lies %s deep at %s, and its drawn sizes put it at %s, %s deep", v.ID(), mm(float64(v.Depth)), mm(float64(v.AxisZ)), mm(z), mm(float64(v.side.Sunk.Value)))
	}
}

// checkHollowEntry holds that no tool enters across the axis where a seat across the side has taken the round away: it would meet a slope, and its depth is counted from the
// round.
func (w *walk) checkHollowEntry(a aside) {
	for _, f := range w.part.Features {
		side, ok := f.(*partspec.SideSeat)
		if !ok || !a.pose.across || turnBetween(a.pose.deg, float64(side.Angle)) > squareTurn || len(w.passesOf(side.Name, 0)) == 0 {
			continue
		}
		if in := side.Hollowed(); a.to[0]+a.radius > float64(in.Left) && a.to[0]-a.radius < float64(in.Right) {
			w.failOp("entry", "cut %q enters where %s has hollowed the round (rule A-38)", a.name, side.ID())
		}
	}
}

// squareTurn is the angle between two directions beyond which one looks at the other side of the round, in degrees.
const squareTurn = 90.0
