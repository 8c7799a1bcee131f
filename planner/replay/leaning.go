package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// Work on a tilting plate is laid here by the plan's packing and direction alone, with the workshop's own figures: where a drawn hole then stands follows from the drawing, by turning
// its mouth on the seat and the direction to the pipe's axis into the frame of the table.

const (
	// straightLaid is how nearly straight a seat is laid along the x slide by an indicator, packingOff how far packing is off when it is made up. Common practice, no source.
	straightLaid = 0.02
	packingOff   = 0.02
	// finderBelow is how far the end of an edge finder stands below the edge of a rim that leans out under it, and finderHigh how nearly it is brought there.
	finderBelow = 1.0
	finderHigh  = 0.05
)

// tilted reports whether the setup at hand stands on a tilting plate.
func (w *walk) tilted() bool { return w.setup.Tilt != nil }

// stands is how work stands upright, in words.
func (p pose) stands() string {
	if p.leans {
		return "is set over"
	}
	return "is not set over"
}

// tiltOf is how far a plate is set over by its packing, in degrees.
func tiltOf(t plan.Tilt) float64 { return math.Asin(t.RiseMM/t.SineMM) * 180 / math.Pi }

// checkTilt holds a setup's tilting plate against the one that is owned.
func (w *walk) checkTilt() bool {
	t, h := w.setup.Tilt, w.holding
	if t == nil {
		if h.Kind == partspec.TiltingPlate {
			w.failOp("tilt", "nothing says how far %s is set over", h.Name)
		}
		return true
	}
	steps := t.RiseMM / plan.PackingMM
	switch {
	case h.Kind != partspec.TiltingPlate:
		w.failOp("tilt", "a %s sets nothing over", h.Kind)
	case w.setup.Across || w.setup.MachineKind != string(partspec.Mill):
		w.failOp("tilt", "work on %s stands upright, on a mill", h.Name)
	case math.Abs(t.SineMM-float64(h.SineLength)) > same:
		w.failOp("tilt", "the packing is said to stand %s from the hinge; under %s it stands %s", mm(t.SineMM), h.Name, mm(float64(h.SineLength)))
	case !(t.RiseMM >= 0 && t.RiseMM < t.SineMM) || math.Abs(steps-math.Round(steps)) > same/plan.PackingMM:
		w.failOp("tilt", "no packing of %s over %s is made up", mm(t.RiseMM), mm(t.SineMM))
	case tiltOf(*t) > float64(h.TiltsTo)+packingAngle(*t):
		w.failOp("tilt", "it is set over by %s degrees; %s goes to %s", mm(tiltOf(*t)), h.Name, mm(float64(h.TiltsTo)))
	default:
		return true
	}
	return false
}

// packingAngle is how far, in degrees, the nearest packing may be off a tilt: by half a step of it, which tells the more the steeper the plate stands.
func packingAngle(t plan.Tilt) float64 {
	more := t
	more.RiseMM = math.Min(t.SineMM, t.RiseMM+plan.PackingMM/2)
	return tiltOf(more) - tiltOf(t)
}

// axes are the directions of the table's x, its y and the spindle, seen in the part.
func (p pose) axes() (x, y, up [3]float64) {
	sinA, cosA := math.Sincos(p.along * math.Pi / 180)
	sin, cos := math.Sincos(p.lean * math.Pi / 180)
	x = [3]float64{cosA, sinA, 0}
	side := [3]float64{-p.free * sinA, p.free * cosA, 0} // of the end, square to x, as the spindle sees it
	y = [3]float64{side[0] * cos, side[1] * cos, -p.free * sin}
	up = [3]float64{side[0] * sin, side[1] * sin, p.free * cos}
	return x, y, up
}

// lay turns a place of the part into one of the frame of a pose that is set over.
func (p pose) lay(at [3]float64) place {
	x, y, up := p.axes()
	dot := func(a [3]float64) float64 { return a[0]*at[0] + a[1]*at[1] + a[2]*at[2] }
	return place{dot(x), dot(y), dot(up)}
}

// leaning is what is drawn of a hole that is square to a seat.
type leaning struct {
	mouth   [3]float64 // on the seat, in the part
	outward [3]float64 // from there to the pipe's axis, of length 1
	beside  float64    // of its mouth from the plane of the pipe's axis
	seat    *partspec.Seat
}

// leaningAt is a drawn hole that comes out of a seat at a place.
func (w *walk) leaningAt(f *partspec.Holes, at partspec.Point) *leaning {
	seat, ok := w.part.Feature(f.SquareTo).(*partspec.Seat)
	if !ok {
		return nil
	}
	sin, cos := math.Sincos(float64(seat.Angle) * math.Pi / 180)
	x, y := float64(at.X.Value), float64(at.Y.Value)
	off := y*cos - x*sin
	r := float64(seat.Radius.Value)
	high := math.Sqrt(math.Max(0, r*r-off*off))
	axis, out := float64(seat.AxisZ), 1.0
	if seat.On == partspec.Left {
		out = -1
	}
	return &leaning{mouth: [3]float64{x, y, axis - out*high}, outward: [3]float64{off * sin / r, -off * cos / r, out * high / r}, beside: off, seat: seat}
}

// leaningAims are the holes of a pattern square to a seat as they stand in a pose that is set over: each where its mouth then lies, with room all round as small as either limit.
func (w *walk) leaningAims(f *partspec.Holes, p pose) (list []aim) {
	for i, at := range f.Places {
		l := w.leaningAt(f, at)
		if l == nil {
			return nil
		}
		room := float64(f.Within)
		if room == 0 {
			room = math.Min(float64(at.X.Width()), float64(at.Y.Width())) / 2
		}
		stands := p.lay(l.mouth)
		list = append(list, aim{id: f.ID(), number: i + 1, x: sizeAt(stands[0]), y: sizeAt(stands[1]), within: room, diameter: f.Diameter, thread: f.Thread, lean: l})
	}
	return list
}

// sizeAt is a place with no limits of its own.
func sizeAt(v float64) (s partspec.Size) {
	s.Value = units.Length(v)
	return s
}

// checkLeans holds that a hole that is drilled leans as drawn: its tilt the nearest that packing gives, and its axis in its room at the mouth and where it comes out.
func (w *walk) checkLeans(at where, h *drilled, m leaningMetal) {
	cosine := 0.0
	_, _, up := h.pose.axes()
	for k := range up {
		cosine += up[k] * h.lean.outward[k]
	}
	apart := math.Acos(math.Min(1, cosine)) * 180 / math.Pi
	if apart > h.steps[0].packing+sameAngle {
		w.fail(at, "tilt", "hole %d of %s leans %s degrees off its direction; the nearest packing gives %s at most", h.number, h.id, mm(apart), mm(h.steps[0].packing))
	}
	mouth, _ := m.mouth(h)
	deep := mouth - m.out(h, h.widest())
	end := place{float64(h.aim.x.Value), float64(h.aim.y.Value), 0}
	drawn := h.pose.lay(h.lean.outward) // the axis in the frame, upward
	for k := range 2 {
		end[k] -= drawn[k] * deep / drawn[2]
	}
	if off := math.Hypot(h.x-end[0], h.y-end[1]) + h.off; off > h.within+figure {
		w.fail(at, "place", "hole %d of %s may come out %s beside its axis, drawn within %s", h.number, h.id, mm(off), mm(h.within))
	}
}

// over is where a hole lies in the end that it is drilled from: one that is square to a seat by its mouth.
func (h *drilled) over() (x, y float64) {
	if h.lean != nil {
		return h.lean.mouth[0], h.lean.mouth[1]
	}
	return h.x, h.y
}

// leaningMetal is the drawn metal along a hole that is square to a seat, in the frame that it is drilled in.
type leaningMetal struct {
	besideMetal
	on  partspec.End
	cut bool // the seat is there
}

// reach is how far from the part's axis a round tool's way goes, at the nearest and the farthest, between two heights over the table; and the stretch of the part's axis beside it.
func (m leaningMetal) reach(h *drilled, r, from, to float64) (near, far, z0, z1 float64) {
	x, y, up := h.pose.axes()
	sin, cos := math.Sincos(h.pose.lean * math.Pi / 180)
	at := func(z float64) (p [3]float64) {
		for k := range p {
			p[k] = x[k]*h.x + y[k]*h.y + up[k]*z
		}
		return p
	}
	a, b := at(from), at(to)
	way := pass{from: place{a[0], a[1]}, to: place{b[0], b[1]}}
	wide := r/cos + h.off
	near = math.Max(0, way.path().Off(0, 0)-wide)
	far = math.Max(math.Hypot(a[0], a[1]), math.Hypot(b[0], b[1])) + wide
	z0, z1 = math.Min(a[2], b[2])-r*sin, math.Max(a[2], b[2])+r*sin
	return near, far, z0, z1
}

func (m leaningMetal) mouth(h *drilled) (float64, bool) {
	axis := h.pose.lay([3]float64{0, 0, float64(h.lean.seat.AxisZ)})
	return axis[2] - float64(h.lean.seat.Radius.Value), m.cut
}

// back is the plane that the hole comes out of, along the part's axis, in a body.
func (m leaningMetal) back(b solid.Body, h *drilled) float64 {
	rho := math.Hypot(h.lean.mouth[0], h.lean.mouth[1])
	z0, z1, _ := m.column(b, rho, float64(h.diameter.Value)/2)
	if m.on == partspec.Left {
		return z1
	}
	return z0
}

// out is the lowest place over the table where the hole comes out; the steps of a seat may have left so much on the hollow that the tool was touched on higher.
func (m leaningMetal) out(h *drilled, r float64) float64 {
	sin, cos := math.Sincos(h.pose.lean * math.Pi / 180)
	return (h.pose.free*m.back(m.most, h)+(h.y-r)*sin)/cos - float64(h.lean.seat.Leftover) - float64(h.lean.seat.Radius.Width())/2
}

// strikes: inside its flange a hole stays between bore and rim, and past it meets nothing that stays.
func (m leaningMetal) strikes(h *drilled, s aside) float64 {
	mouth, _ := m.mouth(h)
	back := m.back(m.least, h)
	beyond := func(z0, z1 float64) (lo, hi float64) { // past the plane
		if h.pose.free > 0 {
			return z0, math.Min(z1, back) - same
		}
		return math.Max(z0, back) + same, z1
	}
	near, far, z0, z1 := m.reach(h, s.radius, mouth, s.to[2])
	hit := 0.0
	if lo, hi := beyond(z0, z1); lo < hi {
		if b := m.least.Keep(lo, hi); !b.Empty() {
			r0, r1 := math.Max(0, b.Inner.Least(b.Ends())), b.Outer.Greatest(b.Ends())
			hit = math.Max(hit, math.Min(far, r1)-math.Max(near, r0))
		}
	}
	_, far, _, _ = m.reach(h, s.radius, mouth, m.out(h, s.radius))
	near, _, z0, z1 = m.reach(h, s.radius, mouth, mouth)
	if h.pose.free > 0 {
		z0, z1 = back+same, math.Max(z1, back+2*same)
	} else {
		z0, z1 = math.Min(z0, back-2*same), back-same
	}
	if b := m.least.Keep(z0, z1); !b.Empty() {
		hit = math.Max(hit, math.Max(far-b.Outer.Least(b.Ends()), b.Inner.Greatest(b.Ends())-near))
	}
	return hit
}

// leaningHoles is the metal along the holes of a pattern that is square to a seat.
func (w *walk) leaningHoles(f *partspec.Holes, least, most solid.Body) leaningMetal {
	return leaningMetal{besideMetal{f, least, most, nil}, f.From, len(w.passesOf(f.SquareTo, 0)) > 0}
}

// hollows are the lowest lines of the seats that look at the spindle, when the work is set over: cut they must be.
func (t turnedWork) hollows(p pose) (list []found) {
	for _, f := range t.w.part.Features {
		s, ok := f.(*partspec.Seat)
		if !ok || (s.On == partspec.Left) != (p.free < 0) || len(t.w.passesOf(s.Name, 0)) == 0 {
			continue
		}
		axis := p.lay([3]float64{0, 0, float64(s.AxisZ)})
		list = append(list, found{at: axis[2] - float64(s.Radius.Value), off: float64(s.Leftover)})
	}
	return list
}

// setOverEdges is the middle between both sides of a rim along x; along y that between the edges of its end, of which the one on the raised side is touched a little below.
func (t turnedWork) setOverEdges(p pose, axis int) []found {
	if axis == 0 {
		return []found{{at: 0}}
	}
	sin, cos := math.Sincos(p.lean * math.Pi / 180)
	z0, z1 := t.w.body.Ends()
	end, in := z1, z1-finderBelow/cos-same
	if p.free < 0 {
		end, in = z0, z0+finderBelow/cos+same
	}
	lo, hi := math.Min(end, in), math.Max(end, in)
	if t.w.body.Outer.Greatest(lo, hi)-t.w.body.Outer.Least(lo, hi) > same {
		return nil // no sharp edge of a cylinder
	}
	return []found{{at: finderBelow*sin/cos/2 - p.free*end*sin, off: finderHigh * sin / cos / 2}}
}

// leanPlay is how far a hole may lie off because of how the seat is laid along x and how the packing is made up.
func (w *walk) leanPlay() float64 {
	t := w.setup.Tilt
	if t == nil {
		return 0
	}
	far := w.body.Outer.Greatest(w.freeZ()-offSurface, w.freeZ()+offSurface)
	for _, f := range w.part.Features {
		if s, ok := f.(*partspec.Seat); ok && (s.On == partspec.Left) == (w.free() < 0) {
			far += float64(s.Depth)
		}
	}
	return straightLaid + packingOff/t.SineMM*far
}

// lowest is how far along the part's axis, counted towards the spindle, the lowest place of a tool's end lies when the work is set over.
func (a aside) lowest() float64 {
	sin, cos := math.Sincos(a.pose.lean * math.Pi / 180)
	return -a.to[1]*sin + a.to[2]*cos - a.radius*sin
}

// checkJawsBelow holds that a tool on work that is set over ends above the jaws.
func (w *walk) checkJawsBelow(a aside) {
	if gap := a.lowest() - w.free()*w.jawFace(); gap < clearance-same {
		w.failOp("clearance", "cut %q comes within %s mm of the jaws below; it must keep %s away (rule B-45)", a.name, mm(gap), mm(clearance))
	}
}

// setOverDemand is a thrust on work that is set over, as its jaws feel it. Its moment about the middle of the grip, split along the part's axis and across it, twists and tips
// the work; the torque of the tool twists it too, whichever way.
func (w *walk) setOverDemand(d *mechanics.GripDemand, p push) {
	if p.thrustN <= 0 {
		return
	}
	lo, hi := w.grip()
	_, _, up := w.poseOf().axes()
	middle := w.poseOf().lay([3]float64{0, 0, (lo + hi) / 2})
	x, y := p.level[0]-middle[0], p.level[1]-middle[1]
	along := w.poseOf().lay([3]float64{0, 0, 1})
	twist := math.Abs(y*along[0] - x*along[1]) // of the moment (-y, x, 0) of a thrust of one newton
	tip := math.Sqrt(math.Max(0, x*x+y*y-twist*twist))
	d.MainN, d.CutRadiusMM, d.FeedN = p.thrustN, p.mainN*p.radius/p.thrustN+twist, p.thrustN*math.Abs(up[2])
	d.OverhangMM = tip
}
