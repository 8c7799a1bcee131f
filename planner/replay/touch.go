package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

const (
	// figureRadius is how far the radius gripped may differ from the plan's figure: jaws close on what is there, and a mandrel is turned to the
	// measured bore.
	figureRadius = 0.1

	// jawRelief is how far from the ends of a grip a corner's round may stand in the way: jaws are relieved there. Common practice, no source.
	jawRelief = 0.5
)

// touching is a surface as what grips it meets it.
type touching struct {
	surface solid.Curve
	radius  float64
	inside  bool
}

// meets is the radius of the model's surface that a grip of the plan's radius means: on a hexagon jaws meet the flats, the model has the corners.
func (w *walk) meets(lo, hi float64) float64 {
	r, s := w.setup.Grip.RadiusMM, w.part.Stock
	if s.Kind == partspec.Hexagon && math.Abs(r-float64(s.Outside.Value)/2) <= figureRadius {
		if corners := float64(s.EnvelopeDiameter()) / 2; w.body.Outer.Greatest(lo, hi) >= corners-same {
			return corners
		}
	}
	return r
}

// touches reports whether a piece lies where it is gripped.
func (t touching) touches(p solid.Piece) bool {
	return math.Abs(p.R0-p.R1) <= same && math.Abs(p.R0-t.radius) <= figureRadius
}

// length is how much of the surface is touched between two places.
func (t touching) length(lo, hi float64) float64 {
	sum := 0.0
	for _, p := range t.surface.Clip(lo, hi).Pieces() {
		if t.touches(p) {
			sum += p.Z1 - p.Z0
		}
	}
	return sum
}

// found is the surface with the radius that is really touched, over the longest stretch.
func (t touching) found(lo, hi float64) touching {
	f, width := t, 0.0
	for _, p := range t.surface.Clip(lo, hi).Pieces() {
		if p.Z1-p.Z0 > width && t.touches(p) {
			width, f.radius = p.Z1-p.Z0, p.R0
		}
	}
	return f
}

// stands reports whether anything stands in the way of the jaws between two places: higher than what is touched, or for a hole narrower.
func (t touching) stands(lo, hi float64) bool {
	for _, p := range t.surface.Clip(lo, hi).Pieces() {
		high := math.Max(p.R0, p.R1) - t.radius
		if t.inside {
			high = t.radius - math.Min(p.R0, p.R1)
		}
		if high > same && !t.touches(p) {
			return true
		}
	}
	return false
}

// relieved is how much stands higher only in the relief at the jaws' ends: the round that a tool leaves in a corner, which costs no grip.
func (t touching) relieved(lo, hi float64) float64 {
	sum := 0.0
	for _, at := range [][2]float64{{lo, math.Min(lo+jawRelief, hi)}, {math.Max(hi-jawRelief, lo), hi}} {
		for _, p := range t.surface.Clip(at[0], at[1]).Pieces() {
			stands := math.Min(p.R0, p.R1) >= t.radius-same
			if t.inside {
				stands = math.Max(p.R0, p.R1) <= t.radius+same
			}
			if stands && !t.touches(p) {
				sum += p.Z1 - p.Z0
			}
		}
	}
	return sum
}

// gripped is a place in the middle of the widest stretch that is gripped, and its radius.
func (w *walk) gripped(g plan.Grip) (z, r float64) {
	lo, hi := math.Min(g.FromZ, g.ToZ), math.Max(g.FromZ, g.ToZ)
	t := touching{w.body.Outer, w.meets(lo, hi), g.Inside}
	if g.Inside {
		t.surface = w.body.Inner
	}
	z, r = (lo+hi)/2, g.RadiusMM
	width := 0.0
	for _, p := range t.surface.Clip(lo, hi).Pieces() {
		if p.Z1-p.Z0 > width && t.touches(p) {
			z, r, width = (p.Z0+p.Z1)/2, p.R0, p.Z1-p.Z0
		}
	}
	return z, r
}
