package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/solid"
)

// smallSize is a size in the first step of the general tolerances of lengths.
const smallSize = 1.0

// onAxis is the size of what is drawn on the part's axis and has no limits of its own: the general tolerance of the width it is in the middle of, either way.
func (w *walk) onAxis(width float64) partspec.Size {
	off := units.Length(w.generalOf(width))
	return partspec.Size{Low: -off, High: off}
}

// widthOf is how wide an outside feature is drawn; of one that is no cylinder, how wide the work is there.
func (w *walk) widthOf(name string) float64 {
	f := w.part.Feature(name)
	if size, ok := blankOf(f); ok {
		return float64(size.Value)
	}
	left, right, ok := spanOfNamed(f)
	if !ok {
		return 0
	}
	return 2 * math.Max(0, w.body.Outer.Greatest(left, right))
}

// laidFrom lays the limits of a cross hole's place from the face that it is measured from, where the work has that face.
func (w *walk) laidFrom(f *partspec.CrossHole) {
	h := w.holes[holeKey{f.Name, 1}]
	if h == nil {
		return
	}
	from := w.drawing(lengthsOf(w.part)).outer.at(float64(f.ZFrom))
	h.aim.x.Low = f.Z.Low + units.Length(from.hi-from.drawn)
	h.aim.x.High = f.Z.High + units.Length(from.lo-from.drawn)
}

// acrossMetal is the drawn metal along a hole square to the axis, in the across pose: heights are counted from the axis towards the hole.
type acrossMetal struct {
	f           *partspec.CrossHole
	least, most solid.Body
	into        bool
}

func (w *walk) acrossMetal(f *partspec.CrossHole, least, most solid.Body) acrossMetal {
	return acrossMetal{f, least, most, f.Into != ""}
}

// around is the stretch of the axis that a hole of radius r takes at z.
func around(z, r float64) (lo, hi float64) { return z - r + same, z + r - same }

func (m acrossMetal) mouth(h *drilled) (float64, bool) {
	r := m.least.Outer.Greatest(around(h.x0(), float64(h.diameter.Value)/2))
	return r, r > 0 && !math.IsInf(r, 0)
}

// out is where the hole comes out: on the far side, or in the bore that it ends in. A blind one must stay clear of any bore below it.
func (m acrossMetal) out(h *drilled, r float64) float64 {
	lo, hi := around(h.x, r)
	off := math.Abs(h.y) + r
	switch {
	case m.into: // the bore's wall falls away to the sides of the hole
		bore := math.Max(0, m.most.Inner.Least(lo, hi))
		return math.Sqrt(math.Max(0, bore*bore-off*off))
	case m.f.Through:
		return -m.most.Outer.Greatest(lo, hi)
	}
	if bore := m.least.Inner.Greatest(lo, hi); bore > 0 {
		return bore
	}
	return -m.least.Outer.Least(lo, hi)
}

func (m acrossMetal) depth() (low, high float64, through bool) {
	return float64(m.f.Depth.Low), float64(m.f.Depth.High), m.f.Through || m.into
}

// strikes is how much higher than the drawn mouth metal stands within the tool's reach on either side, or how deep it cuts into the far wall of the bore that the
// hole ends in.
func (m acrossMetal) strikes(h *drilled, s aside) float64 {
	drawn := m.least.Outer.Greatest(around(h.x0(), s.radius))
	high := m.least.Outer.Greatest(around(h.x, s.radius+h.off)) - drawn
	if !m.into {
		return math.Max(0, high)
	}
	lo, hi := around(h.x, s.radius+h.off)
	bore := m.least.Inner.Greatest(lo, hi)
	// The cone rises by its slope, the wall by less at first: the two are nearest at the point or at the rim.
	far := math.Max(-bore-s.to[2], -math.Sqrt(math.Max(0, bore*bore-s.radius*s.radius))-s.fullTo())
	return math.Max(0, math.Max(high, far))
}
