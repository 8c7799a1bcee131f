package replay

import (
	"math"
	"slices"
	"strconv"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/tables"
)

// checkSeatPass holds that a pass is one that a seat is cut with: along its pipe's axis, from its end, with the spindle along either axis.
func (w *walk) checkSeatPass(v seatView, a aside) {
	p := v.sees(a)
	switch {
	case !p.ok:
		w.failOp("pose", "cut %q does not go along the axis of the pipe that %s sits on, from its %s end", a.name, v.ID(), v.On)
	case !p.through:
		w.failOp("seat", "cut %q does not run right through the part along the pipe's axis", a.name)
	case p.swung && a.process != plan.BoreHead || !p.swung && a.process != plan.SeatSteps:
		w.failOp("tool", "a %s does not %s", a.Kind, a.process)
	}
	if w.removing[a.key] || w.known.cuts.has(a.key) {
		return
	}
	if w.seatTakes(v, p) {
		w.removing[a.key] = true
		w.known.cuts.add(a.key)
	}
}

// seatTakes reports whether a pass takes metal that those before it have left.
func (w *walk) seatTakes(v seatView, p seatPass) bool {
	if !p.lies { // reckoned as if every cutter before had been square, which takes more than it did: what is found so is there for certain
		if deep, wide := w.engagedInSeat(v, p); deep > same && wide > same {
			return true
		}
	}
	metal := v.metal()
	var before []plane.Set
	for _, old := range w.seatPasses(v) {
		if old.key != p.key && math.Abs(old.s-p.s) < old.radius+p.radius {
			before = append(before, old.takes...)
		}
	}
	for _, t := range p.takes {
		if len(plane.Common([]plane.Set{t, metal}, before)) > 0 {
			return true
		}
	}
	return false
}

// centre is where the pipe's axis is really cut: where the swung pass that goes deepest has it; of steps where it is drawn. off is how far it may lie from there across, and
// deep along the part's axis: a quill that touched the end face knows its depth, a table's dial does not.
func (v seatView) centre(list []seatPass) (s, q, off, deep float64) {
	s, q = v.set, v.axisQ
	deepest := math.Inf(-1)
	for _, p := range list {
		off = math.Max(off, p.within-p.less)
		if p.lies {
			deep = math.Max(deep, p.within)
		}
		if p.swung && p.q > deepest {
			s, q, deepest = p.s, p.q, p.q
		}
	}
	return s, q, off, deep
}

// curve is the radius that at least must be gone and the one that nothing goes beyond: of a swung seat the drawn limits; of a stepped one the middle of them, which is
// where the file is to end.
func (v seatView) curve(list []seatPass) (low, high float64) {
	for _, p := range list {
		if p.swung {
			return float64(v.Radius.Low), float64(v.Radius.High)
		}
	}
	return float64(v.Radius.Mid()), float64(v.Radius.Mid())
}

// segment is what is drawn to be cut away at least, within a radius about the pipe's axis: a circle cut off by the end face.
func segment(s, q, r float64) (plane.Region, bool) {
	if r*r <= q*q {
		return plane.Region{}, false
	}
	h := math.Sqrt(r*r - q*q)
	return plane.Region{Edges: []plane.Edge{
		{X0: s - h, X1: s + h},
		{X0: s + h, X1: s - h, CX: s, CY: q, Radius: r},
	}}, true
}

// checkSeat holds a seat when all is done, or before it is filed: nothing is cut beyond the largest radius, and all within the smallest one less what may be left for the
// file is gone, over its whole width and length; it lies where it is drawn.
func (w *walk) checkSeat(at where, v seatView, leftover float64) bool {
	list := w.seatPasses(v)
	if len(list) == 0 {
		w.fail(at, "finished part", "%s is never cut", v.ID())
		return false
	}
	s, q, off, deep := v.centre(list)
	w.checkSeatPlace(list[len(list)-1].at, v, s, q, off, deep)
	return w.checkSeatDepth(v, list, s, q) && w.checkSeatLeft(at, v, list, s, q, leftover)
}

// checkSeatDepth holds that no pass goes beyond the curve.
func (w *walk) checkSeatDepth(v seatView, list []seatPass, s, q float64) bool {
	metal := v.metal()
	_, high := v.curve(list)
	curve := plane.Round(s, q, high+figure)
	for _, p := range list {
		for _, t := range p.takes {
			if rim := plane.Common([]plane.Set{t, metal}, []plane.Set{curve}); len(rim) > 0 {
				w.fail(p.at, "least metal", "cut %q goes past the curve of %s, by %s mm at %s from the middle", p.name, v.ID(), mm(beyond(rim, s, q, high)), mm(rim[0].X0-s))
				return false
			}
		}
	}
	return true
}

// beyond is how far the corners of a figure lie outside a circle at most.
func beyond(rim []plane.Edge, x, y, r float64) float64 {
	far := 0.0
	for _, e := range rim {
		far = math.Max(far, math.Max(math.Hypot(e.X0-x, e.Y0-y), math.Hypot(e.X1-x, e.Y1-y))-r)
	}
	return far
}

// checkSeatLeft holds that no more than the file takes is left on the curve.
func (w *walk) checkSeatLeft(at where, v seatView, list []seatPass, s, q, leftover float64) bool {
	r, _ := v.curve(list)
	target, ok := segment(s, q, r-leftover-figure)
	if !ok {
		return true
	}
	key := clearedKey(v, list, s, q, r-leftover)
	if w.known.curves.has(key) {
		return true
	}
	wanted := []plane.Set{target.Figure(), v.metal()}
	rim := plane.Common(wanted, takenBy(list, func(p seatPass) bool { return nearCurve(p, s, q, float64(v.Radius.Low), leftover) }))
	if len(rim) > 0 { // roughing may have to be looked at as well
		rim = plane.Common(wanted, takenBy(list, func(seatPass) bool { return true }))
	}
	if len(rim) == 0 {
		w.known.curves.add(key)
		return true
	}
	near := r
	for _, e := range rim {
		near = math.Min(near, math.Min(math.Hypot(e.X0-s, e.Y0-q), math.Hypot(e.X1-s, e.Y1-q)))
	}
	w.fail(at, "most metal", "%s mm of metal is left on the curve of %s, at %s from the middle; %s may be", mm(r-near), v.ID(), mm(rim[0].X0-s), mm(leftover))
	return false
}

// clearedKey names a curve and all that was cut at it.
func clearedKey(v seatView, list []seatPass, s, q, r float64) string {
	key := make([]byte, 0, 32*len(list))
	put := func(f float64) {
		key = strconv.AppendFloat(key, f, 'g', -1, 64)
		key = append(key, ' ')
	}
	for _, f := range []float64{s, q, r} {
		put(f)
	}
	for _, p := range list {
		if p.through {
			put(p.s)
			put(p.q)
			put(p.radius)
			key = append(key, p.Kind...)
		}
	}
	return v.Name + string(key)
}

// takenBy is what the passes chosen take that run right through.
func takenBy(list []seatPass, chosen func(seatPass) bool) []plane.Set {
	var gone []plane.Set
	for _, p := range list {
		if p.through && chosen(p) {
			gone = append(gone, p.takes...)
		}
	}
	return gone
}

// nearCurve reports whether a pass comes near a circle about the pipe's axis: finishing passes do, and they nearly always suffice.
func nearCurve(p seatPass, s, q, r, leftover float64) bool {
	if p.swung {
		return true
	}
	deep := math.Hypot(math.Abs(p.s-s), p.q-q) // of a ball, the lowest point; of a square end its corners lie nearer to the circle
	if !p.ball() {
		deep = math.Hypot(math.Abs(p.s-s)+p.radius, p.q-q)
	}
	return r-deep < 2*leftover+nearBy
}

// nearBy is far less than roughing leaves, and more than a ball's lowest point lies off a steep curve that its side touches.
const nearBy = 0.3

// checkSeatPlace holds where the pipe's axis is cut: across within the general tolerance of the width, and as deep that crown and length come out. Past its depth the cut
// shortens the part; how surely the work was found is the place's, and not counted twice.
func (w *walk) checkSeatPlace(at where, v seatView, s, q, off, sunk float64) {
	if v.side != nil {
		w.checkSidePlace(at, v, s, off)
		return
	}
	deep := w.generalOf(float64(v.Radius.Value) + v.axisQ)
	if aside := math.Abs(s-v.drawn) + off; aside > v.within+figure {
		w.fail(at, "place", "the axis of the pipe under %s may lie %s off its place, drawn within %s", v.ID(), mm(aside), mm(v.within))
	}
	low, high := q-v.axisQ-sunk, q-v.axisQ+sunk
	if low < -deep-figure || high > deep+figure {
		w.fail(at, "size", "the crown of %s comes out %s to %s deep, drawn %s within %s", v.ID(), mm(float64(v.Radius.Value)+v.axisQ+low), mm(float64(v.Radius.Value)+v.axisQ+high),
			mm(float64(v.Radius.Value)+v.axisQ), mm(deep))
	}
	if lips := v.long - math.Max(0, q-v.axisQ); lips < float64(w.part.Length.Low)-figure {
		w.fail(at, "size", "the seat is cut so deep that the length over its edges is %s, drawn %s at least", mm(lips), mm(float64(w.part.Length.Low)))
	}
}

// generalOf is the general tolerance of a length, either way.
func (w *walk) generalOf(size float64) float64 {
	d, err := tables.ISO2768(w.part.General, tables.GeneralLength, units.Length(math.Max(size, smallSize)))
	if err != nil {
		return 0
	}
	return float64(d.Upper)
}

// fileSeat takes the crests of the steps off: they must be there everywhere, and nowhere stand out more than the operation takes off.
func (w *walk) fileSeat(op plan.Operation, v seatView, isSeat bool) {
	if !isSeat {
		w.failOp("file", "%q is no seat of the part", op.Feature)
		return
	}
	most := float64(v.Leftover)
	if most == 0 {
		most = mostToFile
	}
	if op.DepthMM > 0 {
		most = math.Min(most, op.DepthMM)
	}
	if w.checkSeat(w.at, v, most) {
		w.filed[v.Name] = true
		w.filedAfter[v.Name] = len(w.seatPasses(v))
	}
}

// finishSeat holds a seat when all is done.
func (w *walk) finishSeat(v seatView) {
	f, drawn := v.Seat, v
	if drawn.face = 0; f.On == partspec.Right {
		drawn.face = float64(w.part.Length.Value)
	}
	if v.side == nil && math.Abs(drawn.q(float64(f.AxisZ))-v.axisQ) > w.generalOf(float64(w.part.Length.Value)) {
		w.fail(where{}, "finished part", "%s has its pipe's axis at %s; its radius and width put it at %s below the end", f.ID(), mm(float64(f.AxisZ)), mm(v.axisQ))
	}
	if w.filed[f.Name] {
		for _, p := range w.seatPasses(v)[w.filedAfter[f.Name]:] {
			w.fail(p.at, "file", "cut %q comes after %s was filed", p.name, f.ID())
		}
		return
	}
	if swung := slices.ContainsFunc(w.seatPasses(v), func(p seatPass) bool { return p.lies }); f.Finish && !swung { // what is swung to its radius needs no file
		w.fail(where{}, "finished part", "%s is never filed", f.ID())
		return
	}
	w.checkSeat(where{}, v, 0)
}
