package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// checkHoles holds, when all is done, that every hole beside or across the axis is there as drawn, and that no tool on its way took metal elsewhere.
func (w *walk) checkHoles(least, most solid.Body) {
	for _, f := range w.part.Features {
		switch f := f.(type) {
		case *partspec.Holes:
			var metal metalAlong = besideMetal{f, least, most, w.seatsAt(f.From.Other())}
			if f.SquareTo != "" {
				metal = w.leaningHoles(f, least, most)
			}
			for i := range f.Places {
				w.checkHole(f, i+1, metal)
			}
		case *partspec.CrossHole:
			w.laidFrom(f)
			w.checkHole(f, 1, w.acrossMetal(f, least, most))
		}
	}
}

// metalAlong is the drawn metal along a hole, in the frame of the pose it is drilled in.
type metalAlong interface {
	// mouth is where the hole begins; not ok where there is no metal.
	mouth(h *drilled) (at float64, ok bool)
	// out is where it comes out of the most metal that there may be within a radius about where it is; of a blind hole, what its point must not reach.
	out(h *drilled, r float64) float64
	// depth is how far from the mouth the full diameter goes; through: beyond where it comes out.
	depth() (low, high float64, through bool)
	// strikes is how much drawn metal beside the hole a tool goes through on its way.
	strikes(h *drilled, s aside) float64
}

func (w *walk) checkHole(f partspec.Feature, number int, metal metalAlong) {
	h := w.holes[holeKey{f.Head().Name, number}]
	if h == nil || !h.full() {
		w.fail(where{}, "finished part", "hole %d of %s is never drilled", number, f.Head().ID())
		return
	}
	at := h.steps[0].at
	for _, s := range h.steps {
		if s.bores() {
			at = s.at
		}
	}
	w.checkHolePlace(at, h)
	if m, ok := metal.(leaningMetal); ok {
		w.checkLeans(at, h, m)
	}
	w.checkHoleSize(at, h)
	w.checkHoleDepth(at, h, metal)
	w.checkSink(h, metal)
	w.checkTapped(at, h, metal)
	for _, s := range h.steps {
		if by := metal.strikes(h, s); by > same {
			w.fail(s.at, "least metal", "cut %q goes through %s mm of metal that stands beside hole %d of %s", s.name, mm(by), h.number, h.id)
		}
	}
}

// checkHolePlace holds that a hole lies in its limits wherever within its error it is.
func (w *walk) checkHolePlace(at where, h *drilled) {
	if h.mated {
		return // held against the mate, cut by cut
	}
	if h.within > 0 {
		if off := math.Hypot(h.x-float64(h.x0()), h.y-float64(h.y0())) + h.off; off > h.within+figure {
			w.fail(at, "place", "hole %d of %s may lie %s from its place, drawn within %s", h.number, h.id, mm(off), mm(h.within))
		}
		return
	}
	for _, c := range []struct {
		name     string
		at       float64
		low, top float64
	}{{"X", h.x, float64(h.aim.x.Low), float64(h.aim.x.High)}, {"Y", h.y, float64(h.aim.y.Low), float64(h.aim.y.High)}} {
		off, more := h.off-h.less, 0.0
		if own := h.off - h.shared; h.ring > 0 && w.oneSetting(h) && c.at-own >= c.low-figure && c.at+own <= c.top+figure {
			more = h.ring // all holes of the ring have alike what its middle may lie off
		}
		if c.at-off < c.low-more-figure || c.at+off > c.top+more+figure {
			w.fail(at, "place", "hole %d of %s may lie at %s %s to %s, drawn %s to %s", h.number, h.id, c.name, mm(c.at-off), mm(c.at+off), mm(c.low-more), mm(c.top+more))
		}
	}
}

// oneSetting reports whether all holes of the feature that a hole belongs to were placed in one setting.
func (w *walk) oneSetting(h *drilled) bool {
	for _, other := range w.holes {
		if other.id == h.id && len(other.steps) > 0 && other.steps[0].key.setup != h.steps[0].key.setup {
			return false
		}
	}
	return true
}

func (h *drilled) x0() float64 { return float64(h.aim.x.Value) }
func (h *drilled) y0() float64 { return float64(h.aim.y.Value) }

// checkHoleSize holds the widest tool that went down against the drawn limits.
func (w *walk) checkHoleSize(at where, h *drilled) {
	if d := 2 * h.widest(); d < float64(h.diameter.Low)-same || d > float64(h.diameter.High)+same {
		w.fail(at, "size", "hole %d of %s comes out at Ø%s, drawn Ø%s to Ø%s", h.number, h.id, mm(d), mm(float64(h.diameter.Low)), mm(float64(h.diameter.High)))
	}
}

// checkSpots holds that no centre drill has opened a mouth wider than the hole: as wide as its cone is where it has gone in.
func (w *walk) checkSpots(h *drilled, mouth float64) {
	for _, s := range h.steps {
		if s.bores() || s.Kind != partspec.CentreDrill || h.sink != nil {
			continue
		}
		deep := h.pose.up() * (mouth - s.to[2])
		wide := math.Min(s.radius, deep*math.Tan(plan.CentreDrillDeg/2*math.Pi/180))
		if wide > float64(h.diameter.High)/2+same {
			w.fail(s.at, "size", "the spot of Ø%s is wider than hole %d of %s", mm(2*wide), h.number, h.id)
		}
	}
}

// deepest is the place that the full drawn diameter reaches, and the one that any tool's point does, as heights above nought along the spindle.
func (h *drilled) deepest() (full, point float64) {
	up := h.pose.up()
	full, point = math.Inf(1), math.Inf(1)
	for _, s := range h.steps {
		side := s.pose.up() * up // drilled from the other side the whole way through it counts as through
		if side < 0 {
			full, point = math.Min(full, -math.Inf(1)), math.Min(point, math.Inf(1))
			continue
		}
		if s.bores() {
			point = math.Min(point, up*s.to[2])
			if 2*s.radius >= float64(h.diameter.Low)-same {
				full = math.Min(full, up*s.fullTo())
			}
		}
	}
	return full, point
}

// checkHoleDepth holds how deep a hole goes.
func (w *walk) checkHoleDepth(at where, h *drilled, metal metalAlong) {
	up := h.pose.up()
	mouth, ok := metal.mouth(h)
	if !ok {
		w.fail(at, "finished part", "there is no metal where hole %d of %s is drawn", h.number, h.id)
		return
	}
	w.checkSpots(h, mouth)
	full, point := h.deepest()
	low, high, through := metal.depth()
	out := up * metal.out(h, float64(h.diameter.High)/2+h.off)
	if through {
		if full > out+same {
			w.fail(at, "most metal", "hole %d of %s does not go through at its full diameter: %s mm are left", h.number, h.id, mm(full-out))
		}
		return
	}
	got := up*mouth - full
	if got < low-same || got > high+same {
		w.fail(at, "size", "hole %d of %s is %s deep, drawn %s to %s", h.number, h.id, mm(got), mm(low), mm(high))
	}
	if point < out+same {
		w.fail(at, "least metal", "the point of the drill breaks through under hole %d of %s, which is drawn blind", h.number, h.id)
	}
}

// checkSink holds the widened mouth of a hole.
func (w *walk) checkSink(h *drilled, metal metalAlong) {
	mouth, ok := metal.mouth(h)
	if !ok {
		return
	}
	up := h.pose.up()
	made := false
	for _, s := range h.steps {
		if s.process != plan.Counterbore && s.process != plan.Countersink {
			continue
		}
		if h.sink == nil || (h.sink.Angle > 0) != (s.process == plan.Countersink) {
			w.fail(s.at, "least metal", "hole %d of %s has no such mouth on the drawing", h.number, h.id)
			continue
		}
		made = true
		deep := up*mouth - up*s.to[2]
		if h.sink.Angle > 0 {
			w.checkCone(s, h, deep)
			continue
		}
		if d := 2 * s.radius; d < float64(h.sink.Diameter.Low)-same || d > float64(h.sink.Diameter.High)+same {
			w.fail(s.at, "size", "the counterbore of hole %d of %s comes out at Ø%s, drawn Ø%s to Ø%s", h.number, h.id, mm(d), mm(float64(h.sink.Diameter.Low)), mm(float64(h.sink.Diameter.High)))
		}
		if deep < float64(h.sink.Depth.Low)-same || deep > float64(h.sink.Depth.High)+same {
			w.fail(s.at, "size", "the counterbore of hole %d of %s is %s deep, drawn %s to %s", h.number, h.id, mm(deep), mm(float64(h.sink.Depth.Low)), mm(float64(h.sink.Depth.High)))
		}
	}
	if h.sink != nil && !made {
		w.fail(where{}, "finished part", "the mouth of hole %d of %s is never widened", h.number, h.id)
	}
}

// checkCone holds a countersink: its angle, and its diameter at the mouth.
func (w *walk) checkCone(s aside, h *drilled, deep float64) {
	if math.Abs(s.pointDeg()-float64(h.sink.Angle)) > coneAngle {
		w.fail(s.at, "size", "hole %d of %s is countersunk at %s degrees, drawn %s", h.number, h.id, mm(s.pointDeg()), mm(float64(h.sink.Angle)))
	}
	d := 2 * deep * math.Tan(s.pointDeg()/2*math.Pi/180)
	if d = math.Min(d, 2*s.radius); d < float64(h.sink.Diameter.Low)-same || d > float64(h.sink.Diameter.High)+same {
		w.fail(s.at, "size", "the countersink of hole %d of %s comes out at Ø%s, drawn Ø%s to Ø%s", h.number, h.id, mm(d), mm(float64(h.sink.Diameter.Low)), mm(float64(h.sink.Diameter.High)))
	}
}

// coneAngle is how far, in degrees, the angle of a countersink may differ from the drawn one: what a screw's head does not feel. Common practice, no source.
const coneAngle = 1.0

// besideMetal is the drawn metal along a hole that lies along the axis, beside it.
type besideMetal struct {
	f           *partspec.Holes
	least, most solid.Body
	seats       []seatView // across the end that it is drilled towards
}

// ringOf is what a body has between two circles about the axis that touch a circle of radius r whose centre lies rho from it: where a hole beside the axis
// meets a body of revolution, and how far along the axis.
func ringOf(b solid.Body, rho, r float64) solid.Body {
	b = b.TurnTo(solid.Const(-solid.Far, solid.Far, rho+r-same))
	if lo := rho - r + same; lo > 0 {
		b = b.BoreTo(solid.Const(-solid.Far, solid.Far, lo))
	}
	return b
}

// column is the metal along a hole from its mouth to the first air beyond.
func (m besideMetal) column(b solid.Body, rho, r float64) (z0, z1 float64, ok bool) {
	pieces := ringOf(b, rho, r).Outer.Pieces()
	if len(pieces) == 0 {
		return 0, 0, false
	}
	if m.f.From == partspec.Left {
		z0, z1 = pieces[0].Z0, pieces[0].Z1
		for _, p := range pieces[1:] {
			if p.Z0 > z1+same {
				break
			}
			z1 = p.Z1
		}
		return z0, z1, true
	}
	last := len(pieces) - 1
	z0, z1 = pieces[last].Z0, pieces[last].Z1
	for i := last - 1; i >= 0 && pieces[i].Z1 >= z0-same; i-- {
		z0 = pieces[i].Z0
	}
	return z0, z1, true
}

// rho is how far from the axis the hole is drawn, and how far it is.
func (m besideMetal) rho(h *drilled) (drawn, real float64) {
	return math.Hypot(h.x0(), h.y0()), math.Hypot(h.x, h.y)
}

func (m besideMetal) mouth(h *drilled) (float64, bool) {
	drawn, _ := m.rho(h)
	z0, z1, ok := m.column(m.least, drawn, float64(h.diameter.Value)/2)
	if m.f.From == partspec.Left {
		return z0, ok
	}
	return z1, ok
}

func (m besideMetal) out(h *drilled, r float64) float64 {
	_, real := m.rho(h)
	z0, z1, _ := m.column(m.most, real, r)
	for _, v := range m.seats {
		switch deep := math.Max(0, v.over(h.x, h.y, r)); {
		case m.f.Through: // it comes out in the hollow, or through the metal that the seat then takes
		case v.On == partspec.Left:
			z0 = math.Max(z0, v.face+deep)
		default:
			z1 = math.Min(z1, v.face-deep)
		}
	}
	if h.pose.up() < 0 {
		return z1
	}
	return z0
}

func (m besideMetal) depth() (low, high float64, through bool) {
	return float64(m.f.Depth.Low), float64(m.f.Depth.High), m.f.Through
}

func (m besideMetal) strikes(h *drilled, s aside) float64 {
	drawn, real := m.rho(h)
	z0, z1, ok := m.column(m.least, drawn, s.radius)
	if !ok {
		return 0
	}
	if up := s.pose.up(); !m.f.Through && up > 0 {
		z0 = -solid.Far // how deep it goes is held elsewhere
	} else if !m.f.Through {
		z1 = solid.Far
	}
	b := ringOf(m.least, real, s.radius+h.off)
	way := b.Keep(s.to[2], solid.Far)
	if s.pose.up() < 0 {
		way = b.Keep(-solid.Far, s.to[2])
	}
	return long(way.Keep(-solid.Far, z0)) + long(way.Keep(z1, solid.Far))
}

// long is how much of the axis a body covers.
func long(b solid.Body) float64 {
	sum := 0.0
	for _, p := range b.Outer.Pieces() {
		sum += p.Z1 - p.Z0
	}
	return sum
}
