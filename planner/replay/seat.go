package replay

import (
	"math"
	"strconv"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/solid"
	"catchplate/planner/tables"
)

// seatView is a seat as seen along its pipe's axis: s across that axis, from the part's own; q from the end face into the metal.
type seatView struct {
	*partspec.Seat
	axisQ float64 // of the pipe: negative, outside the end
	half  float64 // of the width that the seat is cut over
	face  float64 // where the end face really is
	wide  float64 // the part's greatest radius where the seat reaches
	long  float64 // the work's length
}

// viewOf is the seat laid on the end that the work really has. The pipe's axis is where the drawn radius just reaches the width at the end face.
func (w *walk) viewOf(f *partspec.Seat) seatView {
	r, half := float64(f.Radius.Value), float64(f.Across)/2
	v := seatView{Seat: f, axisQ: -math.Sqrt(math.Max(0, r*r-half*half)), half: half}
	z0, z1 := w.body.Ends()
	v.face, v.long = z0, z1-z0
	deep := z0 + r + v.axisQ
	if f.On == partspec.Right {
		v.face, deep = z1, z1-r-v.axisQ
	}
	v.wide = w.body.Outer.Greatest(math.Min(v.face, deep), math.Max(v.face, deep))
	return v
}

// q is how deep a place along the part's axis lies below the end face.
func (v seatView) q(z float64) float64 {
	if v.On == partspec.Right {
		return v.face - z
	}
	return z - v.face
}

// over is how deep the seat lies at most under a circle beside the part's axis.
func (v seatView) over(x, y, r float64) float64 {
	sin, cos := math.Sincos(float64(v.Angle) * math.Pi / 180)
	off := math.Max(0, math.Abs(x*sin-y*cos)-r)
	radius := float64(v.Radius.High)
	return math.Sqrt(math.Max(0, radius*radius-off*off)) + v.axisQ
}

// seatsAt are the seats across an end.
func (w *walk) seatsAt(e partspec.End) (list []seatView) {
	for _, f := range w.part.Features {
		if s, ok := f.(*partspec.Seat); ok && s.On == e {
			list = append(list, w.viewOf(s))
		}
	}
	return list
}

// seatPass is a pass as seen along the pipe's axis: what it takes, and whether it runs right through the part along that axis.
type seatPass struct {
	aside
	takes   []plane.Set
	s, q    float64 // of the tool's axis, or of its end
	through bool
	swung   bool
	ok      bool // it is a cut of the kinds known here
}

// sees looks along the pipe's axis at a pass.
func (v seatView) sees(a aside) seatPass {
	p := seatPass{aside: a}
	sin, cos := math.Sincos(float64(v.Angle) * math.Pi / 180)
	if a.pose.across {
		turn := turnBetween(a.pose.deg, float64(v.Angle))
		if turn > sameAngle && 180-turn > sameAngle {
			return p
		}
		side := 1.0 // the pose's side lies at deg - 90, as s does
		if turn > 90 {
			side = -1
		}
		p.lying(v, side)
		return p
	}
	if (a.pose.free < 0) != (v.On == partspec.Left) {
		return p
	}
	s := func(at place) float64 { return at[0]*sin - at[1]*cos }
	t := func(at place) float64 { return at[0]*cos + at[1]*sin }
	p.standing(v, s(a.from), s(a.to), t(a.from), t(a.to))
	return p
}

// lying is a pass whose spindle stands along the pipe's axis: a disc, taken right through.
func (p *seatPass) lying(v seatView, side float64) {
	if math.Hypot(p.to[0]-p.from[0], p.to[1]-p.from[1]) > same && math.Abs(p.to[2]-p.from[2]) > same {
		return
	}
	s0, q0, s1, q1 := side*p.from[1], v.q(p.from[0]), side*p.to[1], v.q(p.to[0])
	p.s, p.q, p.ok = s1, q1, true
	p.swung = p.Kind == partspec.BoringHead || p.Kind == partspec.FlyCutter
	p.through = p.to[2] <= -v.wide+same
	p.takes = []plane.Set{plane.Capsule{X0: s0, Y0: q0, X1: s1, Y1: q1, Radius: p.radius}}
}

// standing is a pass whose spindle stands along the part's axis and which goes along the pipe's: the width of the cutter, down to its end.
func (p *seatPass) standing(v seatView, s0, s1, t0, t1 float64) {
	if math.Abs(s1-s0) > figure || math.Abs(p.to[2]-p.from[2]) > same {
		return
	}
	p.s, p.q, p.ok = s1, v.q(p.to[2]), true
	p.through = math.Min(t0, t1) <= -v.wide+same && math.Max(t0, t1) >= v.wide-same
	r, low := p.radius, p.q
	if p.ball() {
		low -= r
		p.takes = append(p.takes, plane.Round(p.s, low, r))
	}
	if top := -solid.Far / 100; low > top {
		p.takes = append(p.takes, plane.Rectangle(p.s-r, top, p.s+r, low).Figure())
	}
}

// seatPasses are the passes of a seat so far. What has been looked at once is kept as long as the end face stays where it is.
func (w *walk) seatPasses(v seatView) []seatPass {
	known := w.seats[v.Name]
	if known == nil || known.face != v.face || known.upTo > len(w.milled) {
		known = &seatSeen{face: v.face}
		if w.seats == nil {
			w.seats = map[string]*seatSeen{}
		}
		w.seats[v.Name] = known
	}
	for ; known.upTo < len(w.milled); known.upTo++ {
		if a := w.milled[known.upTo]; a.feature == v.Name {
			known.list = append(known.list, v.sees(a))
		}
	}
	return known.list
}

// seatSeen is the passes of a seat that have been looked at: so many of all milling passes.
type seatSeen struct {
	face float64
	upTo int
	list []seatPass
}

// checkSeatPass holds that a pass is one that a seat is cut with: along its pipe's axis, from its end, with the spindle along either axis.
func (w *walk) checkSeatPass(f *partspec.Seat, a aside) {
	v := w.viewOf(f)
	p := v.sees(a)
	switch {
	case f.On == partspec.EndInvalid:
		w.failOp("seat", "nothing proves a seat across the side")
	case !p.ok:
		w.failOp("pose", "cut %q does not go along the axis of the pipe that %s sits on, from its %s end", a.name, f.ID(), f.On)
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
	if !p.pose.across { // reckoned as if every cutter before had been square, which takes more than it did: what is found so is there for certain
		if deep, wide := w.engagedInSeat(v, p); deep > same && wide > same {
			return true
		}
	}
	metal := plane.Rectangle(-v.wide, 0, v.wide, v.long).Figure()
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
	s, q = 0, v.axisQ
	deepest := math.Inf(-1)
	for _, p := range list {
		off = math.Max(off, p.within)
		if p.pose.across {
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
	metal := plane.Rectangle(-v.wide, 0, v.wide, v.long).Figure()
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
	rim := plane.Common([]plane.Set{target.Figure()}, takenBy(list, func(p seatPass) bool { return nearCurve(p, s, q, float64(v.Radius.Low), leftover) }))
	if len(rim) > 0 { // roughing may have to be looked at as well
		rim = plane.Common([]plane.Set{target.Figure()}, takenBy(list, func(seatPass) bool { return true }))
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
	side, deep := w.generalOf(2*v.half), w.generalOf(float64(v.Radius.Value)+v.axisQ)
	if math.Abs(s)+off > side+figure {
		w.fail(at, "place", "the axis of the pipe under %s may lie %s off the part's, drawn within %s", v.ID(), mm(math.Abs(s)+off), mm(side))
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
func (w *walk) fileSeat(op plan.Operation, f partspec.Feature) {
	seat, ok := f.(*partspec.Seat)
	if !ok {
		w.failOp("file", "%q is no seat of the part", op.Feature)
		return
	}
	most := float64(seat.Leftover)
	if most == 0 {
		most = mostToFile
	}
	if op.DepthMM > 0 {
		most = math.Min(most, op.DepthMM)
	}
	if w.checkSeat(w.at, w.viewOf(seat), most) {
		w.filed[seat.Name] = true
		w.filedAfter[seat.Name] = len(w.seatPasses(w.viewOf(seat)))
	}
}

// finishSeat holds a seat when all is done.
func (w *walk) finishSeat(f *partspec.Seat) {
	v := w.viewOf(f)
	if f.On == partspec.EndInvalid {
		w.fail(where{}, "finished part", "%s: nothing proves a seat across the side", f.ID())
		return
	}
	drawn := v
	if drawn.face = 0; f.On == partspec.Right {
		drawn.face = float64(w.part.Length.Value)
	}
	if math.Abs(drawn.q(float64(f.AxisZ))-v.axisQ) > w.generalOf(float64(w.part.Length.Value)) {
		w.fail(where{}, "finished part", "%s has its pipe's axis at %s; its radius and width put it at %s below the end", f.ID(), mm(float64(f.AxisZ)), mm(v.axisQ))
	}
	if w.filed[f.Name] {
		for _, p := range w.seatPasses(v)[w.filedAfter[f.Name]:] {
			w.fail(p.at, "file", "cut %q comes after %s was filed", p.name, f.ID())
		}
		return
	}
	if f.Finish {
		w.fail(where{}, "finished part", "%s is never filed", f.ID())
		return
	}
	w.checkSeat(where{}, v, 0)
}
