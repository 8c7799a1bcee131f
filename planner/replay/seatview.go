package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plane"
	"catchplate/planner/solid"
)

// seatView is a seat as seen along its pipe's axis: s across that axis, from the part's own; q from the end face into the metal.
type seatView struct {
	*partspec.Seat
	side  *partspec.SideSeat // across the side of round work: then the face is the radius of the round, from which q goes to the axis; else nil
	body  solid.Body         // then, the work as it is
	axisQ float64            // of the pipe: negative, outside the end
	half  float64            // of the width that the seat is cut over
	face  float64            // where the end face really is
	long  float64            // the work's length
	// What there is of the work as far as the seat reaches, and a little beside: across the pipe's axis, and along it.
	s0, s1, t0, t1 float64
	drawn, set     float64 // the pipe's axis across, as drawn and where the dials have it: a turned part's own axis, 0
	within         float64 // how far it may lie from where it is drawn
}

// metal is the work in the view.
func (v seatView) metal() plane.Set {
	if v.side != nil {
		return v.lengthwise()
	}
	return plane.Rectangle(v.s0, 0, v.s1, v.long).Figure()
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
	wide := w.body.Outer.Greatest(math.Min(v.face, deep), math.Max(v.face, deep))
	v.s0, v.s1, v.t0, v.t1, v.within = -wide, wide, -wide, wide, w.generalOf(2*v.half)
	return v
}

// q is how deep a place along the part's axis lies below the end face.
func (v seatView) q(z float64) float64 {
	if v.side != nil || v.On == partspec.Right {
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
	lies    bool // the spindle stands along the pipe's axis
	ok      bool // it is a cut of the kinds known here
}

// sees looks along the pipe's axis at a pass.
func (v seatView) sees(a aside) seatPass {
	p := seatPass{aside: a}
	if v.side != nil {
		if a.pose.across && sameTurn(a.pose.deg, float64(v.Angle)) {
			z := float64(v.side.Z.Value)
			p.standing(v, a.from[0]-z, a.to[0]-z, a.from[1], a.to[1])
		}
		return p
	}
	p.lies = a.pose.across
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
	p.through = p.to[2] <= v.t0+same
	p.takes = []plane.Set{plane.Capsule{X0: s0, Y0: q0, X1: s1, Y1: q1, Radius: p.radius}}
}

// standing is a pass whose spindle stands along the part's axis and which goes along the pipe's: the width of the cutter, down to its end.
func (p *seatPass) standing(v seatView, s0, s1, t0, t1 float64) {
	if math.Abs(s1-s0) > figure || math.Abs(p.to[2]-p.from[2]) > same {
		return
	}
	p.s, p.q, p.ok = s1, v.q(p.to[2]), true
	p.through = math.Min(t0, t1) <= v.t0+same && math.Max(t0, t1) >= v.t1-same
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
